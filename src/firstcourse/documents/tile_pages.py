"""What the papers print of tile: each surface with its marks and soft joints, and its cuts for the saw."""

import re
from typing import Any

from firstcourse.documents.blocks import (
    HALF_MM,
    HIGH_MM,
    TITLE_MM,
    WIDE_MM,
    Block,
    beside_each_other,
    image,
    in_columns,
    two_to_a_page,
    words_height,
)
from firstcourse.documents.mark_words import line_words, start_words
from firstcourse.documents.poles import PoleMark, StoryPole, plan_poles
from firstcourse.drawings.cut_tiles import chip_places, cut_kinds, cut_scale, draw_cut
from firstcourse.drawings.mosaic import mosaics
from firstcourse.drawings.svg import svg_size
from firstcourse.drawings.tiles import draw_tiling
from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import area2
from firstcourse.plan import Plan, Surface, TiledArea
from firstcourse.tiling.words import cut_text
from firstcourse.units import TICKS_PER_MM, format_length, one_or_more

_TEXT_PT = 9.5
_BESIDE_MM, _COLUMN_MM = 114.0, 64.0
"""Width of a wide surface's drawing and of the words beside it [mm]."""
_OVER_MM = (WIDE_MM, 150.0)
"""Room for the drawing of a surface that is too wide to have its words beside it [mm]."""
_COARSE = 25
"""A drawing at a smaller scale than one to this gets the whole width of the page."""
_HALF_HIGH_MM, _SMALL_HIGH_MM = 132.0, 62.0
_SMALL_M2 = 0.75
"""Surfaces below this area, such as those of a niche, a bench or a kerb, are drawn small; no high strip is."""
_CUT_MM, _CUT_WORDS_MM, _CUT_GAP_MM = (22.0, 22.0), 33.0, 4.0
_POLES, _POLE_MM = 3, 58.0
"""Columns of story poles beside each other, and the width of each [mm]."""
_LISTS, _LIST_MM, _SMALL_PT = 3, 58.0, 9.0
"""Columns of plain cuts beside each other, the width of each [mm], and their type size [pt]."""


def tile_blocks(plan: Plan) -> list[Block]:
    """Every tiled surface in order: its drawing, where it starts, its soft joints."""
    tiled = [surface for surface in plan.surfaces if surface.tiled]
    half = two_to_a_page({surface.id: _size(surface) for surface in tiled})
    return [_block(plan, surface, half=surface.id in half) for surface in tiled]


def _size(surface: Surface) -> tuple[float, float]:
    left, lower, right, upper = bounds(surface.outline)
    return (right - left) / TICKS_PER_MM, (upper - lower) / TICKS_PER_MM


def _is_small(surface: Surface) -> bool:
    """Whether a surface is drawn small: by its area, but no strip that is too high for it."""
    area = abs(area2(surface.outline)) / 2 / (TICKS_PER_MM * 1000) ** 2
    return area < _SMALL_M2 and _size(surface)[1] <= _SMALL_HIGH_MM * _COARSE


def tile_poles(plan: Plan) -> list[list[list[dict[str, Any]]]]:
    """The marks of every story pole, as plain values, in columns: a stick's numbers stay together."""
    poles = [_pole(plan, pole) for pole in plan_poles(plan)]
    heights = [
        words_height([pole["title"]], _POLE_MM, 10.5, gap=9.0)
        + words_height([row["name"] for row in pole["rows"]], _POLE_MM - 22.0, 8.5, gap=1.6)
        for pole in poles
    ]
    return in_columns(poles, heights, _POLES, most=HIGH_MM - 22.0)


def saw_page(plan: Plan) -> dict[str, Any]:
    """What is cut at the saw, as plain values: by surface what is cut to fit, then drawings of all else."""
    lists, shaped = [], []
    for surface in plan.surfaces:
        plain, drawn = _cuts(plan, surface)
        texts = [" ".join(map(str, cut.values())) for cut in plain]
        heights = [words_height([text], _LIST_MM, _SMALL_PT) for text in texts]
        title = surface.title or surface.id
        if plain:
            lists.append({"title": title, "columns": in_columns(plain, heights, _LISTS)})
        shaped += [{**cut, "where": f"{title}: {cut['where']}"} for cut in drawn]
    widths = [max(cut["width_mm"], _CUT_WORDS_MM) for cut in shaped]
    return {"lists": lists, "rows": beside_each_other(shaped, widths, _CUT_GAP_MM)}


def other_starts(plan: Plan) -> list[dict[str, Any]]:
    """Where else each surface's tile could start and what that would trade, as plain values."""
    return [
        {"title": surface.title or surface.id, "rows": _starts(plan, surface.tiled[0])}
        for surface in plan.surfaces
        if surface.tiled
    ]


