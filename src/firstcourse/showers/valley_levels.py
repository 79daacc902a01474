"""Points along the valleys of a shower floor that are set to height, and checked on site."""

import math
from collections.abc import Sequence
from typing import Literal

from firstcourse.plan import LevelPoint
from firstcourse.showers.fall_planes import FallingFloor
from firstcourse.tiles import XY
from firstcourse.units import TICKS_PER_MM, ticks_from_mm, to_mm

_TOUCH = TICKS_PER_MM
"""Points nearer than this are one point to a setter [ticks]."""


def valley_levels(floor: FallingFloor, perimeter: Sequence[LevelPoint], spacing: int) -> tuple[LevelPoint, ...]:
    """The ends of every valley that no point of the perimeter marks, and points between them.

    A valley longer than `spacing` is parted into equal parts that are not. Each point is named once, though
    several valleys meet in it.

    Args:
        floor: The floor and its valleys.
        perimeter: Points that are set already.
        spacing: Greatest distance between points of one valley [ticks].
    """
    points = list(perimeter)

    def number(point: LevelPoint) -> int:
        for index, other in enumerate(points, start=1):
            if math.dist(point.at, other.at) <= _TOUCH:
                return index
        points.append(point)
        return len(points)

    def end_of(at: XY) -> LevelPoint:
        kind: Literal["drain", "valley_end"] = "drain" if floor.on_drain(at) else "valley_end"
        return LevelPoint(at=_ticks(at), height=ticks_from_mm(floor.height(at)), kind=kind)

    for fold in floor.valleys:
        between = number(end_of(fold.low)), number(end_of(fold.high))
        length = math.dist(fold.low, fold.high)
        parts = math.ceil(length / to_mm(spacing) - 1e-6)
        for part in range(1, parts):
            share = part / parts
            at = (
                fold.low[0] + (fold.high[0] - fold.low[0]) * share,
                fold.low[1] + (fold.high[1] - fold.low[1]) * share,
            )
            height, along = ticks_from_mm(floor.height(at)), ticks_from_mm(length * share)
            number(LevelPoint(at=_ticks(at), height=height, kind="valley", between=between, along=along))
    return tuple(points[len(perimeter) :])


def _ticks(at: XY) -> tuple[int, int]:
    return ticks_from_mm(at[0]), ticks_from_mm(at[1])
