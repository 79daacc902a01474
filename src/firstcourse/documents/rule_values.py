"""A rule's value as the papers print it: with its unit, and as the job's tape reads it where that is another."""

from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, Tape

_TICKS = {"in": TICKS_PER_INCH, "ft": TICKS_PER_FOOT, "mm": TICKS_PER_MM}
_WHOLE = 1000
"""From here on whole millimetres or inches say enough."""
_YES_NO = {"True": "yes", "False": "no"}


def shown_value(value: str, unit: str, tape: Tape) -> str:
    """The value of a rule in words.

    Example:
        >>> shown_value("0.125", "in", Tape.MM)
        '0.125 in (3.175 mm)'
    """
    try:
        number = float(value)
    except ValueError:
        return f"{_YES_NO.get(value, value)} {unit}".strip()
    other = "mm" if tape is Tape.MM else "in"
    if unit not in _TICKS or (unit == "mm") == (tape is Tape.MM):
        return f"{number:.6g} {unit}".strip()
    if number == 0:
        return f"0 {other}"
    converted = number * _TICKS[unit] / _TICKS[other]
    return f"{number:.6g} {unit} ({f'{converted:.0f}' if converted >= _WHOLE else f'{converted:.4g}'} {other})"
