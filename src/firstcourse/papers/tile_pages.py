"""What the papers print of tile: each surface with its marks and soft joints, and its cuts for the saw."""

from collections.abc import Sequence
from typing import Any

from firstcourse.drawings import (
    chip_places,
    cut_kinds,
    cut_scale,
    draw_cut,
    draw_tiling,
    mosaics,
    said_places,
    size_words,
    svg_size,
)
from firstcourse.papers.blocks import (
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
from firstcourse.papers.face_pages import face_block, facts_of
from firstcourse.papers.mark_words import line_words, start_words
from firstcourse.papers.poles import PoleMark, StoryPole, plan_poles
from firstcourse.papers.start_reasons import start_reasons
from firstcourse.papers.surface_sizes import COARSE, SMALL_HIGH_MM, is_small, size_mm
from firstcourse.papers.tile_words import smallest_cut, soft_rows, tiles_words
from firstcourse.plan import Plan, Surface, TiledArea
from firstcourse.units import format_length
from firstcourse.words import Speaker, speaker_for

_TEXT_PT = 9.5
_BESIDE_MM, _COLUMN_MM = 114.0, 64.0
"""Width of a wide surface's drawing and of the words beside it [mm]."""
_OVER_MM = (WIDE_MM, 150.0)
"""Room for the drawing of a surface that is too wide to have its words beside it [mm]."""
_HALF_HIGH_MM = 132.0
_CUT_MM, _CUT_WORDS_MM, _CUT_GAP_MM = (20.0, 20.0), 33.0, 4.0
_POLES, _POLE_MM = 3, 58.0
"""Columns of story poles beside each other, and the width of each [mm]."""
_LISTS, _LIST_MM, _SMALL_PT = 3, 58.0, 9.0
"""Columns of plain cuts beside each other, the width of each [mm], and their type size [pt]."""


def tile_blocks(plan: Plan) -> list[Block]:
    """Every tiled surface in order: its drawing, where it starts, its soft joints."""
    groups = _groups([surface for surface in plan.surfaces if surface.tiled])
    alone = [group[0] for group in groups if len(group) == 1]
    half = two_to_a_page({surface.id: size_mm(surface) for surface in alone})
    return [
        face_block(plan, group) if len(group) > 1 else _block(plan, group[0], half=group[0].id in half)
        for group in groups
    ]


def _groups(tiled: Sequence[Surface]) -> list[list[Surface]]:
    """Surfaces that are drawn by themselves, and the small faces of one niche, window, bench or kerb together."""
    groups: list[list[Surface]] = []
    for surface in tiled:
        mates = groups[-1] if groups else []
        alike = bool(mates) and _part_of(mates[-1]) == _part_of(surface)
        if alike and is_small(mates[-1]) and is_small(surface):
            mates.append(surface)
        else:
            groups.append([surface])
    return groups


def _part_of(surface: Surface) -> str:
    return surface.id.rpartition("/")[0]


def tile_poles(plan: Plan) -> list[list[list[dict[str, Any]]]]:
    """The marks of every story pole, as plain values, in columns: a stick's numbers stay together."""
    poles = [pole_rows(plan, pole) for pole in plan_poles(plan)]
    heights = [
        words_height([pole["title"]], _POLE_MM, 10.5, gap=9.0)
        + words_height([row["name"] for row in pole["rows"]], _POLE_MM - 22.0, 8.5, gap=0.7)
        for pole in poles
    ]
    return in_columns(poles, heights, _POLES, most=HIGH_MM - 22.0)


def saw_page(plan: Plan) -> dict[str, Any]:
    """What is cut at the saw, as plain values: by surface what is cut to fit, then drawings of all else."""
    speaker = speaker_for(plan)
    lists, shaped = [], []
    for group in _groups([surface for surface in plan.surfaces if surface.tiles]):
        names = [speaker.title(surface) for surface in group]
        title = names[0].rpartition(", ")[0] if len(group) > 1 else names[0]
        fitted: list[dict[str, Any]] = []
        for surface, name in zip(group, names, strict=True):
            plain, drawn = _cuts(plan, surface, speaker)
            # Marks begin anew on each face, so that its name goes with them.
            face = name.rpartition(", ")[2] if len(group) > 1 else ""
            fitted += [{**cut, "mark": f"{face} {cut['mark']}".strip()} for cut in plain]
            shaped += [{**cut, "where": f"{name}: {cut['where']}"} for cut in drawn]
        texts = [" ".join(map(str, cut.values())) for cut in fitted]
        heights = [words_height([text], _LIST_MM, _SMALL_PT) for text in texts]
        if fitted:
            lists.append({"title": title, "columns": in_columns(fitted, heights, _LISTS)})
    widths = [max(cut["width_mm"], _CUT_WORDS_MM) for cut in shaped]
    return {"lists": lists, "rows": beside_each_other(shaped, widths, _CUT_GAP_MM)}


def other_starts(plan: Plan) -> list[dict[str, Any]]:
    """Where else each surface's tile could start and what that would trade, as plain values."""
    speaker = speaker_for(plan)
    return [
        {"title": speaker.title(surface), "rows": _starts(surface.tiled[0], speaker)}
        for surface in plan.surfaces
        if surface.tiled
    ]


def _block(plan: Plan, surface: Surface, *, half: bool) -> Block:
    small = is_small(surface)
    speaker = speaker_for(plan)
    words = words_beside(plan, surface, speaker)
    texts = [" ".join(fact) for fact in words["facts"]] + [*words["lines"], *words["soft"], *words["chips"]]
    if half:
        room = (HALF_MM, SMALL_HIGH_MM if small else _HALF_HIGH_MM)
        drawing, beside = draw_tiling(plan, surface, room=room), False
    else:
        high = SMALL_HIGH_MM if small else HIGH_MM - TITLE_MM - 8.0
        drawing, beside = draw_tiling(plan, surface, room=(_BESIDE_MM, high)), True
        if drawing.scale > COARSE:
            drawing, beside = draw_tiling(plan, surface, room=_OVER_MM), False
    height = svg_size(drawing)[1]
    # Under a wide drawing the words stand in two columns.
    column = _COLUMN_MM if beside else HALF_MM
    told = words_height(texts, column, _TEXT_PT, gap=1.2) + 8.0
    told = told if beside or half else told / 2 + 6.0
    data = {
        "title": speaker.text("papers-title-tile", surface=speaker.title(surface)),
        "half": half,
        "beside": beside,
        **words,
        **image(drawing),
    }
    together = max(height, told) if beside else height + told
    return Block(kind="tile", data=data, height=TITLE_MM + together + 4.0, half=half)


def words_beside(plan: Plan, surface: Surface, speaker: Speaker) -> dict[str, Any]:
    """What stands with a tiled surface's drawing."""
    chips = said_places(chip_places(surface, mosaics(plan)), speaker)
    return {
        "facts": [
            *facts_of(surface, speaker),
            [speaker.text("tiles-facts", "tiles"), tiles_words(surface, speaker)],
            *([what, found] for what, found in start_words(surface, speaker)),
        ],
        "lines": list(line_words(surface, speaker)),
        "soft": soft_rows(plan, [surface], speaker),
        "chips": [f"{place}: {number}" for place, number in chips],
    }


def _cuts(plan: Plan, surface: Surface, speaker: Speaker) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """Every line of cut tiles: those cut to fit, and those with slants, notches or holes, which are drawn."""
    kinds = cut_kinds(surface, without=mosaics(plan))
    scale = cut_scale(plan, [kind for kind in kinds if not kind.is_fit], room=_CUT_MM)
    several = len({kind.tile.stock for kind in kinds}) > 1
    plain, shaped = [], []
    for kind in kinds:
        where = ", ".join(f"{place} ({number})" for place, number in said_places(kind.places, speaker))
        told = {"mark": kind.mark, "count": kind.count, "size": size_words(kind, speaker), "where": where}
        told["stock"] = kind.tile.stock if several else ""
        if kind.is_fit:
            plain.append(told)
        else:
            shaped.append({**told, **image(draw_cut(plan, kind, scale))})
    return plain, shaped


def _starts(area: TiledArea, speaker: Speaker) -> list[list[str]]:
    """Each start, its smallest cut, how many are cut, how far the room may differ, and what speaks for it."""
    rows = []
    for number, start in enumerate(area.starts):
        smallest = smallest_cut(start, speaker)
        slack = format_length(start.slack, speaker.tape)
        name = speaker.text("tiles-start", number=number)
        rows.append([name, smallest, str(start.cut_tiles), slack, start_reasons(speaker, start, area.starts[0])])
    return rows


def pole_rows(plan: Plan, pole: StoryPole) -> dict[str, Any]:
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
