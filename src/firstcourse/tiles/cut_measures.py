"""What is measured on tiles as they lie: how wide each cut is, along which edge, and whether it is a sliver.

A width is measured square to the edge the tile is cut along, beside it: a corner triangle of a diagonal pattern is
as wide as it is high above the wall. Where the tile tapers, because the wall runs a little askew, its narrow end
counts.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely

from firstcourse.tiles.alike import ALIKE_MM
from firstcourse.tiles.area_edges import EdgeLine
from firstcourse.tiles.lay import CUT_MM, Array
from firstcourse.tiles.model import XY, LaidTile

_ON_MM = 0.01
_TAPER_SINE = 0.1
"""A cut that leaves a side of the tile by less than this runs along it and tapers the tile."""
_MOST_HAIR = 0.25
"""Of a cut edge at each of its ends, however short."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """One edge that a tile is cut along.

    Attributes:
        tile: Which of the cut tiles it is, counted from 0 among those that are cut.
        width: What is left of the tile beside the edge, square to it, at the narrow end [mm].
        whole: The tile's own width in that direction [mm].
        edge: Its ends; None where only short edges are cut, as by a pipe.
        middle: Middle of the tile, uncut.
        askew: No side of the tile runs alongside the edge.
    """

    tile: int
    width: float
    whole: float
    edge: tuple[XY, XY] | None
    middle: XY
    askew: bool = False


def measured_cuts(tiles: Sequence[LaidTile], shortest_edge: float) -> tuple[Cut, ...]:
    """Every cut edge of every cut tile, in order of the tiles.

    Cut edges shorter than `shortest_edge` and than a third of the tile's own sides, as round a pipe, do not
    count; a tile with no others is listed once, with its least own side.

    Args:
        tiles: As laid; whole ones are passed over.
        shortest_edge: See above [mm].
    """
    cut = [tile for tile in tiles if not tile.whole]
    if not cut:
        return ()
    laid = [np.array(tile.laid) for tile in cut]
    sides = [[math.dist(a, b) for a, b in pairwise((*tile.laid, tile.laid[0]))] for tile in cut]
    shapes = shapely.orient_polygons(np.array([tile.shape for tile in cut]))
    rings, owner = shapely.get_rings(shapes, return_index=True)
    points, ring = shapely.get_coordinates(rings, return_index=True)
    follows = ring[1:] == ring[:-1]
    start, end, owner = points[:-1][follows], points[1:][follows], owner[ring[1:][follows]]
    long = np.linalg.norm(end - start, axis=1)
    outlines = np.array([shapely.LinearRing(tile.laid) for tile in cut])
    inside = shapely.distance(outlines[owner], shapely.points((start + end) / 2)) >= _ON_MM
    least = np.array([min(shortest_edge, min(own) / 3) for own in sides])
    # Of an edge that is just as long, floating point must not decide.
    counts = inside & (long >= least[owner] - ALIKE_MM)
    start, end, owner, long = start[counts], end[counts], owner[counts], long[counts]
    along = (end - start) / long[:, None]
    sides_along = [_side_along(laid[tile], way) for tile, way in zip(owner, along, strict=True)]
    # Beside a wall a little askew a width is measured as the tile lies.
    along = np.array([way if side is None else side for way, side in zip(along, sides_along, strict=True)])
    along = along.reshape(-1, 2)
    inward = np.column_stack((-along[:, 1], along[:, 0]))
    reach = inward * np.array([sum(own) for own in sides])[owner][:, None]
    # What lies beside the cut: all that the edge would sweep over on its way into the tile, but for a hair at its
    # ends. Beside a tile that ends level with an opening rounding may leave such a hair, which makes it seem wide.
    hair = (end - start) * np.minimum(CUT_MM / long, _MOST_HAIR)[:, None]
    swept = shapely.polygons(
        np.stack((start + hair, end - hair, end - hair + reach, start + hair + reach), axis=1)
    )
    corners, index = shapely.get_coordinates(shapely.intersection(swept, shapes[owner]), return_index=True)
    off = corners - start[index]
    deep = (off * inward[index]).sum(axis=1)
    # How far the edge's end lies inside of its start: what a taper takes off at its narrow end.
    taper = np.maximum(((end - start) * inward).sum(axis=1), 0.0)
    found = []
    for number in range(len(owner)):
        width = max(float(deep[index == number].max(initial=0.0) - taper[number]), 0.0)
        own = laid[owner[number]]
        found.append(
            Cut(
                tile=int(owner[number]),
                width=width,
                whole=float(np.ptp(own @ inward[number])),
                edge=(_xy(start[number]), _xy(end[number])),
                middle=_xy(own.mean(axis=0)),
                askew=sides_along[number] is None,
            )
        )
    counted = set(owner.tolist())
    found += [
        Cut(tile=number, width=min(own), whole=min(own), edge=None, middle=_xy(laid[number].mean(axis=0)))
        for number, own in enumerate(sides)
        if number not in counted
    ]
    return tuple(sorted(found, key=lambda one: one.tile))


def _side_along(ring: Array, along: Array) -> Array | None:
    """Direction of the side that a tile has along a way, but for a little; None where it has none."""
    ways = np.roll(ring, -1, axis=0) - ring
    ways = ways / np.linalg.norm(ways, axis=1)[:, None]
    off = np.abs(ways[:, 0] * along[1] - ways[:, 1] * along[0])
    nearest = int(np.argmin(off))
    if off[nearest] >= _TAPER_SINE:
        return None
    return np.asarray(ways[nearest] * np.sign(ways[nearest] @ along))


def is_sliver(cut: Cut, line: EdgeLine | None, least_cut: float, least_share: float) -> bool:
    """Whether a cut is narrower than a cut is to be.

    Of a tile that lies askew, a corner that reaches round the end of an edge is none.

    Args:
        cut: The cut.
        line: The edge of the area that it runs along; None where it runs along none.
        least_cut: Narrower ones are slivers [mm].
        least_share: Of small tiles only below this share of them.
    """
    if cut.edge is None or cut.width >= min(least_cut, least_share * cut.whole) - CUT_MM:
        return False
    if not cut.askew:
        return True
    if line is None:
        return False
    nx, ny = line.inward
    return 0 <= (cut.middle[0] - line.a[0]) * ny - (cut.middle[1] - line.a[1]) * nx <= line.length


def line_of(cut: Cut, lines: Sequence[EdgeLine]) -> EdgeLine | None:
    """Which edge of the area a tile is cut along; None where that is none of those listed."""
    if cut.edge is None:
        return None
    (ax, ay), (bx, by) = cut.edge
    for line in lines:
        nx, ny = line.inward
        off = [(x - line.a[0]) * nx + (y - line.a[1]) * ny for x, y in cut.edge]
        middle = ((ax + bx) / 2 - line.a[0]) * ny - ((ay + by) / 2 - line.a[1]) * nx
        if max(map(abs, off)) < _ON_MM and -_ON_MM <= middle <= line.length + _ON_MM:
            return line
    return None


def _xy(point: Array) -> XY:
    return float(point[0]), float(point[1])
