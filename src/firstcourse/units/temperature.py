"""How warm it is: a temperature with its unit, as one number in degrees Fahrenheit."""

import re

from firstcourse.units.measures import MeasureError

_TEMPERATURE = re.compile(r"(?P<number>-?\d{1,3}(?:\.\d{1,2})?)\s*°?\s*(?P<unit>[FfCc])")


def fahrenheit(text: str) -> float:
    """Read a temperature.

    Args:
        text: A number and F or C, such as `68 F` or `20 C`.

    Returns:
        Degrees Fahrenheit [°F].

    Raises:
        MeasureError: No unit, another unit or no number.

    Example:
        >>> fahrenheit("20 C")
        68.0
    """
    found = _TEMPERATURE.fullmatch(text.strip())
    if found is None:
        raise MeasureError(f"'{text[:40]}' is not a temperature with its unit, such as 68 F or 20 C")
    number = float(found["number"])
    return number if found["unit"] in "Ff" else round(number * 9 / 5 + 32, 6)
