"""The floor along the foot of an upright face: the room's, a shower's as it falls, or a kerb's top between."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from shapely import LineString, Polygon, get_coordinates, get_parts
from shapely import Point as ShapelyPoint

from firstcourse.geometry import Point, Ring
from firstcourse.plan import OWN_HEIGHT, Fall

ROOM_FLOOR, SHOWER_FLOOR, KERB_TOP = "floor", "floor/shower", "floor/shower/kerb"
"""What a foot may stand on in its room."""
_ROUNDED = 4
"""Places and heights that differ by no more than this were rounded apart [ticks]."""

type _Part = tuple[float, float, float, float, str]
"""Both ends along the line, the height at each, and what lies there [ticks]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Foot:
    """Lower edge of an upright face.

    Attributes:
        points: How far along and how high, from left to right [ticks].
        on: What each piece between two points stands on: one of the above, or `OWN_HEIGHT`.
    """

    points: Ring
    on: tuple[str, ...]

    @property
    def lowest(self) -> int:
        """Height of its lowest point [ticks]."""
        return min(high for _, high in self.points)

    @property
    def highest(self) -> int:
        """Height of its highest point [ticks]."""
        return max(high for _, high in self.points)


@dataclass(frozen=True, slots=True, kw_only=True)
class Floors:
    """The finished floors of a room, heights over its panels.

    Attributes:
        room: Height of the room's own floor [ticks].
        fall: How a shower floor there falls; None without one.
        tray: What the shower takes up of the room, kerb included.
        kerb: Height of the kerb's top over the drain [ticks].
    """

    room: int
    fall: Fall | None = None
    tray: Ring = ()
    kerb: int = 0

    def under(self, a: Point, b: Point) -> Foot:
        """The floor along a line, from `a` at its left end to `b`."""
        length = math.dist(a, b)
        parts = [*self._parts(LineString([a, b])), (0.0, length, float(self.room), float(self.room), ROOM_FLOOR)]
        points: list[Point] = []
        on: list[str] = []
        for start, end in pairwise(_places(parts, length)):
            part = next(part for part in parts if part[0] <= (start + end) / 2 <= part[1])
            one, other = (round(start), _at(part, start)), (round(end), _at(part, end))
            if not points:
                points.append(one)
            elif abs(points[-1][1] - one[1]) > _ROUNDED:
                points.append(one)
                on.append(KERB_TOP if KERB_TOP in (part[4], on[-1]) else ROOM_FLOOR)
            if on and on[-1] == part[4] and _straight(points[-2], points[-1], other):
                points[-1] = other
            else:
                points.append(other)
                on.append(part[4])
        return Foot(points=tuple(points), on=tuple(on))

    def height(self, at: Point) -> int:
        """Height of the finished floor at a point; beside the shower that of the room [ticks]."""
        return self.under(at, (at[0] + 2 * _ROUNDED, at[1])).points[0][1]

    def _parts(self, line: LineString) -> Iterator[_Part]:
        """What lies under a line beside the room's own floor: the planes of the shower floor, then its kerb."""
        if self.fall is None or self.fall.drain_height is None:
            return
        drain = self.fall.drain_height
        for plane in self.fall.planes:
            (u, v), (gu, gv) = plane.ring[0], plane.gradient
            for start, end in _within(line, plane.ring):
                one, other = (
                    drain + plane.heights[0] + gu * (at.x - u) + gv * (at.y - v)
                    for at in (line.interpolate(start), line.interpolate(end))
                )
                yield start, end, one, other, SHOWER_FLOOR
        if self.kerb:
            high = float(drain + self.kerb)
            for start, end in _within(line, self.tray):
                yield start, end, high, high, KERB_TOP


def _within(line: LineString, ring: Ring) -> Iterator[tuple[float, float]]:
    """Stretches of a line that lie in an area, as distances from its start."""
    # Corners are rounded to ticks, so that a line along a side may run beside it by a little.
    for part in get_parts(line.intersection(Polygon(ring).buffer(_ROUNDED / 2, join_style="mitre"))):
        along = sorted(line.project(ShapelyPoint(at)) for at in get_coordinates(part))
        if along and along[-1] - along[0] > _ROUNDED:
            yield along[0], along[-1]


def _places(parts: list[_Part], length: float) -> list[float]:
    """Where one part ends and another begins, those that were rounded apart as one."""
    found = [0.0]
    for at in sorted({end for part in parts for end in part[:2]}):
        if at - found[-1] > _ROUNDED and length - at > _ROUNDED:
            found.append(at)
    return [*found, length]


def _at(part: _Part, at: float) -> int:
    start, end, one, other, _ = part
    return round(one + (other - one) * (at - start) / (end - start))


def _straight(a: Point, b: Point, c: Point) -> bool:
    """Whether the middle one of three points lies on the line between the others."""
    if a[0] == b[0]:
        return False
    return abs(a[1] + (c[1] - a[1]) * (b[0] - a[0]) / (c[0] - a[0]) - b[1]) <= _ROUNDED


def level_foot(length: int, height: int, on: str = OWN_HEIGHT) -> Foot:
    """A foot of one length at one height [ticks]."""
    return Foot(points=((0, height), (length, height)), on=(on,))
