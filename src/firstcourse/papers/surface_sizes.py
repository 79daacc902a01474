"""How large surfaces are, and which of them are drawn small."""

from firstcourse.geometry import area2, bounds
from firstcourse.plan import Surface
from firstcourse.units import TICKS_PER_MM

COARSE = 25
"""A drawing at a smaller scale than one to this gets the whole width of the page."""
SMALL_HIGH_MM = 62.0
"""Height on paper of what is drawn small [mm]."""
_SMALL_M2 = 0.75
"""Surfaces below this area, such as those of a niche, a bench or a kerb, are drawn small; no high strip is."""


def size_mm(surface: Surface) -> tuple[float, float]:
    """Width and height of a surface on site [mm]."""
    left, lower, right, upper = bounds(surface.outline)
    return (right - left) / TICKS_PER_MM, (upper - lower) / TICKS_PER_MM


def is_small(surface: Surface) -> bool:
    """Whether a surface is drawn small: by its area, but no strip that is too high for it."""
    area = abs(area2(surface.outline)) / 2 / (TICKS_PER_MM * 1000) ** 2
    return area < _SMALL_M2 and size_mm(surface)[1] <= SMALL_HIGH_MM * COARSE
