"""What boards stop at where a surface is open."""

from firstcourse.geometry import Ring, bounds, counter_clockwise, rectangle
from firstcourse.plan.surfaces import Opening


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
