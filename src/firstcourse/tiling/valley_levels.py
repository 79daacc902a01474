"""Points along the valleys of a shower floor that are set to height, and checked on site."""

import math
from collections.abc import Sequence

from firstcourse.plan import LevelPoint
from firstcourse.tiling.fall_planes import FallingFloor
from firstcourse.tiling.model import XY
from firstcourse.tiling.words import length_text
from firstcourse.units import TICKS_PER_MM, Tape, ticks_from_mm, to_mm

_TOUCH = TICKS_PER_MM
"""Points nearer than this are one point to a setter [ticks]."""


def valley_levels(
    floor: FallingFloor, perimeter: Sequence[LevelPoint], spacing: int, tape: Tape
) -> tuple[LevelPoint, ...]:
    """The ends of every valley that no point of the perimeter marks, and points between them.

    A valley longer than `spacing` is parted into equal parts that are not. Each point is named once, though
    several valleys meet in it. Words name points by their numbers: the perimeter's come first, from 1.

    Args:
        floor: The floor and its valleys.
        perimeter: Points that are set already.
        spacing: Greatest distance between points of one valley [ticks].
        tape: Tape of the job.
    """
    points = list(perimeter)

    def number(at: XY, where: str) -> int:
        point = ticks_from_mm(at[0]), ticks_from_mm(at[1])
        for index, other in enumerate(points, start=1):
            if math.dist(point, other.at) <= _TOUCH:
                return index
        points.append(LevelPoint(at=point, height=ticks_from_mm(floor.height(at)), where=where))
        return len(points)

    for fold in floor.valleys:
        low, high = (
            number(end, "top of the drain" if floor.on_drain(end) else "end of a valley")
            for end in (fold.low, fold.high)
        )
        length = math.dist(fold.low, fold.high)
        parts = math.ceil(length / to_mm(spacing) - 1e-6)
        for part in range(1, parts):
            share = part / parts
            at = (
                fold.low[0] + (fold.high[0] - fold.low[0]) * share,
                fold.low[1] + (fold.high[1] - fold.low[1]) * share,
            )
            way = length_text(ticks_from_mm(length * share), tape)
            number(at, f"valley, {way} from point {low} towards {high}")
    return tuple(points[len(perimeter) :])
