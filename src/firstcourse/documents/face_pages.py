"""Small faces of one thing, such as the back, sill and sides of a niche, drawn together with their words once."""

from collections.abc import Sequence
from typing import Any

from firstcourse.documents.blocks import (
    HALF_MM,
    HIGH_MM,
    TITLE_MM,
    Block,
    beside_each_other,
    image,
    words_height,
)
from firstcourse.documents.mark_words import line_words, start_words
from firstcourse.documents.tile_words import pattern_words, soft_rows, tiles_words
from firstcourse.drawings.cut_tiles import chip_places
from firstcourse.drawings.mosaic import mosaics
from firstcourse.drawings.svg import svg_size
from firstcourse.drawings.tiles import draw_tiling
from firstcourse.plan import Plan, Surface
from firstcourse.units import format_length

_FACE_MM, _FROM_SCALE = (HALF_MM, 46.0), 10
"""Room for a face [mm], and the scale that none is drawn larger than: a strip of tile needs no half page."""
_WORDS_MM, _GAP_MM = 43.0, 4.0
"""Least width of the words under a face; between two faces [mm]."""
_TEXT_PT, _SMALL_PT = 9.5, 8.5


def face_block(plan: Plan, faces: Sequence[Surface]) -> Block:
    """Faces beside each other, what differs under each, and below them what holds for all.

    Args:
        plan: For the tape of the job and its mosaics.
        faces: Tiled surfaces of one thing.
    """
    tape = plan.job.tape
    facts = [_facts(plan, face) for face in faces]
    common = [row for row in facts[0] if all(row in other for other in facts)]
    drawn: list[tuple[dict[str, Any], float]] = []
    for face, own in zip(faces, facts, strict=True):
        drawing = draw_tiling(plan, face, room=_FACE_MM, from_scale=_FROM_SCALE)
        told = [f"{name} {what}" for name, what in own if [name, what] not in common]
        told += [tiles_words(face, tape), *(f"{what}: {found}" for what, found in start_words(face, tape))]
        told += line_words(face, tape)
        wide = max(svg_size(drawing)[0], _WORDS_MM)
        name = (face.title or face.id).rpartition(", ")[2]
        high = svg_size(drawing)[1] + words_height([name, *told], wide, _SMALL_PT, gap=1.0) + 3.0
        drawn.append(({"name": name, "words": told, "wide": wide, **image(drawing)}, high))
    # Faces of about one height stand beside each other.
    drawn.sort(key=lambda one: -one[1])
    rows = beside_each_other(drawn, [one["wide"] for one, _ in drawn], _GAP_MM)
    chips = [
        f"{(face.title or face.id).rpartition(', ')[2]}, {place}: {number}"
        for face in faces
        for place, number in chip_places(face, mosaics(plan))
    ]
    soft = soft_rows(plan, faces)
    texts = [" ".join(fact) for fact in common] + [*soft, *chips]
    below = words_height(texts, HALF_MM, _TEXT_PT, gap=1.2) / 2 + 8.0
    above = sum(max(height for _, height in row) + 4.0 for row in rows)
    data: dict[str, Any] = {
        "title": f"{(faces[0].title or faces[0].id).rpartition(', ')[0]}: tile",
        "half": False,
        "scale": "",
        "faces": [[one for one, _ in row] for row in rows],
        "facts": common,
        "lines": [],
        "soft": soft,
        "chips": chips,
    }
    return Block(kind="faces", data=data, height=min(TITLE_MM + above + below, HIGH_MM))


def _facts(plan: Plan, face: Surface) -> list[list[str]]:
    main = face.tiled[0]
    return [
        ["Tile", ", ".join(dict.fromkeys(name for area in face.tiled for name in area.tiles))],
        ["Pattern", pattern_words(main)],
        ["Grout joint", format_length(main.joint, plan.job.tape)],
    ]
