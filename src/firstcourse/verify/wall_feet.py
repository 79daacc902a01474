"""Walls over their floors: what a plan leaves bare for bed and floor tile ends where the finished floor lies."""

import math
from collections.abc import Iterator, Mapping

import shapely
from shapely import Polygon

from firstcourse.geometry import Point, bounds, sides
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
    yield from _datums(plan)
    lifted = {
        surface.room for surface in plan.surfaces if any(is_floor(surface, why) for why, _ in surface.not_tiled)
    }
    lifted |= {room for room, floor in _floors(plan) if floor.tiles}
    left = {room for room in lifted if left_on_boards(room, by_id, plan)}
    for surface in plan.surfaces:
        if surface.room in left:
            continue
        if surface.room not in lifted or surface.kind != "wall" or not surface.boarded or not surface.tiles:
            continue
        line = wall_line(surface.id, surface.room, by_id)
        if line is None:
            yield Objection("VER-767", surface.id, "stays bare for a floor that it does not stand on")
            continue
        floors = floors_of(surface.room, by_id, plan)
        yield from _zones(surface, line, floors)
        yield from _bare(surface, line, floors)
        yield from _behind(surface, line, floors)


def _datums(plan: Document) -> Iterator[Objection]:
    """Walls that meet stand on one floor in their corner, whatever point their own heights count from."""
    walls = [one for one in plan.surfaces if one.kind == "wall" and len(one.corners) == 2 and not one.part_of]
    step = plan.tape.graduation
    for wall in walls:
        for after in walls:
            if (after.room, after.corners[0]) != (wall.room, wall.corners[1]):
                continue
            # A foot that slopes by less than the tape shows is drawn level, at its higher end.
            if abs(wall.datum + wall.foot[1][1] - after.datum - after.foot[0][1]) > step + NEAR:
                yield Objection("VER-767", after.id, f"stands higher or lower in its corner than {wall.id}")


def _floors(plan: Document) -> Iterator[tuple[str, Surface]]:
    for surface in plan.surfaces:
        if surface.id == f"{surface.room}/floor":
            yield surface.room, surface


def left_on_boards(room: str, by_id: Mapping[str, Surface], plan: Document) -> bool:
    """Whether a room out of level has a tiled shower floor, which is planned from level panels."""
    shower = by_id.get(f"{room}/floor/shower")
    walls = [one for one in plan.surfaces if one.room == room and one.kind == "wall" and one.corners]
    feet = [one.datum + v for one in walls if not one.part_of for _, v in one.foot]
    tiled = shower is not None and bool(shower.tiles)
    return tiled and bool(feet) and max(feet) - min(feet) >= plan.tape.graduation


def _bare(surface: Surface, line: tuple[Point, Point], floors: Floors) -> Iterator[Objection]:
    """What lies below the finished floor is left bare for it."""
    ground = Polygon(surface.outline)
    left, low, right, _ = ground.bounds
    taken = shapely.union_all([Polygon(ring) for _, ring in surface.not_tiled])
    for step in range(1, _LOOKS):
        u = left + (right - left) * step / _LOOKS
        tops = list(floors.heights(_on(line, u)))
        if tops:
            top = min(tops) + surface.foot_at(u) - NEAR
            below = ground.intersection(shapely.LineString([(u, low - 1), (u, max(top, low - 1))]))
            if below.difference(taken).length > NEAR:
                yield Objection("VER-767", surface.id, "is not left bare for the floor that stands before it")
                return


def _zones(surface: Surface, line: tuple[Point, Point], floors: Floors) -> Iterator[Objection]:
    """The upper edge of what stays bare is the finished floor, and it reaches down to the foot of the boards."""
    low = bounds(surface.outline)[1]
    foot = surface.foot_at
    for why, ring in surface.not_tiled:
        if not is_floor(surface, why):
            continue
        for (u, below), (v, above) in sides(ring):
            at_foot = below - foot(u) <= NEAR and above - foot(v) <= NEAR
            if abs(v - u) <= NEAR or at_foot or max(below, above) <= low + NEAR:
                continue
            for step in range(1, _LOOKS):
                share = step / _LOOKS
                at = u + (v - u) * share
                if not floors.may_lie(_on(line, at), below + (above - below) * share - surface.foot_at(at)):
                    yield Objection("VER-767", surface.id, f"stays bare for {why} up to where that does not lie")
                    return


def _behind(surface: Surface, line: tuple[Point, Point], floors: Floors) -> Iterator[Objection]:
    """No tile begins below the lowest floor that may lie before it."""
    for tile in surface.tiles:
        left, low, right, _ = bounds(tile.outline)
        for step in range(1, _LOOKS):
            u = left + (right - left) * step / _LOOKS
            found = list(floors.heights(_on(line, u)))
            top = min(found, default=-math.inf) + surface.foot_at(u) - NEAR
            if low >= top:  # nothing of it lies lower
                continue
            column = tile.shape.intersection(shapely.LineString([(u, low - 1), (u, low + 1 + _span(tile.shape))]))
            if not column.is_empty and column.bounds[1] < top:
                yield Objection("VER-767", tile.id, "is set below the finished floor")
                break


def _span(shape: Polygon) -> float:
    return float(shape.bounds[3] - shape.bounds[1])


def _on(line: tuple[Point, Point], left: float) -> tuple[float, float]:
    (a, b), length = line, math.dist(*line)
    return a[0] + (b[0] - a[0]) * left / length, a[1] + (b[1] - a[1]) * left / length
