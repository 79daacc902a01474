"""Feature bands: a wall's courses opened at a course joint to take courses of another tile."""

from collections.abc import Sequence
from dataclasses import dataclass

import shapely
from shapely import MultiPolygon, Polygon

from firstcourse.tiling.model import XY, RepeatCell


@dataclass(frozen=True, slots=True, kw_only=True)
class Laying:
    """One pattern over one area.

    Attributes:
        cell: The repeat.
        shift: Where its origin lies [mm].
        area: Where it goes [mm].
    """

    cell: RepeatCell
    shift: XY
    area: Polygon | MultiPolygon


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Level courses of another tile.

    Attributes:
        cell: Its stacked repeat.
        bottom: Wanted height of its lower edge [mm].
        courses: How many.
    """

    cell: RepeatCell
    bottom: float
    courses: int


def with_bands(main: Laying, bands: Sequence[Band]) -> tuple[Laying, ...]:
    """Part an area of level courses by its bands, from the foot up.

    Each band begins at the course joint nearest to the height wanted; the courses above start anew on top of it,
    their upright joints where they were.

    Args:
        main: Level courses over the whole area.
        bands: In any order; one that would begin within the last is moved on top of it.
    """
    parts: list[Laying] = []
    cell, joint, (start_u, base) = main.cell, main.cell.joint, main.shift
    pitch = cell.step_b[1]
    left, lower, right, upper = main.area.bounds
    floor = lower
    for band in sorted(bands, key=lambda item: item.bottom):
        at = max(base + round((band.bottom - base) / pitch) * pitch, floor)
        top = at + band.courses * band.cell.step_b[1] - band.cell.joint
        for laying, foot, head in (
            (Laying(cell=cell, shift=(start_u, base), area=main.area), floor, at - joint),
            (Laying(cell=band.cell, shift=(start_u, at), area=main.area), at, top),
        ):
            part = main.area.intersection(shapely.box(left, foot, right, head)) if head > foot else Polygon()
            if part.area > 0:
                parts.append(Laying(cell=laying.cell, shift=laying.shift, area=part))
        floor = base = top + joint
    rest = main.area.intersection(shapely.box(left, floor, right, upper)) if upper > floor else Polygon()
    if rest.area > 0:
        parts.append(Laying(cell=cell, shift=(start_u, base), area=rest))
    return tuple(parts)
