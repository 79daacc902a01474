"""What follows from the planes of a floor that falls: its folds, volumes, and heights along its open sides."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

import shapely
from shapely import Polygon

from firstcourse.geometry import Point, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fall_fields import Fall, Plane
from firstcourse.verify.structure import Surface

NEAR = 4.0
"""What rounding a point of two planes can move it by [ticks]."""
SAME = 1e-5
"""Slopes nearer than this are one slope: heights are rounded to ticks."""
TICKS3_PER_LITRE = (100.0 * TICKS_PER_MM) ** 3


@dataclass(frozen=True, slots=True)
class Fold:
    """A line that two planes share and turn at: its ends, whether a valley, fall along it, turn across it."""

    low: Point
    high: Point
    valley: bool
    along: float
    turn: float


def drain_line(fall: Fall) -> shapely.Geometry:
    """The drain, a point or a line."""
    return shapely.Point(fall.drain[0]) if len(fall.drain) == 1 else shapely.LineString(fall.drain)


def folds_of(fall: Fall) -> list[Fold]:
    """Every fold but those that lie in a linear drain."""
    drain = drain_line(fall)
    return [
        fold
        for one, other in combinations(fall.planes, 2)
        for fold in _between(one, other)
        if max(drain.distance(shapely.Point(end)) for end in (fold.low, fold.high)) > NEAR
    ]


def _between(one: Plane, other: Plane) -> Iterator[Fold]:
    tilt = (one.gradient[0] - other.gradient[0], one.gradient[1] - other.gradient[1])
    turn = math.hypot(*tilt)
    if turn <= SAME:
        return
    inside = Polygon(one.ring).representative_point()
    valley = one.height((inside.x, inside.y)) > other.height((inside.x, inside.y))
    for a, b in sides(one.ring):
        for c, d in sides(other.ring):
            shared = _shared(a, b, c, d)
            if shared is not None:
                low, high = sorted(shared, key=one.height)
                along = (one.height(high) - one.height(low)) / math.dist(low, high)
                yield Fold(low, high, valley, along, turn)


def _shared(a: Point, b: Point, c: Point, d: Point) -> tuple[Point, Point] | None:
    length = math.dist(a, b)
    u, v = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    if any(abs((p[0] - a[0]) * v - (p[1] - a[1]) * u) > NEAR for p in (c, d)):
        return None
    places = sorted((p[0] - a[0]) * u + (p[1] - a[1]) * v for p in (c, d))
    start, end = max(0.0, places[0]), min(length, places[1])
    if end - start <= 2 * NEAR:
        return None
    one = (round(a[0] + u * start), round(a[1] + v * start))
    return one, (round(a[0] + u * end), round(a[1] + v * end))


def volume(planes: tuple[Plane, ...]) -> tuple[float, float]:
    """Area of the planes, and the volume between them and the drain's level [ticks², ticks³]."""
    area = held = 0.0
    for plane in planes:
        shape = Polygon(plane.ring)
        area += shape.area
        held += shape.area * plane.height((shape.centroid.x, shape.centroid.y))
    return area, held


def open_heights(surface: Surface, fall: Fall) -> list[int]:
    """Heights over the drain along the sides that are open to the room [ticks]."""
    lines = [
        shapely.LineString(line)
        for line, kind in zip(sides(surface.outline), surface.sides, strict=True)
        if kind == "free"
    ]
    return [
        level.height
        for level in fall.levels
        if any(line.distance(shapely.Point(level.at)) <= NEAR for line in lines)
    ]
