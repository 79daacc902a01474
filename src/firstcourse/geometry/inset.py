"""Taking a gap off each side of an outline, or adding one round an opening.

Sides along an axis land on the surface's grid of tape marks, so that what is cut can be marked; the gap takes the
remainder: at least what is asked, less than one graduation more. Other sides keep the gap, square to them.
"""

import math
from dataclasses import dataclass

import shapely
from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.geometry.polygon import Point, Ring, axis_of, sides
from firstcourse.units import ceil_to, floor_to


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """Grid of tape marks of one surface: marks lie at `origin + k * graduation` on both axes [ticks]."""

    origin: Point
    graduation: int


def inset(outline: Ring, gaps: tuple[int, ...], grid: Grid) -> shapely.Geometry:
    """The part of a counter-clockwise outline that keeps the gap of every side.

    Args:
        outline: Counter-clockwise ring [ticks].
        gaps: Gap along each side, in order [ticks].
        grid: Grid that sides along an axis are moved in to.

    Returns:
        A shapely area in ticks; it may be empty or in several parts.
    """
    depths = [_inner_depth(a, b, gap, grid) for (a, b), gap in zip(sides(outline), gaps, strict=True)]
    return Polygon(outline).difference(_strips(outline, depths))


def grown(opening: Ring, gap: int, grid: Grid) -> shapely.Geometry:
    """A counter-clockwise opening grown by a gap on all sides; sides along an axis move out to the grid."""
    depths = [_outer_depth(a, b, gap, grid) for a, b in sides(opening)]
    return unary_union([Polygon(opening), _strips(tuple(reversed(opening)), _reversed_depths(depths))])


def _reversed_depths(depths: list[int]) -> list[int]:
    # Side i of the reversed ring runs from point n-1-i to point n-2-i: it is side n-2-i of the ring.
    count = len(depths)
    return [depths[(count - 2 - index) % count] for index in range(count)]


def _inner_depth(a: Point, b: Point, gap: int, grid: Grid) -> int:
    axis = axis_of(a, b)
    if axis == "u":
        at, inwards = a[1] - grid.origin[1], 1 if b[0] > a[0] else -1
    elif axis == "v":
        at, inwards = a[0] - grid.origin[0], 1 if b[1] < a[1] else -1
    else:
        return gap + 2 if gap else 0
    edge = at + inwards * gap
    snapped = ceil_to(edge, grid.graduation) if inwards > 0 else floor_to(edge, grid.graduation)
    return abs(snapped - at)


def _outer_depth(a: Point, b: Point, gap: int, grid: Grid) -> int:
    return _inner_depth(b, a, gap, grid)


def _strips(outline: Ring, depths: list[int]) -> shapely.Geometry:
    """The strips along the sides of a ring, on its left, each as deep as asked."""
    count = len(outline)
    strips = []
    for index, (a, b) in enumerate(sides(outline)):
        depth = depths[index]
        if not depth:
            continue
        before, after = outline[index - 1], outline[(index + 2) % count]
        length = math.hypot(b[0] - a[0], b[1] - a[1])
        du, dv = (b[0] - a[0]) / length, (b[1] - a[1]) / length
        start = _reach_past(before, a, b, depth, depths[index - 1])
        end = _reach_past(a, b, after, depth, depths[(index + 1) % count])
        p = (a[0] - du * start, a[1] - dv * start)
        q = (b[0] + du * end, b[1] + dv * end)
        out_u, out_v = -dv * depth, du * depth
        # The side's own ends are corners of the strip, so that strip and outline share that edge exactly.
        strips.append(Polygon([p, a, b, q, (q[0] + out_u, q[1] + out_v), (p[0] + out_u, p[1] + out_v)]))
    return unary_union(strips)


def _reach_past(a: Point, b: Point, c: Point, depth: int, other_depth: int) -> int:
    """How far a strip as deep as `depth` runs on past the corner `b`, whose other side is `other_depth` deep.

    At a reflex corner both strips run on and meet square. At an obtuse corner the strip runs on, since ground past
    its end is still too near; at a right or acute corner it ends with the side.
    """
    first, second = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
    if first[0] * second[1] - first[1] * second[0] < 0:
        return other_depth
    return depth if first[0] * second[0] + first[1] * second[1] > 0 else 0
