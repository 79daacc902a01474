"""Pieces so thin that the soft joint along an edge takes their place: they are not set.

A wall that runs askew to the rows leaves wedges that thin to nothing. Whole tiles end before those, and the joint
is so much wider, as it is where rows would be cut by a hair all along.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from shapely import Polygon

from firstcourse.geometry import off_segment
from firstcourse.tiles.alike import ALIKE_MM

ON_LINE_MM = 0.05
"""Places nearer to each other are one: edges of areas are whole ticks [mm]."""


type _XY = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class SoftEdges:
    """Stretches of an area's edge along which its joint is left free to move, the area on their left [mm].

    Attributes:
        lines: Their ends.
        takes: So much wider a joint may come out before tile is set in its place [mm].
    """

    lines: tuple[tuple[_XY, _XY], ...] = ()
    takes: float = 0.0

    def depth(self, shape: Polygon) -> float | None:
        """How far what is cut along such an edge reaches from it [mm]; None where it lies along none."""
        points = shape.exterior.coords[:-1]
        found = []
        for a, b in self.lines:
            if not _lies_along(points, a, b):
                continue
            offs = [_off(point, a, b) for point in points]
            if min(offs) > -ON_LINE_MM:
                found.append(max(offs))
        return min(found, default=None)

    def takes_place_of(self, shape: Polygon) -> bool:
        """Whether a piece is so thin that it is not set."""
        return self.is_taken(self.depth(shape) if self.lines else None)

    def is_taken(self, depth: float | None) -> bool:
        """Whether the joint takes the place of a piece that reaches so far from its edge [mm]."""
        return depth is not None and depth <= self.takes + ALIKE_MM


NO_SOFT_EDGES = SoftEdges()
"""Of an area whose edges are not known."""


def _lies_along(points: Sequence[tuple[float, ...]], a: _XY, b: _XY) -> bool:
    """Whether at least two corners of a piece lie on a line: it is cut along it."""
    return sum(off_segment(point, a, b) < ON_LINE_MM for point in points) > 1


def _off(point: tuple[float, ...], a: _XY, b: _XY) -> float:
    along = (b[0] - a[0], b[1] - a[1])
    return (along[0] * (point[1] - a[1]) - along[1] * (point[0] - a[0])) / math.dist(a, b)
