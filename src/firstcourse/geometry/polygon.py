"""Rings of whole ticks and their passage to and from shapely.

Shapely works in floating point; a coordinate up to 100 m is 64 million ticks, far below the 2^53 that a float
holds exactly, so integer rings survive the passage unchanged and only computed crossings are rounded.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

import shapely
from shapely import Polygon

Point = tuple[int, int]
Ring = tuple[Point, ...]
type _XY = Sequence[float]
_MOST_SLOPE = math.tan(math.radians(10))
LEAST_AREA2 = 2 * 640 * 640
"""Twice one square millimetre [ticks²]: what is smaller comes from rounding, not from the room."""


def area2(ring: Ring) -> int:
    """Twice the signed area [ticks²], exact; positive when counter-clockwise.

    References:
        Coordinate method (shoelace formula), any surveying textbook.
    """
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in sides(ring))


def sides(ring: Ring) -> Iterator[tuple[Point, Point]]:
    """The ring's sides in order, each from point `i` to point `i + 1`."""
    return zip(ring, ring[1:] + ring[:1], strict=True)


def counter_clockwise(ring: Ring) -> Ring:
    """The ring running counter-clockwise, its first point kept."""
    return ring if area2(ring) > 0 else (ring[0], *reversed(ring[1:]))


def clockwise(ring: Ring) -> Ring:
    """The ring running clockwise, its first point kept."""
    return ring if area2(ring) < 0 else (ring[0], *reversed(ring[1:]))


def bounds(ring: Ring) -> tuple[int, int, int, int]:
    """Left, lower, right, upper [ticks]."""
    us = [point[0] for point in ring]
    vs = [point[1] for point in ring]
    return min(us), min(vs), max(us), max(vs)


def rectangle(left: int, lower: int, right: int, upper: int) -> Ring:
    """A counter-clockwise rectangle from its lower left corner."""
    return ((left, lower), (right, lower), (right, upper), (left, upper))


def moved(ring: Ring, by_u: int, by_v: int) -> Ring:
    """The ring shifted [ticks]."""
    return tuple((u + by_u, v + by_v) for u, v in ring)


def axis_of(a: Point, b: Point) -> Literal["u", "v", ""]:
    """`u` or `v` where the side runs along that axis exactly, else an empty text."""
    if a[1] == b[1]:
        return "u"
    return "v" if a[0] == b[0] else ""


def axis_near(a: Point, b: Point) -> Literal["u", "v", ""]:
    """`u` or `v` where the side turns no more than 10 degrees from that axis, else an empty text.

    No room is so square that its joists run along an axis exactly.
    """
    du, dv = abs(b[0] - a[0]), abs(b[1] - a[1])
    if dv <= du * _MOST_SLOPE:
        return "u"
    return "v" if du <= dv * _MOST_SLOPE else ""


def off_segment(point: _XY, a: _XY, b: _XY) -> float:
    """How far a point lies from the nearest point of the line from `a` to `b`, in the unit of the coordinates."""
    along = (b[0] - a[0], b[1] - a[1])
    length2 = along[0] * along[0] + along[1] * along[1]
    off = (point[0] - a[0], point[1] - a[1])
    share = min(max((off[0] * along[0] + off[1] * along[1]) / length2, 0.0), 1.0) if length2 else 0.0
    return math.hypot(off[0] - share * along[0], off[1] - share * along[1])


def is_simple(ring: Ring) -> bool:
    """Whether the ring bounds one area without touching or crossing itself."""
    return len(ring) >= 3 and Polygon(ring).is_valid and area2(ring) != 0


def circle_ring(centre: Point, radius: int, *, excess: int) -> Ring:
    """A polygon round a circle: never inside it, nowhere farther out than `excess` [ticks].

    The number of sides follows from the excess: a corner of a polygon of n sides round a circle of radius r lies
    r / cos(pi / n) from its centre.
    """
    count = 8
    while radius / math.cos(math.pi / count) - radius > max(excess, 2) / 2 and count < 128:
        count += 4
    reach = radius / math.cos(math.pi / count)
    return as_ring(
        (
            centre[0] + _away(reach * math.cos(2 * math.pi * (k + 0.5) / count)),
            centre[1] + _away(reach * math.sin(2 * math.pi * (k + 0.5) / count)),
        )
        for k in range(count)
    )


def _away(value: float) -> int:
    return math.ceil(value - 1e-6) if value > 0 else math.floor(value + 1e-6)


def as_ring(points: Iterable[Point]) -> Ring:
    """Points as a ring without doubled points and without points on a straight side."""
    kept: list[Point] = []
    for point in points:
        if not kept or kept[-1] != point:
            kept.append(point)
    while len(kept) > 1 and kept[0] == kept[-1]:
        kept.pop()
    return as_rings_alike(kept)[0] if kept else ()


def as_rings_alike(*outlines: Sequence[Point]) -> tuple[Ring, ...]:
    """Outlines of one shape in several places as rings with the same corners.

    Where rounding leaves a point doubled or on a straight side in one of them, none has it.

    Args:
        outlines: Each with the same points in the same order.
    """
    kept = list(zip(*outlines, strict=True))
    changed = True
    while changed and len(kept) > 2:
        changed = False
        for index in range(len(kept)):
            around = zip(kept[index - 1], kept[index], kept[(index + 1) % len(kept)], strict=True)
            if any((b[0] - a[0]) * (c[1] - b[1]) == (b[1] - a[1]) * (c[0] - b[0]) for a, b, c in around):
                del kept[index]
                changed = True
                break
    return tuple(zip(*kept, strict=True))


def to_shapely(ring: Ring, holes: Iterable[Ring] = ()) -> Polygon:
    """The ring as a shapely polygon, coordinates in ticks."""
    return Polygon(ring, list(holes))


def from_shapely(shape: shapely.Geometry) -> list[tuple[Ring, tuple[Ring, ...]]]:
    """Every area of a shape as a counter-clockwise ring with clockwise holes, rounded to ticks.

    Areas below one square millimetre, lines and points are dropped: they come from rounding. Each ring starts at
    its lowest, then leftmost point, and areas come in that order, so that the result does not depend on how the
    shape was made. Where rounding point by point would bring rings across each other, as a hole that lies within a
    tick of the outline, the crack between them closes.
    """
    found = []
    for part in shapely.get_parts(shape) if not isinstance(shape, Polygon) else [shape]:
        if not isinstance(part, Polygon):
            found += from_shapely(part) if hasattr(part, "geoms") else []
            continue
        outer = _ring_of(part.exterior)
        if len(outer) < 3 or abs(area2(outer)) < LEAST_AREA2:
            continue
        holes = tuple(
            sorted(
                clockwise(hole)
                for hole in (_ring_of(interior) for interior in part.interiors)
                if len(hole) >= 3 and abs(area2(hole)) >= LEAST_AREA2
            )
        )
        if not Polygon(outer, holes).is_valid:
            found += from_shapely(shapely.set_precision(part, 1.0))
            continue
        found.append((_from_lowest(counter_clockwise(outer)), holes))
    return sorted(found, key=lambda area: (area[0][0][1], area[0][0][0], area[0]))


def _ring_of(line: shapely.LinearRing) -> Ring:
    return as_ring((round(u), round(v)) for u, v in shapely.get_coordinates(line)[:-1].tolist())


def _from_lowest(ring: Ring) -> Ring:
    start = min(range(len(ring)), key=lambda index: (ring[index][1], ring[index][0]))
    return ring[start:] + ring[:start]
