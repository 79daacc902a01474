"""How far from a side tile and its joints may lie, as what is on the surface that meets it there comes between."""

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.structure import Document, Surface

_MORE_MM = 10
"""Beside the layers: a joint, and what walls lean [mm]."""


def met_within(surface: Surface, plan: Document, least_mm: float) -> float:
    """What boards, bed and tile of a surface of the same room may take at a side [ticks].

    Args:
        surface: With the side.
        plan: Of both.
        least_mm: Never less than this [mm].
    """
    room = surface.id.split("/")[0]
    built = max(
        (sum(thick for _, thick in one.layers) for one in plan.surfaces if one.id.split("/")[0] == room), default=0
    )
    return max(least_mm * TICKS_PER_MM, built + _MORE_MM * TICKS_PER_MM)
