"""Widths of cuts in the words of the tape."""

from firstcourse.units import Tape, floor_to, format_length


def cut_text(ticks: int, tape: Tape) -> str:
    """A width that must not read as more than it is, down to the mark of the tape below it.

    Example:
        >>> cut_text(50 * TICKS_PER_MM + 500, Tape.MM), cut_text(500, Tape.MM)
        ('50 mm', 'under 1 mm')
    """
    marked = floor_to(ticks, tape.graduation)
    return format_length(marked, tape) if marked or not ticks else f"under {format_length(tape.graduation, tape)}"
