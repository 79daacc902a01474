"""Numbers as they are printed, compared with what they should be; rounding may lose half of the last place."""

import re

_NUMBER = re.compile(r"[+-]?(?:(?P<whole>\d+)-)?(?P<num>\d+)/(?P<den>[1-9]\d*)(?![\d.])|[+-]?\d[\d,]*(?:\.\d+)?")
_FRACTION_SLACK = 1e-4
"""A fraction is printed only where it is exact, to a tick."""


def first_number(text: str) -> float | None:
    """The first number that a text prints, such as 317 of `L/317` or 16.1875 of `16-3/16 in`; None without one."""
    found = _NUMBER.search(text)
    return None if found is None else _value(found)


def _value(found: re.Match[str]) -> float:
    if found["num"] is None:
        return float(found[0].replace(",", ""))
    value = int(found["whole"] or 0) + int(found["num"]) / int(found["den"])
    return -value if found[0].startswith("-") else value


def prints(text: str, value: float, *, slack: float = 1.02) -> bool:
    """Whether the first number of a text is a value, rounded to the places that are shown.

    Example:
        >>> prints("2.46 cu ft", 2.4593), prints("2.56 cu ft", 2.4593), prints("1,173 psi", 1172.6)
        (True, False, True)
    """
    found = _NUMBER.search(text)
    if found is None:
        return False
    if found["num"] is not None:
        return abs(_value(found) - value) <= _FRACTION_SLACK
    places = len(found[0].partition(".")[2])
    return abs(_value(found) - value) <= slack * 0.5 * 10.0**-places + 1e-9 * abs(value)
