"""What the survey of one room says, in words for the setter and as values for a program."""

import math
from dataclasses import dataclass

from firstcourse.survey.network import Residual
from firstcourse.survey.room import RoomSurvey
from firstcourse.units import Tape, counted, format_length, ticks_from_mm, to_mm

_MM_PER_IN = 25.4
_M2_PER_SQ_FT = (12 * _MM_PER_IN / 1000) ** 2


def report_lines(room: RoomSurvey, tape: Tape) -> tuple[str, ...]:
    """The room's adjusted corners and readings as lines of text.

    Args:
        room: The adjusted room.
        tape: Tape to write lengths for.
    """
    done = room.adjustment
    lines = [
        f"{room.name}: {len(room.corners)} corners, {counted(len(done.residuals), 'readings')}, "
        f"{done.freedom} more than needed; floor {_area(room, tape)}"
    ]
    lines.append("  corner   to the right   up (floor plan, lower left is 0)   sure within (95 %)")
    for name in room.corners:
        u, v = room.plan[name]
        lines.append(
            f"  {name:<6} {format_length(u, tape):>14} {format_length(v, tape):>14}"
            f"{'':>18} {_within(done.uncertainty_mm[name], tape):>18}"
        )
    lines.append(f"  taped to: {_taped_to(room)}")
    lines.append(f"  {_squared(room, tape)}")
    lines.append("  reading            taped       adjusted   off by")
    lines += [_reading_line(residual, tape) for residual in done.residuals]
    return tuple(lines)


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerReport:
    """One corner of a room.

    Attributes:
        at: On the floor plan, right and up [mm].
        uncertainty_95: Within which it lies with 95 % probability [mm].
        squared: How far drawing the room square moves it [mm].
    """

    name: str
    at: tuple[float, float]
    uncertainty_95: float
    squared: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingReport:
    """One reading: as taped, as adjusted and the difference [mm].

    Attributes:
        redundancy: How far others check it, 0 to 1.
        standardised: The difference in terms of what is usual; None where nothing checks it.
    """

    name: str
    taped: float
    adjusted: float
    residual: float
    redundancy: float
    standardised: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomReport:
    """What the survey of one room proves.

    Attributes:
        taped_to: What its sides were taped to; None where the job does not say.
        freedom: Readings beyond those needed.
        area_m2: Of the floor [m²].
        suspects: Readings that are likely misread, the likeliest first.
        ambiguous: Whether another reading may as well be the wrong one.
    """

    name: str
    taped_to: str | None
    freedom: int
    area_m2: float
    corners: tuple[CornerReport, ...]
    readings: tuple[ReadingReport, ...]
    suspects: tuple[str, ...]
    ambiguous: bool


def report(room: RoomSurvey) -> RoomReport:
    """The same as values.

    Args:
        room: The adjusted room.
    """
    done = room.adjustment
    return RoomReport(
        name=room.name,
        taped_to=room.taped_to or None,
        freedom=done.freedom,
        area_m2=room.area_m2,
        corners=tuple(
            CornerReport(
                name=name,
                at=(to_mm(room.plan[name][0]), to_mm(room.plan[name][1])),
                uncertainty_95=round(done.uncertainty_mm[name], 3),
                squared=round(room.squared_mm[name], 3),
            )
            for name in room.corners
        ),
        readings=tuple(
            ReadingReport(
                name=residual.reading.name,
                taped=residual.reading.length_mm,
                adjusted=round(residual.adjusted_mm, 3),
                residual=round(residual.residual_mm, 3),
                redundancy=round(residual.redundancy, 4),
                standardised=None if residual.standardised is None else round(residual.standardised, 3),
            )
            for residual in done.residuals
        ),
        suspects=tuple(suspect.reading.name for suspect in done.suspects),
        ambiguous=done.ambiguous,
    )


def _squared(room: RoomSurvey, tape: Tape) -> str:
    name, moved = max(room.squared_mm.items(), key=lambda item: item[1])
    if moved == 0:
        return "drawn as adjusted"
    return (
        f"drawn square where a side is less than {format_length(tape.graduation, tape)} off it: "
        f"{name} moves the most, by {_shift(moved, tape)}"
    )


def _taped_to(room: RoomSurvey) -> str:
    return {
        "studs": "bare studs, walls that stay to their face",
        "finish": "the finish that was still on the walls",
    }.get(room.taped_to, "bare studs, walls that stay to their face (taken so, the job does not say)")


def _shift(shift_mm: float, tape: Tape) -> str:
    """A move too small for the tape, in decimals of its unit, never said to be less than it is."""
    if tape is Tape.INCH:
        return f"{math.ceil(shift_mm / _MM_PER_IN * 1000 - 1e-6) / 1000:.3f} in"
    return f"{math.ceil(shift_mm * 100 - 1e-6) / 100:.2f} mm"


def _area(room: RoomSurvey, tape: Tape) -> str:
    return f"{room.area_m2 / _M2_PER_SQ_FT:.2f} sq ft" if tape is Tape.INCH else f"{room.area_m2:.3f} m²"


def _reading_line(residual: Residual, tape: Tape) -> str:
    taped = format_length(ticks_from_mm(residual.reading.length_mm), tape)
    adjusted = format_length(ticks_from_mm(residual.adjusted_mm), tape)
    # Adding nothing to a rounded value takes the minus off its zero.
    inches, millimetres = round(residual.residual_mm / _MM_PER_IN, 2) + 0.0, round(residual.residual_mm, 1) + 0.0
    size = f"{inches:+.2f} in" if tape is Tape.INCH else f"{millimetres:+.1f} mm"
    off = size if residual.redundancy > 0.0 else "nothing checks it"
    return f"  {residual.reading.name:<9} {taped:>14} {adjusted:>14}   {off}"


def _within(uncertainty_mm: float, tape: Tape) -> str:
    if uncertainty_mm == 0.0:
        return "held"
    # Never said to be surer than it is: up to the next graduation.
    marks = -(-ticks_from_mm(uncertainty_mm) // tape.graduation)
    return format_length(marks * tape.graduation, tape)
