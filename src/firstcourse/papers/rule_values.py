"""A rule's value as people read it: in the tape's unit first, beside it as the book has it."""

from firstcourse.units import KG_PER_LB, TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, Tape, inch_text
from firstcourse.words import in_units

_TICKS = {"in": TICKS_PER_INCH, "ft": TICKS_PER_FOOT, "mm": TICKS_PER_MM}
_WHOLE = 1000
"""From here on whole millimetres or inches say enough."""
_WHOLE_MM_FROM = 10
"""For hands whole millimetres say enough from here on."""
_IN_FULL = 1e6
"""From here on a number stands with all its digits, never as a power of ten."""
_YES_NO = {"True": "yes", "False": "no"}


def shown_value(value: str, unit: str, tape: Tape) -> str:
    """The value of a rule in words.

    Example:
        >>> shown_value("0.125", "in", Tape.MM)
        '3.175 mm (0.125 in)'
        >>> shown_value("0.125", "in", Tape.INCH)
        '1/8 in'
        >>> shown_value("1600", "kg/m3", Tape.INCH)
        '99.88 lb/cu ft (1600 kg/m3)'
    """
    try:
        number = float(value)
    except ValueError:
        return _both(f"{_YES_NO.get(value, value)} {unit}".strip(), tape)
    if unit == "lb" and tape is Tape.MM:
        return f"{number * KG_PER_LB:.4g} kg ({number:.6g} lb)"
    if unit == "in" and tape is Tape.INCH:
        return f"{inch_text(number)} in"
    other = "mm" if tape is Tape.MM else "in"
    if unit not in _TICKS or (unit == "mm") == (tape is Tape.MM):
        plain = f"{f'{number:,.0f}' if abs(number) >= _IN_FULL else f'{number:.6g}'} {unit}".strip()
        return _both(plain, tape)
    if number == 0:
        return f"0 {other}"
    converted = number * _TICKS[unit] / _TICKS[other]
    return f"{f'{converted:.0f}' if converted >= _WHOLE else f'{converted:.4g}'} {other} ({number:.6g} {unit})"


def hands_value(value: str, unit: str, tape: Tape) -> str:
    """The value of a rule as hands need it: in the tape's unit alone, to whole millimetres from 10 mm on.

    Example:
        >>> hands_value("8", "in", Tape.MM), hands_value("0.125", "in", Tape.MM), hands_value("8", "in", Tape.INCH)
        ('203 mm', '3.2 mm', '8 in')
        >>> hands_value("1-1/4 in backer-board screw", "", Tape.MM)
        '31.8 mm backer-board screw'
    """
    if tape is Tape.MM and unit in ("in", "ft"):
        found = float(value) * _TICKS[unit] / TICKS_PER_MM
        return f"{f'{found:.0f}' if found >= _WHOLE_MM_FROM else f'{found:.1f}'.removesuffix('.0')} mm"
    shown = shown_value(value, unit, tape)
    return in_units(shown.removesuffix(f" ({f'{value} {unit}'.strip()})"), tape)


def _both(text: str, tape: Tape) -> str:
    """In the tape's units, and beside it as the book has it where that is another."""
    own = in_units(text, tape)
    return text if own == text else f"{own} ({text})"
