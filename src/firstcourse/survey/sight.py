"""Which corners of a room see each other: where a tape can run straight from one to the other."""

import math
from collections.abc import Sequence
from itertools import pairwise

XY = tuple[float, float]

GRAZE_MM = 15.0
"""A line that passes a corner this near may touch it: the shape is not known better before it is adjusted."""


def is_room(points: Sequence[XY]) -> bool:
    """Whether the corners run clockwise round one area without crossing."""
    area2 = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*points, points[0]]))
    if area2 >= 0:
        return False
    return num_crossed(points) == 0


def num_crossed(points: Sequence[XY]) -> int:
    """How many pairs of sides cross."""
    count = len(points)
    return sum(
        _cross(points[i], points[i + 1], points[j], points[(j + 1) % count])
        for i in range(count)
        for j in range(i + 2, count)
        if (j + 1) % count != i
    )


def sees(points: Sequence[XY], one: int, other: int) -> bool:
    """Whether the straight line between two corners of a room runs inside it, or touches a corner on its way.

    Args:
        points: The corners, clockwise [mm].
        one: Index of a corner.
        other: Index of another.
    """
    count = len(points)
    if (one - other) % count in (1, count - 1):
        return True
    p, q = points[one], points[other]
    length = math.dist(p, q)
    if length == 0:
        return False
    for i in range(count):
        j = (i + 1) % count
        if {i, j} & {one, other}:
            continue
        a, b = _turn(p, q, points[i]) / length, _turn(p, q, points[j]) / length
        if min(abs(a), abs(b)) > GRAZE_MM and a * b < 0 and _cross(p, q, points[i], points[j]):
            return False
    return _leaves_into(points, one, q) and _leaves_into(points, other, p)


def _leaves_into(points: Sequence[XY], corner: int, to: XY) -> bool:
    """Whether a line from a corner sets out into the room."""
    before, here, after = points[corner - 1], points[corner], points[(corner + 1) % len(points)]
    into_before = _turn(before, here, to) <= GRAZE_MM * math.dist(before, here)
    into_after = _turn(here, after, to) <= GRAZE_MM * math.dist(here, after)
    return (into_before and into_after) if _turn(before, here, after) <= 0 else (into_before or into_after)


def _turn(a: XY, b: XY, c: XY) -> float:
    """Twice the area of a triangle, more than zero where it turns to the left."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _cross(a: XY, b: XY, c: XY, d: XY) -> bool:
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0
