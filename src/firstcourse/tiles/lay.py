"""Lay a repeat over an area: every tile where it lies, and what stays of those that are cut."""

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from typing import Any

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon

from firstcourse.tiles.model import XY, LaidTile, RepeatCell, TileArea

SPECK_MM2 = 1.0
"""What is left of a tile and smaller than this fills with grout: it is not a piece [mm²]."""
CUT_MM = 0.005
"""A tile that reaches over an edge by less than this is not cut: rounding makes it, no saw takes it off [mm]."""
BEND_MM = 0.002
"""Points that bend a side by less than this are left out: rounding makes two edges on one line cross [mm]."""
SAME_ROW_MM = 1e-4
"""Tiles whose lower edges differ by less than this stand in one row; floating point parts them [mm]."""

Array = np.ndarray[Any, np.dtype[Any]]


@lru_cache(maxsize=2)
def lay(cell: RepeatCell, shift: XY, area: Polygon | MultiPolygon) -> tuple[LaidTile, ...]:
    """Every tile of a pattern that lies in an area.

    A tile is whole where what is cut off it is thinner than `CUT_MM`; pieces below `SPECK_MM2` are left out. An
    opening that parts a tile gives several pieces with the same `laid`. The last are remembered: a start is judged
    by the tiles that are laid from it next.

    Args:
        cell: The repeat.
        shift: Where its origin lies [mm].
        area: Where tile goes [mm].

    Returns:
        The tiles from bottom to top, in each row from left to right.
    """
    if area.is_empty:
        return ()
    shapely.prepare(area)
    rows: list[tuple[float, float, int, float, float, LaidTile]] = []
    for number, piece in enumerate(cell.pieces):
        rings = _rings(cell, piece.ring, shift, area.bounds)
        tiles = shapely.polygons(rings)
        least = min(math.dist(a, b) for a, b in pairwise((*piece.ring, piece.ring[0])))
        near = shapely.intersects(area, tiles)
        rings, tiles = rings[near], tiles[near]
        whole = shapely.covers(area, tiles)
        crossing = np.flatnonzero(~whole)
        shapes = shapely.intersection(tiles[crossing], area)
        lost = shapely.area(tiles[crossing]) - shapely.area(shapes)
        hardly = crossing[lost < CUT_MM * least]
        # A corner may reach far over an edge and yet lose little: none of the tile may lie farther out than that.
        whole[hardly] = shapely.covers(area.buffer(CUT_MM, join_style="mitre"), tiles[hardly])
        kept = dict(zip(crossing.tolist(), shapes.tolist(), strict=True))
        lows = np.round(rings.min(axis=1) / SAME_ROW_MM) * SAME_ROW_MM
        for index, (ring, (left, lower), is_whole) in enumerate(
            zip(rings.tolist(), lows.tolist(), whole.tolist(), strict=True)
        ):
            laid = tuple((x, y) for x, y in ring)
            shapes_left = (tiles[index],) if is_whole else _parts(kept[index])
            for shape in shapes_left:
                bounds = (0.0, 0.0) if is_whole else (shape.bounds[1], shape.bounds[0])
                tile = LaidTile(tile=piece.tile, laid=laid, shape=shape, whole=is_whole)
                rows.append((lower, left, number, *bounds, tile))
    rows.sort(key=lambda row: row[:5])
    return tuple(row[5] for row in rows)


def lay_field(cell: RepeatCell, shift: XY, field: TileArea) -> tuple[LaidTile, ...]:
    """Every tile of a pattern that is set in a field: those of `lay` but pieces whose place a soft joint takes."""
    return tuple(
        tile for tile in lay(cell, shift, field.area) if tile.whole or not field.soft.takes_place_of(tile.shape)
    )


def origins(cell: RepeatCell, ring: Sequence[XY], shift: XY, bounds: tuple[float, float, float, float]) -> Array:
    """Where a piece of the repeat must be moved to so that its bounding box meets a box.

    Args:
        cell: The repeat.
        ring: The piece's outline within the repeat, or any points whose box is meant [mm].
        shift: Where the repeat's origin lies [mm].
        bounds: Left, lower, right, upper of the box [mm].

    Returns:
        Shape (n, 2) [mm], in order of the repeat's steps.
    """
    outline = np.array(ring)
    low, high = np.array(bounds[:2]), np.array(bounds[2:])
    least = low - outline.max(axis=0) - shift
    most = high - outline.min(axis=0) - shift
    corners = np.array([(x, y) for x in (least[0], most[0]) for y in (least[1], most[1])])
    steps = np.array([cell.step_a, cell.step_b])
    counts = corners @ np.linalg.inv(steps)
    first, last = np.floor(counts.min(axis=0)).astype(int), np.ceil(counts.max(axis=0)).astype(int)
    i, j = np.meshgrid(np.arange(first[0], last[0] + 1), np.arange(first[1], last[1] + 1), indexing="ij")
    moves = np.column_stack((i.ravel(), j.ravel())) @ steps
    inside = ((moves > least) & (moves < most)).all(axis=1)
    return np.asarray(moves[inside] + shift)


def _rings(cell: RepeatCell, ring: tuple[XY, ...], shift: XY, bounds: tuple[float, float, float, float]) -> Array:
    return np.asarray(origins(cell, ring, shift, bounds)[:, None, :] + np.array(ring)[None, :, :])


def _parts(shape: Any) -> list[Polygon]:
    parts = [part.simplify(BEND_MM) for part in shapely.get_parts(shape) if part.geom_type == "Polygon"]
    return [part for part in parts if part.area >= SPECK_MM2]
