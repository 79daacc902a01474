"""What stands along the edges of a face of a niche, window, bench or kerb just before it is tiled.

Of a niche the back is tiled first, then sill and head, then the sides; of a bench or kerb the faces, then the top.
"""

from firstcourse.verify.structure import Document, Surface


def edge_stands(surface: Surface, index: int) -> bool:
    """Whether a tape can be held to the edge of a small face along one of its sides."""
    # Tile of the wall before a niche or window may come later, and floors do.
    later = {
        "free": (front_of(surface),),
        "perimeter": (f"{surface.room}/floor", f"{surface.room}/floor/shower"),
        "foot": (surface.met[index],),
    }
    return surface.met[index] not in later[surface.sides[index]]


def front_of(surface: Surface) -> str:
    """The front of the niche or window that a face is part of, as its edges there name it."""
    whole = surface.id.rpartition("/")[0]
    return f"{surface.part_of}/opening/{whole.removeprefix(f'{surface.part_of}/')}"


def set_before(surface: Surface, index: int, plan: Document) -> int | None:
    """How far tile or boards along a side reach into a small face [ticks]; None where that is not known."""
    whole, _, own = surface.id.rpartition("/")
    met = surface.met[index]
    there = next((one for one in plan.surfaces if one.id == met), None)
    if own in ("left", "right") and met in (f"{whole}/sill", f"{whole}/head"):
        return None if there is None else sum(thick for _, thick in there.layers)
    of_wall = there is not None and there.kind == "wall" and not there.part_of
    return board_thickness(there, plan) if there is not None and of_wall and there.boards else 0


def board_thickness(wall: Surface, plan: Document) -> int | None:
    """How thick the boards on a surface are [ticks]; None where they may be of several thicknesses."""
    stock = plan.shopping.sheet_stock
    pieces = {board.piece for board in wall.boards}
    found = {stock[piece.stock].thickness for piece in plan.pieces if piece.id in pieces and piece.stock in stock}
    return found.pop() if len(found) == 1 else None
