"""Axes of one's own along a line: a member, or a board's edge."""

import math
from dataclasses import dataclass

import shapely
from shapely.affinity import affine_transform

from firstcourse.geometry.polygon import Point

Spot = tuple[int, int]
"""A place along a line and to its left [ticks]."""


@dataclass(frozen=True, slots=True)
class LineAxes:
    """A line's own axes: `t` along it, `c` to its left, measured from `origin` [ticks]."""

    origin: Point
    du: float
    dv: float

    @classmethod
    def along(cls, origin: Point, a: Point, b: Point) -> "LineAxes":
        """The frame whose `t` runs the way from `a` to `b`."""
        length = math.hypot(b[0] - a[0], b[1] - a[1])
        return cls(origin, (b[0] - a[0]) / length, (b[1] - a[1]) / length)

    def local(self, shape: shapely.Geometry) -> shapely.Geometry:
        """A shape of the surface in these axes."""
        (u, v), du, dv = self.origin, self.du, self.dv
        return affine_transform(shape, [du, dv, -dv, du, -u * du - v * dv, u * dv - v * du])

    def local_spot(self, point: Point) -> tuple[float, float]:
        """A point of the surface in these axes."""
        u, v = point[0] - self.origin[0], point[1] - self.origin[1]
        return u * self.du + v * self.dv, v * self.du - u * self.dv

    def placed(self, spot: Spot) -> Point:
        """A spot of these axes on the surface, nearest tick."""
        t, c = spot
        return (
            self.origin[0] + round(t * self.du - c * self.dv),
            self.origin[1] + round(t * self.dv + c * self.du),
        )
