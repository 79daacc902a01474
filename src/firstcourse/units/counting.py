"""Counted things in words: one piece, two pieces."""

import math

_NOT_PLURAL = ("as", "is", "ss", "us")
"""Endings of words that are no plural, such as glass."""


def one_or_more(number: float | str, plural: str) -> str:
    """The word that goes with a number, such as `piece` for 1 and `pieces` for 2.

    Units that are not counted, such as mm or kg, stay as they are.

    Args:
        number: How many; as printed where it is a text.
        plural: What is counted, in the plural; where it has several words the first is counted.

    Example:
        >>> one_or_more(1, "pieces"), one_or_more("2", "pieces"), one_or_more(1, "kg"), one_or_more(1, "boxes")
        ('piece', 'pieces', 'kg', 'box')
    """
    first, space, rest = plural.partition(" ")
    if str(number) not in ("1", "1.0") or not first.endswith("s") or len(first) < 4 or first.endswith(_NOT_PLURAL):
        return plural
    single = first[:-2] if first.endswith(("xes", "ches", "shes")) else first[:-1]
    return f"{single}{space}{rest}"


def counted(number: float, plural: str) -> str:
    """A number with what is counted.

    Example:
        >>> counted(1, "sheets"), counted(0, "sheets"), counted(2.5, "kg")
        ('1 sheet', '0 sheets', '2.5 kg')
    """
    return f"{number:.10g} {one_or_more(f'{number:.10g}', plural)}"


def as_needed(number: float) -> str:
    """A need as people read it: three figures or a decimal more, rounded up so that it never falls short.

    Example:
        >>> as_needed(104.7661), as_needed(5.9302), as_needed(1692.0), as_needed(5.0)
        ('104.8', '5.94', '1692', '5')
    """
    steps = 10 if abs(number) >= 10 else 100
    return f"{math.ceil(round(number * steps, 6)) / steps:.10g}"
