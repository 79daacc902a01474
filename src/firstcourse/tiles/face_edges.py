"""What stands along the edges of a small face when its own tile is set: of a niche, a window, a bench or a kerb.

Such faces are not there on the day when the marks of floors and walls are made. Each is marked just before it is
tiled: the back of a niche comes before its sill and head, these before its sides; the faces of a bench or a kerb
come before its top, which covers them.
"""

from firstcourse.plan import Side, SideKind, Surface

CORNER_OF_KERB = "corner of the kerb"
"""Side of a kerb's run at which the next run begins."""
_NOT_YET = frozenset({"niche front", "window front", "shower floor", "room floor"})
"""Tile of the wall before a niche or window may come later; floors do."""


def built_later(surface: Surface) -> bool:
    """Whether a surface is a face of what does not stand yet when floors and walls are marked."""
    return bool(surface.part_of) or surface.id.startswith(f"{surface.room}/bench/")


def face_touched(side: Side) -> bool:
    """Whether the edge of a small face along a side can be touched when its tile is set."""
    return side.kind is not SideKind.FOOT and side.label not in _NOT_YET


def tiled_before(surface: Surface, side: Side) -> str:
    """Id of the face whose tile stands along a side already and takes of this one; empty where there is none."""
    base, _, name = surface.id.rpartition("/")
    what, _, part = side.label.rpartition(" ")
    return f"{base}/{part}" if name in ("left", "right") and what in ("niche", "window") and part in (
        "sill", "head") else ""  # fmt: skip


def wall_along(surface: Surface, side: Side) -> str:
    """Id of the wall whose boards stand along a side; empty where none does."""
    wall = side.label.removeprefix("wall ")
    return "" if wall == side.label else f"{surface.room}/wall/{wall}"
