"""Which corners of a room see each other: where a tape can run straight from one to the other."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

import numpy as np

XY = tuple[float, float]
Floats = np.ndarray[Any, np.dtype[np.float64]]
Ints = np.ndarray[Any, np.dtype[np.int64]]
Flags = np.ndarray[Any, np.dtype[np.bool_]]

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
    return bool(in_sight(points, [(one, other)])[0])


def in_sight(points: Sequence[XY], pairs: Sequence[tuple[int, int]]) -> Flags:
    """Whether corners see each other, as `sees` says, for many pairs at once.

    Args:
        points: The corners, clockwise [mm].
        pairs: Indices of two corners each.
    """
    at = np.array(points, float)
    one, other = np.array(pairs, np.int64).reshape(-1, 2).T
    count, p, q = len(at), at[one], at[other]
    length = np.hypot(*(q - p).T)
    apart = (one - other) % count
    # Each line against each wall; the wall of a number begins at the corner of that number.
    start = np.arange(count)
    end = (start + 1) % count
    turns = _turns(p[:, None], q[:, None], at[None])
    with np.errstate(divide="ignore", invalid="ignore"):
        off = turns / length[:, None]
    a, b = off[:, start], off[:, end]
    crossed = (np.minimum(np.abs(a), np.abs(b)) > GRAZE_MM) & (a * b < 0)
    wall_from, wall_to = at[start][None], at[end][None]
    crossed &= _turns(wall_from, wall_to, p[:, None]) * _turns(wall_from, wall_to, q[:, None]) < 0
    for corner in (one, other):
        crossed &= (start[None] != corner[:, None]) & (end[None] != corner[:, None])
    inside = (length > 0) & ~crossed.any(axis=1) & _leave_into(at, one, q) & _leave_into(at, other, p)
    return np.asarray((apart == 1) | (apart == count - 1) | inside)


def _leave_into(at: Floats, corner: Ints, to: Floats) -> Flags:
    """Whether lines from corners set out into the room."""
    before, here, after = at[corner - 1], at[corner], at[(corner + 1) % len(at)]
    into_before = _turns(before, here, to) <= GRAZE_MM * np.hypot(*(here - before).T)
    into_after = _turns(here, after, to) <= GRAZE_MM * np.hypot(*(after - here).T)
    convex = _turns(before, here, after) <= 0
    return np.asarray(np.where(convex, into_before & into_after, into_before | into_after))


def _turns(a: Floats, b: Floats, c: Floats) -> Floats:
    along, to = b - a, c - a
    return np.asarray(along[..., 0] * to[..., 1] - along[..., 1] * to[..., 0])


def _turn(a: XY, b: XY, c: XY) -> float:
    """Twice the area of a triangle, more than zero where it turns to the left."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _cross(a: XY, b: XY, c: XY, d: XY) -> bool:
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0
