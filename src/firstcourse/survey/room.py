"""One room as its readings prove it, and how its headline numbers came about."""

from dataclasses import dataclass

from firstcourse.geometry import area2
from firstcourse.geometry.polygon import Point, Ring
from firstcourse.survey.network import Adjustment
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, format_length
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomSurvey:
    """What the readings of one room prove.

    Attributes:
        plan: Corner to its point on the floor plan seen from above, first side along the top [ticks].
        outline: The floor outline, counter-clockwise; sides within one graduation of square are drawn square.
    """

    name: str
    corners: tuple[str, ...]
    adjustment: Adjustment
    plan: dict[str, Point]
    outline: Ring


def floor_area(room: RoomSurvey, tape: Tape) -> tuple[str, str]:
    """The floor's area and its unit: square feet for an inch tape, else square metres."""
    doubled = abs(area2(room.outline))
    if tape is Tape.INCH:
        return f"{doubled / 2 / TICKS_PER_FOOT**2:.2f}", "sq ft"
    return f"{doubled / 2 / (1000 * TICKS_PER_MM) ** 2:.3f}", "m²"


def room_workings(room: RoomSurvey, tape: Tape) -> dict[str, Working]:
    """Workings of the floor's area and of how far the readings check each other."""
    done = room.adjustment
    area, unit = floor_area(room, tape)
    needed = len(done.residuals) - done.freedom
    worst = max(done.residuals, key=lambda residual: abs(residual.residual_mm))
    return {
        f"survey.{room.name}.area": Working(
            title=f"Floor area of {room.name}",
            formula="half the sum of u1 × v2 - u2 × v1 along the outline",
            values={
                name: f"{format_length(u, tape)}, {format_length(v, tape)}"
                for name, (u, v) in ((name, room.plan[name]) for name in room.corners)
            },
            result=area,
            unit=unit,
            source="coordinate method, any surveying textbook",
        ),
        f"survey.{room.name}.checks": Working(
            title=f"Readings of {room.name} beyond those needed",
            formula="readings - (2 × corners - 3)",
            values={"readings": str(len(done.residuals)), "corners": str(len(room.corners))},
            result=str(done.freedom),
            unit="readings",
            source="weighted least squares; Chandra, Surveying: Problem Solving, chapter 5",
            argument=(
                f"{needed} distances fix the shape of {len(room.corners)} corners.",
                f"The adjustment changes {worst.reading.name} the most, by {abs(worst.residual_mm):.1f} mm.",
            ),
        ),
    }
