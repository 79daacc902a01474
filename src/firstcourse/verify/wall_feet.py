"""Walls over their floors: what a plan leaves bare for bed and floor tile ends where the finished floor lies."""

import math
from collections.abc import Iterator

import shapely
from shapely import Polygon

from firstcourse.geometry import bounds, sides
from firstcourse.geometry.polygon import Point
from firstcourse.verify.benches import NEAR, Floors, floors_of, wall_line
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_LOOKS = 8
"""Places along each line that are looked at."""


def is_floor(surface: Surface, why: str) -> bool:
    """Whether what stands before a wall is said to be a floor of its room, or the kerb upon it."""
    return surface.kind == "wall" and (f"{why}/").startswith(f"{surface.room}/floor/")


def check_wall_feet(plan: Document) -> Iterator[Objection]:
    """Object to walls that leave more or less bare than the floor before them takes, and to tile set behind it."""
    by_id = {surface.id: surface for surface in plan.surfaces}
    lifted = {
        surface.room for surface in plan.surfaces if any(is_floor(surface, why) for why, _ in surface.not_tiled)
    }
    for surface in plan.surfaces:
        if surface.room not in lifted or surface.kind != "wall" or not surface.boarded or not surface.tiles:
            continue
        line = wall_line(f"wall {'-'.join(surface.corners)}", surface.room, by_id)
        if line is None:
            yield Objection("VER-767", surface.id, "stays bare for a floor that it does not stand on")
            continue
        floors = floors_of(surface.room, by_id, plan)
        yield from _zones(surface, line, floors)
        yield from _behind(surface, line, floors)


def _zones(surface: Surface, line: tuple[Point, Point], floors: Floors) -> Iterator[Objection]:
    """The upper edge of what stays bare is the finished floor, and it reaches down to the foot of the boards."""
    low = bounds(surface.outline)[1]
    for why, ring in surface.not_tiled:
        if not is_floor(surface, why):
            continue
        for (u, below), (v, above) in sides(ring):
            if abs(v - u) <= NEAR or max(below, above) <= low + NEAR:
                continue
            for step in range(1, _LOOKS):
                share = step / _LOOKS
                if not floors.may_lie(_on(line, u + (v - u) * share), below + (above - below) * share):
                    yield Objection("VER-767", surface.id, f"stays bare for {why} up to where that does not lie")
                    return


def _behind(surface: Surface, line: tuple[Point, Point], floors: Floors) -> Iterator[Objection]:
    """No tile begins below the lowest floor that may lie before it."""
    for tile in surface.tiles:
        left, low, right, _ = bounds(tile.outline)
        for step in range(1, _LOOKS):
            u = left + (right - left) * step / _LOOKS
            found = list(floors.heights(_on(line, u)))
            column = tile.shape.intersection(shapely.LineString([(u, low - 1), (u, low + 1 + _span(tile.shape))]))
            if found and not column.is_empty and column.bounds[1] < min(found) - NEAR:
                yield Objection("VER-767", tile.id, "is set below the finished floor")
                break


def _span(shape: Polygon) -> float:
    return float(shape.bounds[3] - shape.bounds[1])


def _on(line: tuple[Point, Point], left: float) -> tuple[float, float]:
    (a, b), length = line, math.dist(*line)
    return a[0] + (b[0] - a[0]) * left / length, a[1] + (b[1] - a[1]) * left / length
