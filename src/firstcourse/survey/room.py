"""One room as its readings prove it, and how its headline numbers came about."""

import math
from dataclasses import dataclass

from firstcourse.geometry import area2
from firstcourse.geometry.polygon import Point, Ring
from firstcourse.survey.network import Adjustment
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, format_length
from firstcourse.workings import Working

_MM_PER_IN = 25.4


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomSurvey:
    """What the readings of one room prove.

    Attributes:
        plan: Corner to its point on the floor plan seen from above, first side along the top [ticks].
        outline: The floor outline, counter-clockwise; sides within one graduation of square are drawn square.
        squared_mm: How far drawing them so moved each corner from where the readings put it [mm].
        taped_to: What the tape touched on walls to be boarded, `studs` or `finish`; empty where it is not said.
    """

    name: str
    corners: tuple[str, ...]
    adjustment: Adjustment
    plan: dict[str, Point]
    outline: Ring
    squared_mm: dict[str, float]
    taped_to: str = ""


def told_taped_to(room: RoomSurvey) -> str:
    """What sides and diagonals run between, in words."""
    return {
        "studs": "bare studs, walls that stay to their face",
        "finish": "the finish that was still on the walls",
    }.get(room.taped_to, "bare studs, walls that stay to their face (taken so, the job does not say)")


def shift_text(shift_mm: float, tape: Tape) -> str:
    """A move too small for the tape, in decimals of its unit, never said to be less than it is."""
    if tape is Tape.INCH:
        return f"{math.ceil(shift_mm / _MM_PER_IN * 1000 - 1e-6) / 1000:.3f} in"
    return f"{math.ceil(shift_mm * 100 - 1e-6) / 100:.2f} mm"


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
    moved, _, moved_unit = shift_text(max(room.squared_mm.values()), tape).partition(" ")
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
            values={
                "readings": str(len(done.residuals)),
                "corners": str(len(room.corners)),
                "taped to": told_taped_to(room),
            },
            result=str(done.freedom),
            unit="readings",
            source="weighted least squares; Chandra, Surveying: Problem Solving, chapter 5",
            argument=(
                f"{needed} distances fix the shape of {len(room.corners)} corners.",
                f"The adjustment changes {worst.reading.name} the most, by {abs(worst.residual_mm):.1f} mm.",
            ),
        ),
        f"survey.{room.name}.square": Working(
            title=f"How far corners of {room.name} are moved so that its sides are drawn square",
            formula="drawn - adjusted; sides less than a graduation of the tape off square only",
            values={name: shift_text(room.squared_mm[name], tape) for name in room.corners},
            result=moved,
            unit=f"{moved_unit} at most",
            source="house assumption: no tape shows less than its graduation",
        ),
    }
