"""What the site pack prints of tile: each surface with its start, cuts and soft joints."""

import re
from collections.abc import Sequence
from typing import Any

from firstcourse.documents.pole_strip import plan_poles
from firstcourse.drawings.cut_tiles import chip_places, cut_kinds, cut_scale, draw_cut
from firstcourse.drawings.model import XY
from firstcourse.drawings.mosaic import mosaics
from firstcourse.drawings.svg import svg_size, to_svg
from firstcourse.drawings.tiles import draw_tiling
from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import area2
from firstcourse.plan import Plan, Surface, TiledArea
from firstcourse.tiling.story_pole import StoryPole
from firstcourse.units import TICKS_PER_MM, format_length, one_or_more

SMALL_M2 = 0.75
"""Surfaces below this area, such as those of a niche, a bench or a kerb, share pages."""
_BESIDE_MM, _ACROSS_MM = (84.0, 78.0), (182.0, 56.0)
"""Width and height on paper of the drawing of a small one: beside its words, and across the page above them."""
_LONG = 3.0
"""So many times as long as high, a small surface is drawn across the page."""
_SMALL_CUT_MM = (24.0, 16.0)


def tile_pages(plan: Plan) -> list[dict[str, Any]]:
    """One entry for each tiled surface, in order, as plain values."""
    poles = plan_poles(plan)
    return [_page(plan, surface, poles) for surface in plan.surfaces if surface.tiled]


def _page(plan: Plan, surface: Surface, poles: Sequence[StoryPole]) -> dict[str, Any]:
    small = abs(area2(surface.outline)) / 2 / (TICKS_PER_MM * 1000) ** 2 < SMALL_M2
    left, lower, right, upper = bounds(surface.outline)
    across = right - left > _LONG * (upper - lower)
    room = {"room": _ACROSS_MM if across else _BESIDE_MM} if small else {}
    drawing = draw_tiling(plan, surface, **room)
    whole = sum(tile.whole for tile in surface.tiles)
    cut = len(surface.tiles) - whole
    main = surface.tiled[0]
    return {
        "title": f"{surface.title or surface.id}: tile",
        "small": small,
        "across": across,
        "svg": to_svg(drawing),
        "width_mm": svg_size(drawing)[0],
        "scale": f"1:{drawing.scale}",
        "facts": [
            ["tile", ", ".join(dict.fromkeys(name for area in surface.tiled for name in area.tiles))],
            ["pattern", pattern_words(main)],
            ["grout joint", format_length(main.joint, plan.job.tape)],
            ["tiles", f"{whole} whole, {cut} cut {one_or_more(cut, 'pieces')}"],
        ],
        "starts": _starts(plan, main),
        "snap": [line.words for area in surface.tiled for line in area.lines],
        "poles": [_pole(plan, pole) for pole in poles if pole.surfaces[0] == surface.id],
        "poles_elsewhere": [pole.title for pole in poles if surface.id in pole.surfaces[1:]],
        "cuts": _cuts(plan, surface, {"room": _SMALL_CUT_MM} if small else {}),
        "soft": _soft_rows(plan, surface),
    }


def _cuts(plan: Plan, surface: Surface, room: dict[str, XY]) -> dict[str, Any]:
    """Every kind of cut tile drawn: rectangles, then those with tapers, notches or holes; where chips are cut."""
    tape = plan.job.tape
    chips = mosaics(plan)
    kinds = cut_kinds(surface, without=chips)
    scale = cut_scale(plan, kinds, **room)
    several = len({kind.tile.stock for kind in kinds}) > 1
    along = [list(row) for row in chip_places(surface, chips)]
    found: dict[str, Any] = {"scale": f"1:{scale}", "plain": [], "shaped": [], "chips": along}
    for kind in kinds:
        drawing = draw_cut(plan, kind, scale)
        found["plain" if kind.is_plain else "shaped"].append(
            {
                "mark": kind.mark,
                "count": kind.count,
                "size": " × ".join(format_length(side, tape, feet=False) for side in kind.size),
                "stock": kind.tile.stock if several else "",
                "where": ", ".join(f"{place} ({number})" for place, number in kind.places),
                "svg": to_svg(drawing),
                "width_mm": svg_size(drawing)[0],
                "scale": f"1:{drawing.scale}",
            }
        )
    return found


def pattern_words(area: TiledArea) -> str:
    """An area's pattern as the papers call it."""
    name = area.pattern.replace("_", " ")
    return f"{name}, turned {area.angle} degrees" if area.angle else name


def _starts(plan: Plan, area: TiledArea) -> list[list[str]]:
    """Each start, its smallest cut, how many are cut, how far the room may differ, and its words."""
    rows = []
    for number, start in enumerate(area.starts):
        smallest = format_length(start.smallest_cut, plan.job.tape) if start.cut_tiles else "no cut"
        slack = format_length(start.slack, plan.job.tape)
        name = "used" if number == 0 else f"instead {number}"
        rows.append([name, smallest, str(start.cut_tiles), slack, start.words])
    return rows


def _pole(plan: Plan, pole: StoryPole) -> dict[str, Any]:
    tape = plan.job.tape
    rows = []
    for mark in pole.marks:
        off = "" if pole.control is None else format_length(mark.at - pole.control, tape)
        rows.append([mark.name, format_length(mark.at, tape), off])
    return {"title": pole.title, "foot": pole.foot, "rows": rows}


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
