"""One room as its readings prove it, and how its headline numbers came about."""

import math
from dataclasses import dataclass

from firstcourse.geometry import Point, Ring, area2
from firstcourse.survey.network import Adjustment
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Name, Ref, Value, Word, length, measure
from firstcourse.workings import Working

_TICKS_PER_M = 1000 * TICKS_PER_MM


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomSurvey:
    """What the readings of one room prove.

    Attributes:
        plan: Corner to its point on the floor plan seen from above, first side along the top [ticks].
        adjusted: Corner to where the readings put it on the same plan [ticks].
        outline: The floor outline, counter-clockwise; sides within one graduation of square are drawn square.
        taped_to: What the tape touched on walls to be boarded, `studs` or `finish`; empty where it is not said.
    """

    name: str
    corners: tuple[str, ...]
    adjustment: Adjustment
    plan: dict[str, Point]
    adjusted: dict[str, Point]
    outline: Ring
    taped_to: str = ""

    @property
    def squared_mm(self) -> dict[str, float]:
        """How far drawing sides square moved each corner from where the readings put it [mm]."""
        return {name: math.dist(at, self.adjusted[name]) / TICKS_PER_MM for name, at in self.plan.items()}

    @property
    def area_m2(self) -> float:
        """Of the floor [m²]."""
        return abs(area2(self.outline)) / 2 / _TICKS_PER_M**2


def room_workings(room: RoomSurvey) -> tuple[Working, ...]:
    """Workings of the floor's area and of how far the readings check each other."""
    done = room.adjustment
    worst = max(done.residuals, key=lambda residual: abs(residual.residual_mm))
    corners = tuple(Ref(ref=f"{room.name}/corner/{name}") for name in room.corners)
    moved = room.squared_mm
    return (
        Working(
            formula="survey-area",
            at=(room.name,),
            inputs={"corner": corners, **_points(room, room.plan)},
            result=measure(room.area_m2, "m2"),
        ),
        Working(
            formula="survey-checks",
            at=(room.name,),
            inputs={
                "readings": len(done.residuals),
                "corners": len(room.corners),
                "needed": len(done.residuals) - done.freedom,
                "taped_to": Word(word=room.taped_to or "untold"),
                "changed": Name(name=worst.reading.name),
                "by": measure(abs(worst.residual_mm), "mm"),
            },
            result=done.freedom,
        ),
        Working(
            formula="survey-square",
            at=(room.name,),
            inputs={
                "corner": corners,
                **_points(room, room.adjusted),
                "moved": tuple(measure(moved[name], "mm") for name in room.corners),
            },
            result=measure(max(moved.values()), "mm"),
        ),
    )


def _points(room: RoomSurvey, points: dict[str, Point]) -> dict[str, Value]:
    return {
        axis: tuple(length(points[name][number]) for name in room.corners)
        for number, axis in enumerate(("u", "v"))
    }
