"""Narrow limbs: where seams must not run, so that no part of a board stands free narrower than it may be.

A seam or a joint beside an opening, a jog or a corner of the room leaves a finger of board between them. Whether
it does follows from the sides of the ground alone: those that run the way the seam does, within a limb's width.
"""

import math
from collections.abc import Iterable
from itertools import pairwise
from typing import NamedTuple

import shapely
from shapely import Polygon
from shapely.geometry.polygon import orient

from firstcourse.geometry import Point
from firstcourse.units import TICKS_PER_MM

_MOST_SLOPE = math.tan(math.radians(20))
"""Ground that runs out to a point sharper than this is narrow [ratio]."""

_HAIR = TICKS_PER_MM // 3
"""What is narrower comes from rounding [ticks]."""

_ROUNDED = 4
"""Corners of boards may lie so far off, rounded to ticks."""

Barred = tuple[int, int]
"""Places between which, ends left out, the left or lower edge of a gap must not lie [ticks]."""


class SideOfGround(NamedTuple):
    """A side of the ground that runs much as a seam does [ticks].

    Attributes:
        near: Where it lies across the seam, the least.
        far: The most.
        low: Where it begins along the seam.
        high: Where it ends.
        before: The ground lies on the side of the greater places: what ends at the seam may be left narrow.
    """

    near: int
    far: int
    low: int
    high: int
    before: bool


def upright_sides(
    region: shapely.Geometry, rounds: Iterable[tuple[Point, int]], limb: int
) -> tuple[SideOfGround, ...]:
    """The sides of a region that run up, and those of round openings as if they were square.

    Args:
        region: What boards may cover.
        rounds: Centre and radius of each round opening, its gap included.
        limb: Least width of a limb; shorter sides leave none.
    """
    found = []
    for part in shapely.get_parts(region):
        if not isinstance(part, Polygon):
            continue
        turned = orient(part)
        for ring in (turned.exterior, *turned.interiors):
            places = shapely.get_coordinates(ring).tolist()
            for (au, av), (bu, bv) in pairwise(places):
                if abs(bv - av) <= limb or abs(bu - au) > abs(bv - av) * _MOST_SLOPE:
                    continue
                # The ground lies on the left of the way from a to b.
                (near, far), (low, high) = sorted((round(au), round(bu))), sorted((round(av), round(bv)))
                found.append(SideOfGround(near, far, low, high, before=bv < av))
    for (u, v), radius in rounds:
        # The bridge beside a hole is longer than the hole is wide.
        low, high = v - radius - limb, v + radius + limb
        found.append(SideOfGround(u - radius, u - radius, low, high, before=False))
        found.append(SideOfGround(u + radius, u + radius, low, high, before=True))
    return tuple(sorted(set(found)))


def barred_by(
    sides: Iterable[SideOfGround], gap: int, limb: int, span: tuple[int, int] | None
) -> tuple[Barred, ...]:
    """Where a gap would leave a limb narrower than it may be, or lie half on a side of the ground.

    Args:
        sides: Sides of the ground.
        gap: Width of the gap.
        limb: Least width of a limb.
        span: The course, from its lower to its upper edge; None asks of every side however far it reaches.
    """
    found = []
    for side in sides:
        if span is not None and min(side.high, span[1]) - max(side.low, span[0]) <= limb:
            continue
        if side.before:
            found.append((side.near - gap, side.far + limb + _ROUNDED))
        else:
            found.append((side.near - limb - _ROUNDED - gap, side.far))
    return tuple(sorted(set(found)))


def end_joints_barred(
    boxes: Iterable[tuple[int, int, int, int]],
    extent: tuple[int, int, int, int],
    stagger: int,
    gap: int,
    graduation: int,
    span: tuple[int, int],
) -> tuple[Barred, ...]:
    """Where a gap would lie too near to an end of a board that is up already, above or below its course.

    Args:
        boxes: Boxes of the boards that are up.
        extent: Box of the surface: an edge at its ends is no joint.
        stagger: Least distance between end joints.
        gap: Width of a gap.
        graduation: Tape graduation; gaps beside what stands as it does may be wider by so much.
        span: The course, from its lower to its upper edge.
    """
    most = gap + 2 * graduation
    found = []
    for left, lower, right, upper in boxes:
        if not (-graduation <= span[0] - upper <= most or -graduation <= lower - span[1] <= most):
            continue
        for edge, ends in ((left - gap, left - extent[0]), (right, extent[2] - right)):
            if ends > 2 * most:
                found.append((edge - stagger, edge + stagger))
    return tuple(found)


def is_barred(edge: int, barred: Iterable[Barred]) -> bool:
    """Whether a gap that begins at a place lies where none may."""
    return any(start < edge < end for start, end in barred)


def narrow_parts(shape: shapely.Geometry, limb: int) -> list[Polygon]:
    """The parts of an area narrower than a limb may be, but for those no longer than a limb is wide.

    They are where no square fits in whose sides are a limb less two ticks.

    Args:
        shape: A board, or the ground of several [ticks].
        limb: Least width of a limb.
    """
    wide = shape.buffer(1 - limb / 2, join_style="mitre").buffer(limb / 2 + 1, join_style="mitre")
    if not wide.is_valid:
        # Mitres of neighbouring corners can cross where they run nearly alike.
        wide = shapely.make_valid(wide)
    return [
        part
        for part in shapely.get_parts(shape.difference(wide))
        if isinstance(part, Polygon) and _is_limb(part, limb)
    ]


def _is_limb(part: Polygon, limb: int) -> bool:
    left, lower, right, upper = part.bounds
    longest = max(right - left, upper - lower)
    return bool(longest > limb and part.area > longest * _HAIR)
