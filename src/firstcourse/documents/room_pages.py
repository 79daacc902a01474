"""What the site pack prints of whole rooms: each unfolded, for the client to look at and to sign."""

from typing import Any

from firstcourse.drawings import draw_room, room_names, to_svg
from firstcourse.drawings.svg import svg_size
from firstcourse.plan import Plan


def room_pages(plan: Plan) -> list[dict[str, Any]]:
    """One entry for each room, in order, as plain values."""
    pages = []
    for room in room_names(plan):
        drawing = draw_room(plan, room)
        tiled = any(surface.tiles for surface in plan.surfaces if surface.room == room)
        pages.append(
            {
                "title": drawing.title,
                "svg": to_svg(drawing),
                "width_mm": svg_size(drawing)[0],
                "scale": f"1:{drawing.scale}",
                "shows": "tile where there is any, boards elsewhere" if tiled else "boards",
            }
        )
    return pages
