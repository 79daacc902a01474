"""What is taped to end near a wall stands at it: no room is square, and no setter leaves a crack there."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from shapely import LineString
from shapely import Point as ShapelyPoint

from firstcourse.geometry import as_ring, counter_clockwise, from_shapely, sides, to_shapely
from firstcourse.geometry.polygon import Point, Ring
from firstcourse.plan import Segment


class Wall(NamedTuple):
    """A side of the room by its label, its ends in the order of the room's outline."""

    label: str
    start: Point
    end: Point

    @property
    def line(self) -> LineString:
        """From end to end [ticks]."""
        return LineString([self.start, self.end])


def at_walls(ring: Ring, walls: Sequence[Wall], touch: int) -> tuple[Ring, dict[str, int]]:
    """An outline with the corners near a wall moved to it, and the room's corners near its sides added.

    Args:
        ring: As taped.
        walls: All sides of the room.
        touch: What lies nearer than this is taken to stand at the wall [ticks].

    Returns:
        The outline; and by wall, the farthest that a corner was moved to it [ticks].
    """
    moved: dict[str, int] = {}
    found: list[Point] = []
    corners = [wall.start for wall in walls]
    for a, b in sides(ring):
        at = _at_wall(a, walls, touch)
        if at != a:
            nearest = min(walls, key=lambda wall: wall.line.distance(ShapelyPoint(a)))
            moved[nearest.label] = max(moved.get(nearest.label, 0), round(math.dist(at, a)))
        found.append(at)
        other = _at_wall(b, walls, touch)
        line = LineString([at, other]) if at != other else None
        # A side that runs past a corner of the room is part of it at a wall, part of it open.
        between = [
            corner
            for corner in corners
            if line is not None and corner not in (at, other) and line.distance(ShapelyPoint(corner)) <= touch
        ]
        found += sorted(between, key=lambda corner: math.dist(corner, at))
    return counter_clockwise(as_ring(tuple(found))), moved


def _at_wall(at: Point, walls: Sequence[Wall], touch: int) -> Point:
    """A corner moved into the room's corner or onto the wall that it comes near."""
    corner = min((wall.start for wall in walls), key=lambda a: (math.dist(a, at), a))
    if max(abs(corner[0] - at[0]), abs(corner[1] - at[1])) <= touch:
        return corner
    point = ShapelyPoint(at)
    nearest = min((wall.line for wall in walls), key=lambda line: line.distance(point))
    if nearest.distance(point) > touch:
        return at
    foot = nearest.interpolate(nearest.project(point))
    return round(foot.x), round(foot.y)


def within(ring: Ring, room: Ring, touch: int) -> Ring | None:
    """The part of an outline that lies in the room; None where it reaches out by more than `touch` [ticks]."""
    area, ground = to_shapely(ring), to_shapely(room)
    if not ground.buffer(touch, join_style="mitre").covers(area):
        return None
    if ground.buffer(2, join_style="mitre").covers(area):
        # Rounding to whole ticks alone puts a corner so far off a wall askew.
        return ring
    parts = from_shapely(area.intersection(ground))
    return parts[0][0] if len(parts) == 1 and not parts[0][1] else None


def farthest_out(ring: Ring, room: Ring, walls: Sequence[Wall]) -> tuple[int, str]:
    """How far the corner farthest out of the room lies past which wall [ticks]; 0 where none does."""
    ground = to_shapely(room)
    past, at = max((ground.distance(ShapelyPoint(at)), at) for at in ring)
    nearest = min(walls, key=lambda wall: wall.line.distance(ShapelyPoint(at)))
    return math.ceil(past), nearest.label


def gaps_beside(open_sides: Sequence[Segment], walls: Sequence[Wall], doubt: int) -> dict[str, int]:
    """By wall, the widest gap beside a side that is open along it and nearer to it than `doubt` [ticks].

    Args:
        open_sides: Sides that stand at no wall.
        walls: All sides of the room.
        doubt: A gap as wide as this is ground.
    """
    found: dict[str, int] = {}
    for a, b in open_sides:
        for wall in walls:
            gap = max(wall.line.distance(ShapelyPoint(a)), wall.line.distance(ShapelyPoint(b)))
            if 2 < gap < doubt and math.dist(a, b) > doubt:
                found[wall.label] = max(found.get(wall.label, 0), round(gap))
    return found
