"""What planners, drawings and papers alike read off a surface of the plan."""

from itertools import pairwise

from firstcourse.geometry import Ring, bounds, counter_clockwise, rectangle
from firstcourse.plan.boards import Fill
from firstcourse.plan.surfaces import Opening, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM

SAME = TICKS_PER_MM // 20
"""Edges closer together than this are one: no pencil parts them [ticks]."""


def opening_ring(opening: Opening) -> Ring:
    """What boards stop at: an opening's outline, counter-clockwise; a round one's bounding square.

    Where boards line a window they stand round its outline, and the wall's boards stop where its framing does.
    """
    if opening.outline is not None and opening.return_board is not None:
        left, lower, right, upper = bounds(opening.outline)
        by = opening.return_board
        return rectangle(left - by, lower - by, right + by, upper + by)
    if opening.outline is not None:
        return counter_clockwise(opening.outline)
    assert opening.centre is not None and opening.diameter is not None
    (u, v), half = opening.centre, -(-opening.diameter // 2)
    return ((u - half, v - half), (u + half, v - half), (u + half, v + half), (u - half, v + half))


def fill_name(fill: Fill) -> str:
    """What a strip is called on its surface, such as `fill 2`."""
    return " ".join(fill.id.rsplit("/", 2)[1:])


def has_courses(surface: Surface) -> bool:
    """Whether every course of a wall begins where the one below it ends."""
    if surface.kind is not SurfaceKind.WALL:
        return False
    boxes = sorted((box[1], box[3]) for box in (bounds(tile.laid or tile.outline) for tile in surface.tiles))
    return all(upper[0] <= lower[0] + SAME or upper[0] >= lower[1] - SAME for lower, upper in pairwise(boxes))
