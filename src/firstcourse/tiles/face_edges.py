"""What stands along the edges of a small face when its own tile is set: of a niche, a window, a bench or a kerb.

Such faces are not there on the day when the marks of floors and walls are made. Each is marked just before it is
tiled: the back of a niche comes before its sill and head, these before its sides; the faces of a bench or a kerb
come before its top, which covers them.
"""

from firstcourse.plan import Side, SideKind, Surface


def built_later(surface: Surface) -> bool:
    """Whether a surface is a face of what does not stand yet when floors and walls are marked."""
    return bool(surface.part_of) or surface.id.startswith(f"{surface.room}/bench/")


def face_touched(surface: Surface, side: Side) -> bool:
    """Whether the edge of a small face along a side can be touched when its tile is set."""
    # Tile of the wall before a niche or window may come later; floors do.
    if side.kind is SideKind.FREE:
        opening = surface.id.rpartition("/")[0].removeprefix(f"{surface.part_of}/")
        return side.meets != f"{surface.part_of}/opening/{opening}"
    floors = (f"{surface.room}/floor", f"{surface.room}/floor/shower")
    return side.kind is not SideKind.FOOT and side.meets not in floors


def at_next_run(surface: Surface, side: Side) -> bool:
    """Whether a side of a kerb's face is the corner at which the next run of the kerb begins."""
    return bool(surface.part_of) and side.meets.rpartition("/")[0] == surface.part_of


def tiled_before(surface: Surface, side: Side) -> str:
    """Id of the face whose tile stands along a side already and takes of this one; empty where there is none."""
    base, _, name = surface.id.rpartition("/")
    return side.meets if name in ("left", "right") and side.meets in (f"{base}/sill", f"{base}/head") else ""
