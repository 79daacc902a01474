"""Polygons on whole ticks: areas, gaps, clipping, with rounding that never overstates what fits."""

from firstcourse.geometry.inset import Grid, grown, inset
from firstcourse.geometry.polygon import (
    area2,
    as_ring,
    axis_near,
    axis_of,
    bounds,
    circle_ring,
    clockwise,
    counter_clockwise,
    from_shapely,
    is_simple,
    moved,
    rectangle,
    sides,
    to_shapely,
)

__all__ = [
    "Grid",
    "area2",
    "as_ring",
    "axis_near",
    "axis_of",
    "bounds",
    "circle_ring",
    "clockwise",
    "counter_clockwise",
    "from_shapely",
    "grown",
    "inset",
    "is_simple",
    "moved",
    "rectangle",
    "sides",
    "to_shapely",
]
