"""What is told of the start that is used, measured again on the tiles as drawn: how many are cut, how narrow."""

import math
from collections.abc import Iterator

import numpy as np
from shapely import LinearRing, Point, Polygon

from firstcourse.geometry.polygon import sides
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM
from firstcourse.verify.structure import Document, Surface, Tile
from firstcourse.verify.verdict import Objection

_SLACK = TICKS_PER_INCH // 32
"""A width that is told may differ by less than anyone can mark [ticks]."""
_ON_EDGE = 8.0
_JUST = TICKS_PER_MM // 8
"""Edges this near to the length from which they count may count or not [ticks]."""
_TAPER_SINE = 0.1


def check_starts(plan: Document) -> Iterator[Objection]:
    """Object to a start that is told to cut other tiles than are drawn."""
    for surface in plan.surfaces:
        # A wall with bands is searched closed up; its table tells of that wall.
        if not surface.tiled or any(area.role == "band" for area in surface.tiled):
            continue
        area = surface.tiled[0]
        if area.used is None or any(tile.fixed for tile in surface.tiles):
            continue
        told, number = area.used
        cut = list(_cut_in(surface))
        if len({tile.laid for tile in cut}) != number:
            yield Objection("VER-715", surface.id, f"is told to have {number} cut tiles, and {len(cut)} are drawn")
        shortest = plan.rules.ticks("tiling.start.shortest_edge")
        low, high = (min((_width(tile, shortest + just) for tile in cut), default=0.0) for just in (-_JUST, _JUST))
        if not min(low, high) - _SLACK <= told <= max(low, high) + _SLACK:
            yield Objection(
                "VER-715",
                surface.id,
                f"has a cut of {low / TICKS_PER_MM:.1f} mm, and {told / TICKS_PER_MM:.1f} mm is told",
            )


def _cut_in(surface: Surface) -> Iterator[Tile]:
    """Cut tiles of the surface's first area, which is its main one."""
    area = surface.tiled[0]
    for tile in surface.tiles:
        here = len(surface.tiled) == 1 or area.shape.covers(tile.shape.representative_point())
        if here and not tile.whole and tile.laid and tile.stock in area.tiles:
            yield tile


def _width(tile: Tile, shortest: float) -> float:
    """Least width beside any cut edge that counts; without one the least own side [ticks]."""
    own = [math.dist(a, b) for a, b in sides(tile.laid)]
    counts = min(shortest, min(own) / 3)
    border = LinearRing(tile.laid)
    shape = tile.shape
    widths = []
    for ring in (tile.outline, *tile.holes):
        for a, b in sides(ring):
            middle = Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            if math.dist(a, b) >= counts and border.distance(middle) > _ON_EDGE:
                widths.append(_beside(shape, tile, a, b, sum(own)))
    return min(widths, default=min(own))


def _beside(shape: Polygon, tile: Tile, a: tuple[int, int], b: tuple[int, int], far: float) -> float:
    """How far the tile reaches beside a cut edge, square to the side it runs along, at its narrow end [ticks]."""
    start, edge = np.array(a, dtype=float), np.array(b, dtype=float) - a
    way = edge / np.linalg.norm(edge)
    ways = [(np.array(q, dtype=float) - p) / math.dist(p, q) for p, q in sides(tile.laid)]
    nearest = min(ways, key=lambda one: abs(one[0] * way[1] - one[1] * way[0]))
    if abs(nearest[0] * way[1] - nearest[1] * way[0]) < _TAPER_SINE:
        way = nearest * np.sign(nearest @ way)
    inward = np.array((-way[1], way[0]))
    band = Polygon([start, start + edge, start + edge + inward * far, start + inward * far])
    found = band.intersection(shape)
    points = [point for part in getattr(found, "geoms", [found]) for point in _corners(part)]
    deepest = max((float((np.array(point) - start) @ inward) for point in points), default=0.0)
    return max(deepest - max(float(edge @ inward), 0.0), 0.0)


def _corners(part: object) -> list[tuple[float, ...]]:
    if isinstance(part, Polygon):
        return list(part.exterior.coords)
    return list(getattr(part, "coords", ()))
