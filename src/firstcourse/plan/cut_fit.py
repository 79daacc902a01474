"""Tiles that are cut to fit where they go: straight cuts, as wide as the room leaves them. Lengths are ticks."""

import math

from shapely import Point, Polygon

from firstcourse.geometry import sides
from firstcourse.plan.tiles import Tile
from firstcourse.units import TICKS_PER_MM

_ON_EDGE = 4.0
"""An edge this near to the uncut tile's own is the tile's own [ticks]."""
_DENT = TICKS_PER_MM**2
"""What a piece may fall short of its convex outline by, for rounding [ticks²]."""


def cut_to_fit(tile: Tile, slant: int) -> bool:
    """Whether a tile is cut straight, without notch or hole, and not aslant.

    A cut from side to side at 45 degrees, as along every wall of a floor laid diagonally, is as plain as one along
    a side: nobody sets it out beforehand.

    Args:
        tile: A cut tile.
        slant: How far a cut may leave the direction of the tile's own sides, square to them, or half way between,
            over its length [ticks].
    """
    piece = Polygon(tile.outline)
    if tile.holes or piece.convex_hull.area - piece.area > _DENT:
        return False
    own = Polygon(tile.laid).exterior
    ways: list[tuple[float, float]] = [(b[0] - a[0], b[1] - a[1]) for a, b in sides(tile.laid)]
    ways += [(-dy, dx) for dx, dy in ways]
    ways += [_half_turned(*way) for way in ways]
    for a, b in sides(tile.outline):
        if own.distance(Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)) > _ON_EDGE:
            x, y = b[0] - a[0], b[1] - a[1]
            if min(abs(x * dy - y * dx) / math.hypot(dx, dy) for dx, dy in ways) > slant:
                return False
    return True


def _half_turned(dx: float, dy: float) -> tuple[float, float]:
    """A direction turned by 45 degrees; its length is of no matter."""
    return dx - dy, dx + dy


def size_as_laid(tile: Tile) -> tuple[int, int]:
    """Width and height of a piece as it lies, along the sides of its tile; width is the more level one [ticks]."""
    (ax, ay), (bx, by) = max(sides(tile.laid or tile.outline), key=lambda side: abs(side[1][0] - side[0][0]))
    long = math.hypot(bx - ax, by - ay)
    ux, uy = (bx - ax) / long, (by - ay) / long
    along = [x * ux + y * uy for x, y in tile.outline]
    across = [y * ux - x * uy for x, y in tile.outline]
    return round(max(along) - min(along)), round(max(across) - min(across))
