"""All papers of a plan, each under its name in the plan's folder."""

import re
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import ExitStack
from itertools import count
from typing import NamedTuple

from firstcourse.drawings import draw_heights, draw_surface, draw_tiling, to_dxf, to_svg
from firstcourse.papers.by_room import RoomPart, room_parts, whole_part
from firstcourse.papers.office_pack import office_data, print_office_pack
from firstcourse.papers.page_process import PageProcess
from firstcourse.papers.pages import HERE, PageMaker
from firstcourse.papers.pages import Paper as PageSize
from firstcourse.papers.phone_pack import phone_pack, plan_digest
from firstcourse.papers.pole_strip import pole_strip
from firstcourse.papers.poles import plan_poles
from firstcourse.papers.site_pack import pack_data, print_pack
from firstcourse.papers.workbook import workbook
from firstcourse.plan import Plan

SITE_PACK_LETTER = "site-pack-letter.pdf"
SITE_PACK_A4 = "site-pack-a4.pdf"
OFFICE_PACK_LETTER = "office-pack-letter.pdf"
OFFICE_PACK_A4 = "office-pack-a4.pdf"
SITE_PACK_PHONE = "site-pack.html"
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

    A plan of several rooms has packs of its own for each room, in a folder of that room, and one for the whole.
    The same plan gives the same papers in the same order, byte for byte.

    Args:
        plan: A verified plan.
        poles: Print the story poles at full size too; their numbers stand in the site pack in any case.
    """
    parts, digest = _parts(plan), plan_digest(plan)
    names = dict(_named(plan))
    # Pages are made beside us, on a core of its own where there is one, at most one part ahead. Those of each room
    # are made in a process of their own that ends after it: what a page maker keeps of a room, 150 MB, is no use
    # to the next.
    with ExitStack() as process, ThreadPoolExecutor(1) as turn:
        maker = process.enter_context(PageProcess()) if len(parts) > 1 else HERE
        printed = parts[0].begun(turn, maker, poles=poles)
        for part, after in zip(parts, (*parts[1:], None), strict=True):
            drawn: dict[str, str] = {}
            if not part.packs:
                yield from _drawings(plan, part, names, drawn)
            if part is parts[0]:
                yield Paper(WORKBOOK, workbook(plan))
            page = phone_pack(part.plan, digest=digest, drawn=drawn, shared=bool(part.packs))
            yield Paper(part.folder + SITE_PACK_PHONE, page)
            ahead = [] if after is None else after.begun(turn, maker, poles=poles)
            while printed:
                name, pages = printed.pop(0)
                yield Paper(name, pages.result())
            printed = ahead


class _Part(NamedTuple):
    """What goes into packs of its own: a whole plan, what its rooms leave of it, or one of its rooms.

    Attributes:
        folder: Where its packs go, parted by `/` and ending with it; empty for the plan's own folder.
        plan: What they are made of.
        room: The room it is; None for a whole plan.
        packs: Of a plan of several rooms: each room with its folder, its boards and its sheets.
    """

    folder: str
    plan: Plan
    room: RoomPart | None
    packs: tuple[tuple[str, str, int, int], ...]

    def begun(self, turn: ThreadPoolExecutor, maker: PageMaker, *, poles: bool) -> list[tuple[str, Future[bytes]]]:
        """Its packs, each with its name, as they are being made one after the other."""
        turn.submit(maker.forget)
        pack = pack_data(self.plan, packs=self.packs, elsewhere=self.room.elsewhere if self.room else ())
        office = office_data(self.plan, with_rules=self.room is None, with_starts=not self.packs)
        printed = []
        for print_one, data, packs in (
            (print_pack, pack, _SITE_PACKS),
            (print_office_pack, office, _OFFICE_PACKS),
        ):
            for name, size in packs:
                printed.append((self.folder + name, turn.submit(print_one, data, size, maker)))
                if self.packs:
                    # The office pack of a whole job grows with its rooms: it is not kept for the other paper.
                    turn.submit(maker.forget)
        if poles and not self.packs and plan_poles(self.plan):
            printed += [
                (self.folder + name, turn.submit(pole_strip, self.plan, size, maker))
                for name, size in _STORY_POLES
            ]
        return printed


def _parts(plan: Plan) -> tuple[_Part, ...]:
    rooms = room_parts(plan)
    if not rooms:
        return (_Part("", plan, None, ()),)
    folders = [f"rooms/{name}/" for name in file_names([part.room for part in rooms])]
    packs = tuple(
        (
            part.room,
            folder,
            sum(not board.fixed for surface in part.plan.surfaces for board in surface.boards),
            len(part.plan.sheets),
        )
        for part, folder in zip(rooms, folders, strict=True)
    )
    whole = _Part("", whole_part(plan), None, packs)
    return (whole, *(_Part(folder, part.plan, part, ()) for part, folder in zip(rooms, folders, strict=True)))


def _named(plan: Plan) -> Iterator[tuple[str, str]]:
    """Each surface's id with the name of its drawings."""
    ids = [surface.id for surface in plan.surfaces]
    yield from zip(ids, file_names(ids), strict=True)


def _drawings(plan: Plan, part: _Part, names: Mapping[str, str], drawn: dict[str, str]) -> Iterator[Paper]:
    """Drawings of a part's surfaces; the SVG of each is kept in `drawn` for the part's pack on a phone."""
    wanted = {surface.id for surface in part.plan.surfaces}
    for surface in (one for one in plan.surfaces if one.id in wanted):
        name = names[surface.id]
        if surface.boarded:
            drawing = draw_surface(plan, surface)
            drawn[f"boards/{surface.id}"] = to_svg(drawing)
            yield Paper(f"drawings/{name}.svg", drawn[f"boards/{surface.id}"].encode())
            yield Paper(f"drawings/{name}.dxf", to_dxf(drawing).encode())
        if surface.tiled:
            tiling = draw_tiling(plan, surface)
            drawn[f"tile/{surface.id}"] = to_svg(tiling)
            yield Paper(f"drawings/{name}-tile.svg", drawn[f"tile/{surface.id}"].encode())
            yield Paper(f"drawings/{name}-tile.dxf", to_dxf(tiling).encode())
        if surface.heights:
            drawn[f"heights/{surface.id}"] = to_svg(draw_heights(plan, surface))
            yield Paper(f"drawings/{name}-heights.svg", drawn[f"heights/{surface.id}"].encode())


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