def _block(plan: Plan, surface: Surface, *, half: bool) -> Block:
    small = _is_small(surface)
    words = _words(plan, surface)
    texts = [" ".join(fact) for fact in words["facts"]] + [*words["lines"], *words["soft"], *words["chips"]]
    if half:
        room = (HALF_MM, _SMALL_HIGH_MM if small else _HALF_HIGH_MM)
        drawing, beside = draw_tiling(plan, surface, room=room), False
    else:
        high = _SMALL_HIGH_MM if small else HIGH_MM - TITLE_MM - 8.0
        drawing, beside = draw_tiling(plan, surface, room=(_BESIDE_MM, high)), True
        if drawing.scale > _COARSE:
            drawing, beside = draw_tiling(plan, surface, room=_OVER_MM), False
    height = svg_size(drawing)[1]
    # Under a wide drawing the words stand in two columns.
    column = _COLUMN_MM if beside else HALF_MM
    told = words_height(texts, column, _TEXT_PT, gap=1.2) + 8.0
    told = told if beside or half else told / 2 + 6.0
    data = {
        "title": f"{surface.title or surface.id}: tile",
        "half": half,
        "beside": beside,
        **words,
        **image(drawing),
    }
    together = max(height, told) if beside else height + told
    return Block(kind="tile", data=data, height=TITLE_MM + together + 4.0, half=half)


def _words(plan: Plan, surface: Surface) -> dict[str, Any]:
    """What stands with a tiled surface's drawing."""
    tape = plan.job.tape
    whole = sum(tile.whole for tile in surface.tiles)
    cut = len(surface.tiles) - whole
    main = surface.tiled[0]
    smallest = _starts(plan, main)[0][1]
    chips = chip_places(surface, mosaics(plan))
    return {
        "facts": [
            ["Tile", ", ".join(dict.fromkeys(name for area in surface.tiled for name in area.tiles))],
            ["Pattern", pattern_words(main)],
            ["Grout joint", format_length(main.joint, tape)],
            ["Tiles", f"{whole} whole, {cut} cut {one_or_more(cut, 'pieces')}; smallest cut {smallest}"],
            *([what, found] for what, found in start_words(surface, tape)),
        ],
        "lines": list(line_words(surface, tape)),
        "soft": [f"{why}: {width} wide, {length}" for why, width, length in _soft_rows(plan, surface)],
        "chips": [f"{place}: {number}" for place, number in chips],
    }


def _cuts(plan: Plan, surface: Surface) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """Every line of cut tiles: those cut to fit, and those with slants, notches or holes, which are drawn."""
    kinds = cut_kinds(surface, without=mosaics(plan))
    scale = cut_scale(plan, [kind for kind in kinds if not kind.is_fit], room=_CUT_MM)
    several = len({kind.tile.stock for kind in kinds}) > 1
    plain, shaped = [], []
    for kind in kinds:
        where = ", ".join(f"{place} ({number})" for place, number in kind.places)
        told = {"mark": kind.mark, "count": kind.count, "size": kind.about(plan.job.tape), "where": where}
        told["stock"] = kind.tile.stock if several else ""
        if kind.is_fit:
            plain.append(told)
        else:
            shaped.append({**told, **image(draw_cut(plan, kind, scale))})
    return plain, shaped


def pattern_words(area: TiledArea) -> str:
    """An area's pattern as the papers call it."""
    name = area.pattern.replace("_", " ")
    return f"{name}, turned {area.angle} degrees" if area.angle else name


def _starts(plan: Plan, area: TiledArea) -> list[list[str]]:
    """Each start, its smallest cut, how many are cut, how far the room may differ, and its words."""
    rows = []
    for number, start in enumerate(area.starts):
        smallest = cut_text(start.smallest_cut, plan.job.tape) if start.cut_tiles else "no cut"
        slack = format_length(start.slack, plan.job.tape)
        name = "used" if number == 0 else f"instead {number}"
        rows.append([name, smallest, str(start.cut_tiles), slack, start.words])
    return rows


def _pole(plan: Plan, pole: StoryPole) -> dict[str, Any]:
    """One stick: what stands at one place is one row; the row of the line that it is held to is told apart."""
    rows: dict[str, list[PoleMark]] = {}
    for mark in pole.marks:
        rows.setdefault(format_length(mark.at, plan.job.tape), []).append(mark)
    return {
        "title": pole.title,
        "control": pole.control,
        "rows": [
            {
                "at": at,
                "name": "; ".join(dict.fromkeys(mark.name for mark in marks)),
                "held": any(mark.kind == "control" for mark in marks),
            }
            for at, marks in rows.items()
        ],
    }


def _soft_rows(plan: Plan, surface: Surface) -> list[list[str]]:
    found: dict[tuple[str, int], int] = {}
    for joint in surface.soft_joints:
        length = sum(
            ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5
            for a, b in zip(joint.line[:-1], joint.line[1:], strict=True)
        )
        # What is called by its kind, such as a tub named tub, is told by one word.
        why = re.sub(r"^(\w+) \1\b", r"\1", joint.why)
        found[why, joint.width] = found.get((why, joint.width), 0) + round(length)
    return [
        [why, format_length(width, plan.job.tape), format_length(length, plan.job.tape)]
        for (why, width), length in found.items()
    ]
