"""What is taped to end near a wall stands at it: no room is square, and no setter leaves a crack there."""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from shapely import LineString
from shapely import Point as ShapelyPoint

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import (
    Point,
    Ring,
    as_ring,
    counter_clockwise,
    from_shapely,
    is_simple,
    sides,
    to_shapely,
)
from firstcourse.job import Room
from firstcourse.plan import Segment
from firstcourse.rules import RuleSet
from firstcourse.units import Tape
from firstcourse.values import Name, Word, least, length, most

TOUCH, DOUBT = "shower.touch", "shower.doubt"
"""The rules of what is taken to stand at a wall, and of what is asked about beside it."""
_AT_WALL = 2
"""Rounding of a corner on a wall askew to the axes [ticks]."""


class Wall(NamedTuple):
    """A side of the room by its corners, such as `A-B`, its ends in the order of the room's outline."""

    name: str
    start: Point
    end: Point

    @property
    def line(self) -> LineString:
        """From end to end [ticks]."""
        return LineString([self.start, self.end])

    def off(self, point: Point) -> float:
        """How far a point lies from it [ticks]."""
        return float(self.line.distance(ShapelyPoint(point)))


def walls_of(room: Room, plan: Mapping[str, Point]) -> tuple[Wall, ...]:
    """All walls of a room in the order of its outline, which runs against that of its corners."""
    names = tuple(reversed(room.corners))
    return tuple(
        Wall(f"{left}-{right}", plan[right], plan[left])
        for right, left in zip(names, names[1:] + names[:1], strict=True)
    )


def ends_of(wall: str, names: Sequence[str], extent: Ring) -> tuple[Wall, Wall]:
    """The walls that meet a wall at its ends, as lines on its own drawing.

    Args:
        wall: Such as `A-B`.
        names: All sides of the room in order.
        extent: The wall's own outline from its foot's left end.
    """
    here = list(names).index(wall)
    before, after = names[here - 1], names[(here + 1) % len(names)]
    return Wall(before, extent[3], extent[0]), Wall(after, extent[1], extent[2])


def stood(ring: Ring, walls: Sequence[Wall], touch: int) -> tuple[Ring, dict[str, int]]:
    """A thing that stands on a floor or in a wall, moved to the walls it comes near, see `at_walls`.

    What is too thin to tell which of its sides stands at the wall stays as it was taped.
    """
    if to_shapely(ring).buffer(-touch).is_empty:
        return ring, {}
    found, by_wall = at_walls(ring, walls, touch)
    return (found, by_wall) if len(found) > 2 and is_simple(found) else (ring, {})


def near_walls(
    what: Word | Name, room: str, near: tuple[Mapping[str, int], Mapping[str, int]], tape: Tape, rules: RuleSet
) -> Iterator[Finding]:
    """How far a thing was moved to stand at walls, and gaps beside it that nobody leaves on purpose.

    Args:
        what: The shower floor, or what the job calls it.
        room: Its name.
        near: By wall, how far corners were moved to it; and how wide the gap is beside it [ticks].
        tape: What moves by less than a mark of it is not told.
        rules: The rules in force.
    """
    touch, doubt = rules.entry(TOUCH), rules.entry(DOUBT)
    moved, beside = near
    for wall, by in moved.items():
        if by > tape.graduation:
            yield touch.found(
                "SUR-106",
                Severity.NOTE,
                f"{room}/wall/{wall}",
                measured=length(by),
                limit=most(length(rules.ticks(touch.id))),
                remedies=("tape_gap",),
                thing=what,
            )
    for wall, gap in beside.items():
        yield doubt.found(
            "SUR-107",
            Severity.FIX,
            f"{room}/wall/{wall}",
            measured=length(gap),
            limit=least(length(rules.ticks(doubt.id))),
            remedies=("tape_again",),
            thing=what,
        )


def at_walls(ring: Ring, walls: Sequence[Wall], touch: int) -> tuple[Ring, dict[str, int]]:
    """An outline with the corners near a wall moved to it, and the room's corners near its sides added.

    Args:
        ring: As taped.
        walls: All sides of the room.
        touch: What lies nearer than this is taken to stand at the wall [ticks].

    Returns:
        The outline; and by wall, how far off it the corner was that is moved farthest to it [ticks].
    """
    moved: dict[str, int] = {}
    found: list[Point] = []
    corners = [wall.start for wall in walls]
    for a, b in sides(ring):
        at = _at_wall(a, walls, touch)
        if at != a:
            # In a corner of the room it may have stood at one of the two walls already.
            for wall in walls:
                by = round(wall.off(a)) if wall.off(at) <= _AT_WALL else 0
                if by:
                    moved[wall.name] = max(moved.get(wall.name, 0), by)
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
    return math.ceil(past), nearest.name


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
                found[wall.name] = max(found.get(wall.name, 0), round(gap))
    return found
