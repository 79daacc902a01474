"""What stands along the edges of a face of a niche, window, bench or kerb just before it is tiled.

Of a niche the back is tiled first, then sill and head, then the sides; of a bench or kerb the faces, then the top.
"""

from firstcourse.verify.structure import Document, Surface

_LATER = ("niche front", "window front", "shower floor", "room floor")
"""Tile of the wall before a niche or window may come later, and floors do."""


def edge_stands(surface: Surface, index: int) -> bool:
    """Whether a tape can be held to the edge of a small face along one of its sides."""
    return surface.sides[index] != "foot" and surface.labels[index] not in _LATER


def set_before(surface: Surface, index: int, plan: Document) -> int | None:
    """How far tile or boards along a side reach into a small face [ticks]; None where that is not known."""
    whole, _, own = surface.id.rpartition("/")
    label = surface.labels[index]
    if own in ("left", "right") and label in ("niche sill", "niche head", "window sill", "window head"):
        other = next((one for one in plan.surfaces if one.id == f"{whole}/{label.split()[1]}"), None)
        return None if other is None else sum(thick for _, thick in other.layers)
    if not label.startswith("wall "):
        return 0
    wall = next((one for one in plan.surfaces if one.id == f"{surface.room}/wall/{label[5:]}"), None)
    return 0 if wall is None or not wall.boards else board_thickness(wall, plan)


def board_thickness(wall: Surface, plan: Document) -> int | None:
    """How thick the boards on a surface are [ticks]; None where they may be of several thicknesses."""
    stock = plan.shopping.sheet_stock
    pieces = {board.piece for board in wall.boards}
    found = {stock[piece.stock].thickness for piece in plan.pieces if piece.id in pieces and piece.stock in stock}
    return found.pop() if len(found) == 1 else None
