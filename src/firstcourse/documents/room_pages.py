"""What the site pack prints of whole rooms: each unfolded, for the client to look at and to sign."""

from collections.abc import Iterator
from typing import Any

from firstcourse.documents.tile_pages import pattern_words
from firstcourse.drawings import draw_room, room_names, to_svg
from firstcourse.drawings.svg import svg_size
from firstcourse.plan import Plan, Surface
from firstcourse.units import format_length

_PAGE_MM, _ROW_MM, _LEAST_MM = (182.0, 200.0), 6.5, 90.0
"""Room of a page for the drawing; height of one row of the list below it; the drawing is never less high [mm]."""


def room_pages(plan: Plan) -> list[dict[str, Any]]:
    """One entry for each room, in order, as plain values."""
    pages = []
    for room in room_names(plan):
        tiles = [row for surface in plan.surfaces if surface.room == room for row in _tiles(plan, surface)]
        height = _PAGE_MM[1] - _ROW_MM * (len(tiles) + 1) if tiles else _PAGE_MM[1]
        drawing = draw_room(plan, room, paper=(_PAGE_MM[0], max(height, _LEAST_MM)))
        tiled = any(surface.tiles for surface in plan.surfaces if surface.room == room)
        pages.append(
            {
                "title": drawing.title,
                "svg": to_svg(drawing),
                "width_mm": svg_size(drawing)[0],
                "scale": f"1:{drawing.scale}",
                "tiles": tiles,
                "shows": "tile where there is any, boards elsewhere" if tiled else "boards",
            }
        )
    return pages


def _tiles(plan: Plan, surface: Surface) -> Iterator[list[str]]:
    """What a client agrees to for each tiled part of a surface: where, tile, pattern, joint."""
    for area in surface.tiled:
        where = (surface.title or surface.id).removeprefix(f"{surface.room}: ")
        joint = format_length(area.joint, plan.job.tape)
        yield [where, ", ".join(area.tiles), pattern_words(area), joint]
