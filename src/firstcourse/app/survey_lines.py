"""What the survey of a room says to the setter, as lines of a terminal."""

import math
from collections.abc import Sequence

from firstcourse.survey import Residual, RoomSurvey
from firstcourse.units import Tape, format_length, ticks_from_mm
from firstcourse.words import Speaker

_MM_PER_IN = 25.4
_M2_PER_SQ_FT = (12 * _MM_PER_IN / 1000) ** 2
_MESSAGE = "cli-survey"


def report_lines(room: RoomSurvey, speaker: Speaker) -> tuple[str, ...]:
    """The room's adjusted corners and readings as lines of text.

    Args:
        room: The adjusted room.
        speaker: In whose words and units.
    """
    done, tape, labels = room.adjustment, speaker.tape, _labels(speaker)
    room_line = speaker.text(
        _MESSAGE,
        "room",
        room=room.name,
        corners=len(room.corners),
        readings=len(done.residuals),
        more=done.freedom,
        floor=_area(room, tape),
    )
    corners = [
        (name, *(format_length(at, tape) for at in room.plan[name]), _within(done.uncertainty_mm[name], speaker))
        for name in room.corners
    ]
    readings = [
        (
            residual.reading.name,
            format_length(ticks_from_mm(residual.reading.length_mm), tape),
            format_length(ticks_from_mm(residual.adjusted_mm), tape),
            _off(residual, speaker),
        )
        for residual in done.residuals
    ]
    return (
        room_line,
        *_table([(labels["corner"], labels["right"], labels["up"], labels["within"]), *corners]),
        f"  {speaker.text(_MESSAGE, 'taped_to', taped_to=room.taped_to or 'untold')}",
        f"  {_squared(room, speaker)}",
        *_table([(labels["reading"], labels["taped"], labels["adjusted"], labels["off"]), *readings]),
    )


def _labels(speaker: Speaker) -> dict[str, str]:
    names = ("corner", "right", "up", "within", "reading", "taped", "adjusted", "off")
    return {name: speaker.text(_MESSAGE, name) for name in names}


def _table(rows: Sequence[Sequence[str]]) -> list[str]:
    """Rows as lines, what is called on the left, lengths on the right of their columns."""
    first, *others = (max(map(len, column)) for column in zip(*rows, strict=True))
    return [
        "   ".join((f"  {name:<{first}}", *(f"{cell:>{wide}}" for cell, wide in zip(cells, others, strict=True))))
        for name, *cells in rows
    ]


def _squared(room: RoomSurvey, speaker: Speaker) -> str:
    name, moved = max(room.squared_mm.items(), key=lambda item: item[1])
    if moved == 0:
        return speaker.text(_MESSAGE, "as_adjusted")
    mark = format_length(speaker.tape.graduation, speaker.tape)
    return speaker.text(_MESSAGE, "squared", mark=mark, corner=name, by=_shift(moved, speaker.tape))


def _shift(shift_mm: float, tape: Tape) -> str:
    """A move too small for the tape, in decimals of its unit, never said to be less than it is."""
    if tape is Tape.INCH:
        return f"{math.ceil(shift_mm / _MM_PER_IN * 1000 - 1e-6) / 1000:.3f} in"
    return f"{math.ceil(shift_mm * 100 - 1e-6) / 100:.2f} mm"


def _area(room: RoomSurvey, tape: Tape) -> str:
    return f"{room.area_m2 / _M2_PER_SQ_FT:.2f} sq ft" if tape is Tape.INCH else f"{room.area_m2:.3f} m²"


def _off(residual: Residual, speaker: Speaker) -> str:
    if residual.redundancy <= 0.0:
        return speaker.text(_MESSAGE, "unchecked")
    # Adding nothing to a rounded value takes the minus off its zero.
    if speaker.tape is Tape.INCH:
        return f"{round(residual.residual_mm / _MM_PER_IN, 2) + 0.0:+.2f} in"
    return f"{round(residual.residual_mm, 1) + 0.0:+.1f} mm"


def _within(uncertainty_mm: float, speaker: Speaker) -> str:
    if uncertainty_mm == 0.0:
        return speaker.text(_MESSAGE, "held")
    # Never said to be surer than it is: up to the next graduation.
    marks = -(-ticks_from_mm(uncertainty_mm) // speaker.tape.graduation)
    return format_length(marks * speaker.tape.graduation, speaker.tape)
