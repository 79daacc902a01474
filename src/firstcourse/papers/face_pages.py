"""Small faces of one thing, such as the back, sill and sides of a niche, drawn together with their words once."""

from collections.abc import Sequence
from typing import Any

from firstcourse.drawings import Drawing, chip_places, draw_tiling, mosaics, said_places, svg_size
from firstcourse.papers.blocks import TITLE_MM, WIDE_MM, Block, image, in_shortest, words_height
from firstcourse.papers.mark_words import line_words, start_words
from firstcourse.papers.surface_sizes import COARSE
from firstcourse.papers.tile_words import pattern_words, soft_rows, tiles_words
from firstcourse.plan import Plan, Surface
from firstcourse.units import format_length
from firstcourse.words import Speaker, speaker_for

_HIGH_MM, _FROM_SCALE = 46.0, 10
"""Height of a face on paper [mm]; the scale that none is drawn larger than, as a strip needs no half page."""
_COLUMNS, _GAP_MM = (3, 2), 5.0
"""Narrow columns of faces, or wide ones; between two of them, and between two faces in one [mm]."""
_TEXT_PT, _SMALL_PT = 9.5, 8.5


def face_block(plan: Plan, faces: Sequence[Surface]) -> Block:
    """Faces in columns, what differs under each, and in the shortest column what holds for all.

    Of narrow and wide columns those are taken that need less of the page; a strip that a narrow column would make
    too small takes wide ones.

    Args:
        plan: For the tape of the job and its mosaics.
        faces: Tiled surfaces of one thing.
    """
    narrow, wide = (_drawn(plan, faces, count) for count in _COLUMNS)
    readable = all(one.scale <= max(COARSE, other.scale) for one, other in zip(narrow, wide, strict=True))
    speaker = speaker_for(plan)
    tried = [
        _block(plan, faces, drawn, count, speaker) for count, drawn in zip(_COLUMNS, (narrow, wide), strict=True)
    ]
    return min(tried if readable else tried[1:], key=lambda block: block.height)


def _drawn(plan: Plan, faces: Sequence[Surface], count: int) -> list[Drawing]:
    room = (_wide(count), _HIGH_MM)
    return [draw_tiling(plan, face, room=room, from_scale=_FROM_SCALE) for face in faces]


def _wide(count: int) -> float:
    return (WIDE_MM - (count - 1) * _GAP_MM) / count


def _block(
    plan: Plan, faces: Sequence[Surface], drawings: Sequence[Drawing], count: int, speaker: Speaker
) -> Block:
    wide = _wide(count)
    facts = [facts_of(face, speaker) for face in faces]
    common = [row for row in facts[0] if all(row in other for other in facts)]
    cells: list[dict[str, Any]] = []
    for face, own, drawing in zip(faces, facts, drawings, strict=True):
        told = [f"{name} {what}" for name, what in own if [name, what] not in common]
        _add(
            cells,
            {"name": _name(face, speaker), "words": told + _words(face, speaker), **image(drawing)},
            drawing,
            wide,
        )
    heights = [
        cell["high"] + words_height([cell["name"], *cell["words"]], wide, _SMALL_PT) + _GAP_MM for cell in cells
    ]
    chips = [
        f"{_name(face, speaker)}, {place}: {number}"
        for face in faces
        for place, number in said_places(chip_places(face, mosaics(plan)), speaker)
    ]
    soft = soft_rows(plan, faces, speaker)
    texts = [" ".join(fact) for fact in common] + [*soft, *chips]
    below = words_height(texts, wide, _TEXT_PT) + 10.0
    columns, reached = in_shortest(cells, heights, count)
    last = min(range(count), key=lambda number: reached[number])
    reached[last] += below
    data: dict[str, Any] = {
        "title": speaker.text("papers-title-tile", surface=speaker.title(faces[0]).rpartition(", ")[0]),
        "half": False,
        "scale": "",
        "columns": columns,
        "last": last,
        "facts": common,
        "lines": [],
        "soft": soft,
        "chips": chips,
    }
    return Block(kind="faces", data=data, height=TITLE_MM + max(reached))


def _add(cells: list[dict[str, Any]], face: dict[str, Any], drawing: Drawing, wide: float) -> None:
    """Put a face among the cells: beside one with the very same words where there is room, else in its own."""
    width, high = svg_size(drawing)
    for cell in cells:
        used = cell["wide"] + _GAP_MM + width
        if (cell["words"], cell["scale"]) == (face["words"], face["scale"]) and used <= wide:
            cell["drawn"].append(face)
            cell.update(name=f"{cell['name']}, {face['name']}", wide=used, high=max(high, cell["high"]))
            return
    told = {name: face[name] for name in ("name", "words", "scale")}
    cells.append({**told, "drawn": [face], "wide": width, "high": high})


def _name(face: Surface, speaker: Speaker) -> str:
    return speaker.title(face).rpartition(", ")[2]


def _words(face: Surface, speaker: Speaker) -> list[str]:
    starts = [f"{what}: {found}" for what, found in start_words(face, speaker)]
    return [tiles_words(face, speaker), *starts, *line_words(face, speaker)]


def facts_of(face: Surface, speaker: Speaker) -> list[list[str]]:
    """What tile a surface has, in which pattern and with which joint."""
    main = face.tiled[0]
    names = speaker.labels("tiles-facts")
    return [
        [names["tile"], ", ".join(dict.fromkeys(name for area in face.tiled for name in area.tiles))],
        [names["pattern"], pattern_words(main, speaker)],
        [names["joint"], format_length(main.joint, speaker.tape)],
    ]
