"""What the site pack prints of whole rooms: each unfolded, for the client to look at and to sign."""

from typing import Any

from firstcourse.drawings import draw_room, room_names, svg_size, to_svg
from firstcourse.papers.blocks import HIGH_MM, WIDE_MM
from firstcourse.papers.tile_words import pattern_words
from firstcourse.plan import Plan
from firstcourse.units import format_length
from firstcourse.words import Speaker, speaker_for

_OTHER_MM = 50.0
"""What the title, the words above the drawing and the signatures take of a page's height [mm]."""
_PAGE_MM, _ROW_MM, _LEAST_MM = (WIDE_MM, HIGH_MM - _OTHER_MM), 6.5, 90.0
"""Room of a page for the drawing; height of one row of the list below it; the drawing is never less high [mm]."""

_LINE_LETTERS = 75
"""Letters of the first column that one line of the list holds."""


def room_pages(plan: Plan) -> list[dict[str, Any]]:
    """One entry for each room, in order, as plain values."""
    speaker = speaker_for(plan)
    pages = []
    for room in room_names(plan):
        tiles = _tiles(plan, room, speaker)
        lines = sum(1 + len(where) // _LINE_LETTERS for where, *_ in tiles)
        height = _PAGE_MM[1] - _ROW_MM * (lines + 1) if tiles else _PAGE_MM[1]
        drawing = draw_room(plan, room, paper=(_PAGE_MM[0], max(height, _LEAST_MM)))
        tiled = any(surface.tiles for surface in plan.surfaces if surface.room == room)
        pages.append(
            {
                "title": drawing.title,
                "svg": to_svg(drawing),
                "width_mm": svg_size(drawing)[0],
                "scale": f"1:{drawing.scale}",
                "tiles": tiles,
                "shows": speaker.text("sitepack-shows", tiled=tiled),
            }
        )
    return pages


def _tiles(plan: Plan, room: str, speaker: Speaker) -> list[list[str]]:
    """What a client agrees to: where which tile goes, in which pattern and with which joint."""
    places: dict[tuple[str, str, str], list[str]] = {}
    for surface in plan.surfaces:
        if surface.room == room:
            where = speaker.title(surface).removeprefix(f"{room}: ")
            for area in surface.tiled:
                # Strips of a border turn with its sides; only a slant is seen as another pattern.
                pattern = pattern_words(area, speaker, turned=bool(area.angle % 90))
                joint = format_length(area.joint, plan.job.tape)
                places.setdefault((", ".join(area.tiles), pattern, joint), []).append(where)
    return [["; ".join(dict.fromkeys(where)), *what] for what, where in places.items()]
