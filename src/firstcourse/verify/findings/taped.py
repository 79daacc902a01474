"""Rooms as drawn, for what is taped from their sides: places from a side's left end, and how far walls lie."""

import math
from dataclasses import dataclass
from functools import cached_property

from shapely import LineString
from shapely import Point as Spot

from firstcourse.geometry import Point, Ring, axis_of, counter_clockwise
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.survey import drawn_corners
from firstcourse.verify.structure import Document

AT_WALL = 2
"""Rounding of a corner on a wall askew to the axes [ticks]."""


@dataclass(frozen=True)
class Wall:
    """A side of a room, or one that a wall meets at its end, with its two ends [ticks]."""

    pair: str
    start: Point
    end: Point

    @cached_property
    def line(self) -> LineString:
        """From end to end [ticks]."""
        return LineString([self.start, self.end])

    def off(self, at: Point) -> float:
        """How far a place lies from it [ticks]."""
        return float(self.line.distance(Spot(at)))

    def at(self, left: int, out: int) -> Point:
        """A place so far along from its left end and so far out into the room, to whole ticks."""
        (u, v), (du, dv) = self.start, self._way
        if axis_of(self.start, self.end):
            return u + round(du) * left + round(dv) * out, v + round(dv) * left - round(du) * out
        return round(u + du * left + dv * out), round(v + dv * left - du * out)

    def along(self, at: Point) -> float:
        """How far along from its left end a place lies [ticks]."""
        (u, v), (du, dv) = self.start, self._way
        return (at[0] - u) * du + (at[1] - v) * dv

    def box(self, left: int, out: int, right: int, far: int) -> Ring:
        """A rectangle square to it."""
        corners = self.at(left, out), self.at(right, out), self.at(right, far), self.at(left, far)
        return counter_clockwise(corners)

    @property
    def _way(self) -> tuple[float, float]:
        long = math.dist(self.start, self.end)
        return (self.end[0] - self.start[0]) / long, (self.end[1] - self.start[1]) / long


def walls_of(room: Node, plan: Document) -> dict[str, Wall]:
    """All sides of a room by their corners, each from its left end as seen from within; none if not drawn."""
    names = [str(corner) for corner, _ in room.rows("corners", ())]
    drawn = drawn_corners(plan, room.text("name"))
    if len(names) < 3 or drawn.keys() != set(names):
        return {}
    pairs = zip(names, [*names[1:], names[0]], strict=True)
    return {f"{left}-{right}": Wall(f"{left}-{right}", drawn[left], drawn[right]) for left, right in pairs}
