"""All papers of a plan, each under its name in the plan's folder."""

import re
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from itertools import count
from typing import NamedTuple

from firstcourse.documents.office_pack import office_data, print_office_pack
from firstcourse.documents.pages import Paper as PageSize
from firstcourse.documents.pole_strip import pole_strip
from firstcourse.documents.poles import plan_poles
from firstcourse.documents.site_pack import pack_data, print_pack
from firstcourse.documents.workbook import workbook
from firstcourse.drawings import draw_heights, draw_surface, draw_tiling, to_dxf, to_svg
from firstcourse.plan import Plan

SITE_PACK_LETTER = "site-pack-letter.pdf"
SITE_PACK_A4 = "site-pack-a4.pdf"
OFFICE_PACK_LETTER = "office-pack-letter.pdf"
OFFICE_PACK_A4 = "office-pack-a4.pdf"
STORY_POLE_LETTER = "story-pole-letter.pdf"
STORY_POLE_A4 = "story-pole-a4.pdf"
WORKBOOK = "pieces-and-cuts.xlsx"
_SITE_PACKS: tuple[tuple[str, PageSize], ...] = ((SITE_PACK_LETTER, "letter"), (SITE_PACK_A4, "a4"))
_OFFICE_PACKS: tuple[tuple[str, PageSize], ...] = ((OFFICE_PACK_LETTER, "letter"), (OFFICE_PACK_A4, "a4"))
_STORY_POLES: tuple[tuple[str, PageSize], ...] = ((STORY_POLE_LETTER, "letter"), (STORY_POLE_A4, "a4"))
_KINDS = ("", "-tile", "-heights")
"""What the names of a surface's drawings end with."""


class Paper(NamedTuple):
    """A file to write.

    Attributes:
        name: Relative to the plan's folder, parted by `/`.
        content: The whole file.
    """

    name: str
    content: bytes


def all_papers(plan: Plan, *, poles: bool = False) -> Iterator[Paper]:
    """Every paper of a verified plan, each as it is made, so that no two need to be in memory at a time.

    The same plan gives the same papers in the same order, byte for byte.

    Args:
        plan: A verified plan.
        poles: Print the story poles at full size too; their numbers stand in the site pack in any case.
    """
    pack, office = pack_data(plan), office_data(plan)
    # The page maker works beside us, on a core of its own where there is one.
    with ThreadPoolExecutor(1) as page_maker:
        printed = [(name, page_maker.submit(print_pack, pack, size)) for name, size in _SITE_PACKS]
        printed += [(name, page_maker.submit(print_office_pack, office, size)) for name, size in _OFFICE_PACKS]
        if poles and plan_poles(plan):
            printed += [(name, page_maker.submit(pole_strip, plan, size)) for name, size in _STORY_POLES]
        yield from _drawings(plan)
        yield Paper(WORKBOOK, workbook(plan))
        while printed:
            name, pages = printed.pop(0)
            yield Paper(name, pages.result())


def _drawings(plan: Plan) -> Iterator[Paper]:
    for surface, name in zip(plan.surfaces, file_names([surface.id for surface in plan.surfaces]), strict=True):
        if surface.boarded:
            drawing = draw_surface(plan, surface)
            yield Paper(f"drawings/{name}.svg", to_svg(drawing).encode())
            yield Paper(f"drawings/{name}.dxf", to_dxf(drawing).encode())
        if surface.tiled:
            tiling = draw_tiling(plan, surface)
            yield Paper(f"drawings/{name}-tile.svg", to_svg(tiling).encode())
            yield Paper(f"drawings/{name}-tile.dxf", to_dxf(tiling).encode())
        if surface.heights:
            heights = draw_heights(plan, surface)
            yield Paper(f"drawings/{name}-heights.svg", to_svg(heights).encode())


def file_names(surfaces: Sequence[str]) -> tuple[str, ...]:
    """A name for the drawings of each surface, in order; no two drawings of a plan share a file on any disk.

    Surfaces whose ids differ only in what a file name leaves out are told apart by a number.

    Args:
        surfaces: Ids of a plan's surfaces.
    """
    taken: set[str] = set()
    names = []
    for surface in surfaces:
        plain = re.sub(r"[^A-Za-z0-9]+", "-", surface).strip("-").lower()
        numbered = (plain if number == 1 else f"{plain}-{number}" for number in count(1))
        name = next(name for name in numbered if taken.isdisjoint(name + kind for kind in _KINDS))
        taken.update(name + kind for kind in _KINDS)
        names.append(name)
    return tuple(names)
