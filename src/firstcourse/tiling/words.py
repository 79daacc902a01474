"""Falls, lengths and volumes in the words of the tape."""

from fractions import Fraction

from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, floor_to, format_length

_LITRES_PER_CUBIC_FOOT = 28.316846592


def fall_text(fall: float, tape: Tape) -> str:
    """A fall as the trade says it: inches per foot, or one in so many.

    Example:
        >>> fall_text(1 / 48, Tape.INCH), fall_text(1 / 80, Tape.MM)
        ('0.25 in per ft', '1:80')
    """
    if tape is Tape.INCH:
        return f"{12 * fall:.3g} in per ft"
    return f"1:{1 / fall:.3g}" if fall > 0 else "level"


def length_text(ticks: int, tape: Tape, *, fine: bool = False) -> str:
    """A length to the nearest mark; `fine` shows what lies between marks."""
    return fine_text(ticks, tape) if fine else format_length(ticks, tape)


def fine_text(ticks: int, tape: Tape) -> str:
    """A small width [ticks] in the tape's unit, with finer marks than the tape has where it needs them."""
    if tape is Tape.INCH and ticks % tape.graduation:
        finer = Fraction(ticks, TICKS_PER_INCH)
        if 64 % finer.denominator == 0:
            whole, part = divmod(finer, 1)
            return f'{whole}-{part}"' if whole else f'{part}"'
        return f"{ticks / TICKS_PER_INCH:.4f}".rstrip("0").rstrip(".") + " in"
    if tape is Tape.MM:
        return f"{ticks / TICKS_PER_MM:.2f}".rstrip("0").rstrip(".") + " mm"
    return format_length(ticks, tape)


def cut_text(ticks: int, tape: Tape) -> str:
    """A width that must not read as more than it is, down to the mark of the tape below it.

    Example:
        >>> cut_text(50 * TICKS_PER_MM + 500, Tape.MM), cut_text(500, Tape.MM)
        ('50 mm', 'under 1 mm')
    """
    marked = floor_to(ticks, tape.graduation)
    return format_length(marked, tape) if marked or not ticks else f"under {format_length(tape.graduation, tape)}"


def litres_text(litres: float, tape: Tape) -> str:
    """A volume in cubic feet or litres."""
    if tape is Tape.INCH:
        return f"{litres / _LITRES_PER_CUBIC_FOOT:.2f} cu ft"
    return f"{litres:.1f} l"
