"""Polygons on whole ticks: areas, gaps, clipping, with rounding that never overstates what fits."""
