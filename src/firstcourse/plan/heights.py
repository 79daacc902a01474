"""How flat a surface was read, as the plan holds it."""

from typing import Literal

from firstcourse.plan.base import Frozen, Point, Ticks


class HeightMark(Frozen):
    """One reading of a surface, and what would bring it onto one plane with the others.

    Attributes:
        at: Where it was read.
        off: How far the surface stands over its best plane, towards the tile; below it less than nothing.
        do: What to do there; empty where the surface is flat enough or nothing computed makes it so.
        by: How much of it, never less than nothing.
    """

    at: Point
    off: Ticks
    do: Literal["", "leave", "fill", "grind", "shim", "plane_off"] = ""
    by: Ticks = 0
