"""The edges of an area that decide where a pattern starts, and which of them face each other."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import shapely
from shapely import MultiPolygon, Polygon
from shapely.geometry.polygon import orient

from firstcourse.tiles.alike import ALIKE_MM
from firstcourse.tiles.model import XY, Edge, TileArea

_NEAR_EDGE_MM = 120.0
"""An area's side belongs to the side of the surface it runs along within this: board and bed lie between [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeLine:
    """An edge of the area.

    Attributes:
        a: One end; the area lies to the left of the way to the other [mm].
        b: Other end [mm].
        weight: How much a poor cut shows here.
        side: Reference to the side of the surface; empty at an opening.
        share: Its share of the length of all edges.
        hole: It bounds an opening within the area.
        free: Tile ends there where the setter ends it, so errors of the survey do not move it.
    """

    a: XY
    b: XY
    weight: float
    side: str
    share: float
    hole: bool
    free: bool = False

    @property
    def length(self) -> float:
        """Length [mm]."""
        return math.dist(self.a, self.b)

    @property
    def inward(self) -> XY:
        """Unit vector into the area, square to the edge."""
        return -(self.b[1] - self.a[1]) / self.length, (self.b[0] - self.a[0]) / self.length


def lines(field: TileArea, shortest_edge: float) -> tuple[EdgeLine, ...]:
    """The edges of an area that decide where a pattern starts, with their weights.

    Args:
        field: The area with its sides.
        shortest_edge: Shorter edges do not count [mm].
    """
    found: list[tuple[XY, XY, bool]] = []
    for part in _polygons(field.area):
        turned = orient(part)
        for ring, hole in ((turned.exterior, False), *((ring, True) for ring in turned.interiors)):
            found += [
                ((a[0], a[1]), (b[0], b[1]), hole)
                for a, b in pairwise(ring.coords)
                if math.dist(a, b) >= shortest_edge - ALIKE_MM
            ]
    total = sum(math.dist(a, b) for a, b, _hole in found)
    return tuple(
        EdgeLine(
            a=a,
            b=b,
            weight=side.weight,
            side=side.side,
            share=math.dist(a, b) / total,
            hole=hole,
            free=side.free,
        )
        for a, b, hole in found
        # What lies close behind an opening is none of its edges.
        for side in (Edge(a=a, b=b) if hole else _side(a, b, field.edges),)
    )


def facing(edges: Sequence[EdgeLine]) -> tuple[tuple[int, int, float], ...]:
    """Pairs of edges whose cuts are best alike, with the share of the edges they stand for.

    Opposite sides of the area face each other; so do, from without, the sides of an opening.
    """
    pairs = []
    for first, line in enumerate(edges):
        best: tuple[float, float, int] | None = None
        for second, other in enumerate(edges):
            if other.hole != line.hole or _dot(line.inward, other.inward) > -0.99:
                continue
            away = _dot(line.inward, (other.a[0] - line.a[0], other.a[1] - line.a[1]))
            # Edges that meet in a sharp corner do not face each other.
            if (away < 0) != line.hole or abs(away) < ALIKE_MM:
                continue
            along = (line.inward[1], -line.inward[0])
            spans = [sorted((_dot(along, edge.a), _dot(along, edge.b))) for edge in (line, other)]
            shared = min(spans[0][1], spans[1][1]) - max(spans[0][0], spans[1][0])
            if shared > 0 and (best is None or (round(shared, 3), abs(away)) > best[:2]):
                best = (round(shared, 3), abs(away), second)
        if best is not None:
            pairs.append((first, best[2], line.share))
    return tuple(pairs)


def _side(a: XY, b: XY, edges: Sequence[Edge]) -> Edge:
    """The surface's side that an area's side runs along; one of weight 1 at openings and where none is near."""
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    way = _unit(a, b)
    best, found = _NEAR_EDGE_MM, Edge(a=a, b=b)
    for edge in edges:
        other = _unit(edge.a, edge.b)
        along = _dot(other, (middle[0] - edge.a[0], middle[1] - edge.a[1]))
        away = abs(other[0] * (middle[1] - edge.a[1]) - other[1] * (middle[0] - edge.a[0]))
        if _dot(way, other) > 0.99 and 0 <= along <= math.dist(edge.a, edge.b) and away < best - ALIKE_MM:
            best, found = away, edge
    return found


def _unit(a: XY, b: XY) -> XY:
    long = math.dist(a, b)
    return (b[0] - a[0]) / long, (b[1] - a[1]) / long


def _dot(a: XY, b: XY) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _polygons(area: Polygon | MultiPolygon) -> list[Any]:
    return [part for part in shapely.get_parts(area) if part.geom_type == "Polygon"]
