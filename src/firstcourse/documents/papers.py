"""All papers of a plan, each under its name in the plan's folder."""

import re
from typing import NamedTuple

from firstcourse.documents.pole_strip import plan_poles, pole_strip
from firstcourse.documents.site_pack import pack_data, print_pack
from firstcourse.documents.workbook import workbook
from firstcourse.drawings import draw_heights, draw_surface, draw_tiling, to_dxf, to_svg
from firstcourse.plan import Plan

SITE_PACK_LETTER = "site-pack-letter.pdf"
SITE_PACK_A4 = "site-pack-a4.pdf"
STORY_POLE_LETTER = "story-pole-letter.pdf"
STORY_POLE_A4 = "story-pole-a4.pdf"
WORKBOOK = "pieces-and-cuts.xlsx"


class Paper(NamedTuple):
    """A file to write.

    Attributes:
        name: Relative to the plan's folder, parted by `/`.
        content: The whole file.
    """

    name: str
    content: bytes


def all_papers(plan: Plan) -> tuple[Paper, ...]:
    """Every paper of a verified plan, in the order a setter needs them; the same plan gives the same bytes."""
    drawings: list[Paper] = []
    for surface in plan.surfaces:
        name = re.sub(r"[^A-Za-z0-9]+", "-", surface.id).strip("-").lower()
        if surface.boarded:
            drawing = draw_surface(plan, surface)
            drawings.append(Paper(f"drawings/{name}.svg", to_svg(drawing).encode()))
            drawings.append(Paper(f"drawings/{name}.dxf", to_dxf(drawing).encode()))
        if surface.tiled:
            tiling = draw_tiling(plan, surface)
            drawings.append(Paper(f"drawings/{name}-tile.svg", to_svg(tiling).encode()))
            drawings.append(Paper(f"drawings/{name}-tile.dxf", to_dxf(tiling).encode()))
        if surface.heights:
            heights = draw_heights(plan, surface)
            drawings.append(Paper(f"drawings/{name}-heights.svg", to_svg(heights).encode()))
    pack = pack_data(plan)
    poles: list[Paper] = []
    if plan_poles(plan):
        poles = [
            Paper(STORY_POLE_LETTER, pole_strip(plan, "letter")),
            Paper(STORY_POLE_A4, pole_strip(plan, "a4")),
        ]
    return (
        Paper(SITE_PACK_LETTER, print_pack(pack, "letter")),
        Paper(SITE_PACK_A4, print_pack(pack, "a4")),
        *poles,
        Paper(WORKBOOK, workbook(plan)),
        *drawings,
    )
