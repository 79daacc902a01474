"""The printed site pack: cover, surfaces at a stated scale, cut tickets, what to buy, what to look at."""

from collections.abc import Iterator, Sequence
from typing import Any

from firstcourse.papers.blocks import HIGH_MM, in_rows
from firstcourse.papers.board_checks import board_checks
from firstcourse.papers.board_pages import board_blocks
from firstcourse.papers.fall_pages import fall_pages
from firstcourse.papers.frame import PUT_IN, page_frame
from firstcourse.papers.judgement_pages import JUDGED, structure_cautions
from firstcourse.papers.pages import HERE, PAGE_SIZES, PageMaker, Paper
from firstcourse.papers.room_pages import room_pages
from firstcourse.papers.rule_pages import CAUTIONS
from firstcourse.papers.ticket_pages import second_cuts, slight_tapers, tickets
from firstcourse.papers.tile_pages import saw_page, tile_blocks, tile_poles
from firstcourse.papers.water_pages import water_columns, water_pages
from firstcourse.plan import Plan, Quantity
from firstcourse.units import as_needed
from firstcourse.words import SaidFinding, Speaker, alike_together, speaker_for

_SET = (
    (22, 19, 0.94, False),
    (20, 18, 0.94, False),
    (17, 16, 0.94, False),
    (16, 16, 0.84, False),
    (17, 16, 0.94, True),
)
"""Ways to set the pages, tried in turn: margins above, for the clip, and below, for cautions in the foot [mm];
size of the notes at the end beside that of the rest; whether the notes have a page of their own."""
_LEAST_MM, _ENOUGH_MM = HIGH_MM / 3, HIGH_MM / 2
"""A page that is filled no higher than this is all but empty; up to here it may be spared [mm]."""


def site_pack(plan: Plan, paper: Paper) -> bytes:
    """The site pack as a PDF.

    Args:
        plan: A verified plan.
        paper: Page size; drawings keep the scale they state on either.

    Raises:
        PaperError: A warning of the page maker, such as a missing letter in the face.
    """
    return print_pack(pack_data(plan), paper)


def print_pack(data: dict[str, Any], paper: Paper, maker: PageMaker = HERE) -> bytes:
    """The site pack as a PDF, from what its pages print: to print it on several papers the drawings are made once.

    Args:
        data: As `pack_data` gives it.
        paper: Page size.
        maker: Makes the pages.

    Raises:
        PaperError: A warning of the page maker.
    """
    sources = ("pages.typ", "site_pack.typ")
    printed = {**data, "paper": PAGE_SIZES[paper]}
    found: list[tuple[int, float, int, dict[str, Any]]] = []
    # A page with little on it is spared by setting closer, where that takes it away.
    for top, bottom, notes, apart in _SET:
        tried = {**printed, "top": top, "bottom": bottom, "notes": notes, "apart": apart}
        fill = _filled(maker.marked(sources, tried, "fill"), top)
        found.append((sum(high < _LEAST_MM for high in fill.values()), max(fill), len(found), tried))
        if min(fill.values()) >= _ENOUGH_MM:
            break
    return maker.compiled(sources, min(found, key=lambda one: one[:3])[3])


def _filled(marks: Sequence[Sequence[float]], top: float) -> dict[float, float]:
    """How far down each page goes, by its number, on which something ends that stands whole [mm].

    Args:
        marks: Page and height on it where each such thing ends.
        top: Margin above [mm].
    """
    ends: dict[float, float] = {}
    for page, end in marks:
        ends[page] = max(ends.get(page, 0.0), end - top)
    return ends


def pack_data(
    plan: Plan,
    *,
    packs: Sequence[tuple[str, str, int, int]] = (),
    elsewhere: Sequence[tuple[str, str, str]] = (),
) -> dict[str, Any]:
    """All that the pages print, as plain values, in the reader's words and units; the same on every paper.

    Args:
        plan: What the pack is made of.
        packs: Of a job whose rooms have packs of their own: each room with its folder, its boards and the sheets
            cut there. Then this pack has no page of a surface or a sheet.
        elsewhere: Boards cut from sheets of other packs, see `by_room`.
    """
    speaker = speaker_for(plan)
    drawn = plan.model_copy(update={"surfaces": (), "sheets": (), "pieces": (), "doors": ()}) if packs else plan
    told = {
        "tongue": speaker.tongue,
        "frame": page_frame(plan, speaker, speaker.text("sitepack-name")),
        "site": _site(plan, speaker),
        "packs": [[room, folder, f"{boards}", f"{sheets}"] for room, folder, boards, sheets in packs],
        "elsewhere": _elsewhere(elsewhere),
    }
    return speaker.fields(_data(plan, drawn, speaker)) | told


def _elsewhere(boards: Sequence[tuple[str, str, str]]) -> list[list[str]]:
    """The sheets of other packs that boards of this one are cut from: the boards, the sheet, the room."""
    marks: dict[tuple[str, str], list[str]] = {}
    for mark, sheet, room in boards:
        marks.setdefault((sheet, room), []).append(mark)
    return [[", ".join(named), sheet, room] for (sheet, room), named in marks.items()]


def _data(plan: Plan, drawn: Plan, speaker: Speaker) -> dict[str, Any]:
    cautions = [speaker.rule_text(rule.value) for rule in plan.rules if rule.id.startswith(CAUTIONS)]
    # What stands among the cautions is not told again.
    found = [said for said in speaker.findings(plan.findings) if said.message not in cautions]
    findings = [_finding(finding) for finding in alike_together(found)]
    water = water_pages(drawn)
    return {
        "job": plan.job.name,
        "figures": [list(row) for row in _figures(plan, speaker)],
        "words": speaker.labels("sitepack-labels", **PUT_IN),
        "more": [speaker.text("sitepack-more", count=count) for count in range(len(findings) + 1)],
        "kept": any(board.fixed for surface in plan.surfaces for board in surface.boards),
        "cautions": cautions,
        "structure": structure_cautions(plan, speaker),
        "rooms": room_pages(drawn),
        "boards": in_rows(board_blocks(drawn)),
        "tile": in_rows(tile_blocks(drawn)),
        "poles": tile_poles(drawn),
        "saw": saw_page(drawn),
        "falls": fall_pages(drawn),
        "water": water | {"columns": water_columns(water)},
        "tickets": tickets(drawn),
        "second": second_cuts(drawn),
        "slight": slight_tapers(drawn),
        "checks": board_checks(drawn),
        "findings": findings,
        "shopping": [_to_buy(speaker, quantity) for quantity in plan.quantities if quantity.buy],
    }


def _to_buy(speaker: Speaker, quantity: Quantity) -> list[str]:
    """What to buy, how many packs of what, and the need: rounded up in the reader's unit, so never short."""
    said = speaker.quantity(quantity)
    return [said.item, f"{quantity.buy}", said.pack, as_needed(said.exact), said.unit]


def _site(plan: Plan, speaker: Speaker) -> list[list[str]]:
    """For whom, where, by whom and when; what the job does not say is a blank to fill."""
    site = plan.job.site
    return [[label, getattr(site, name)] for name, label in speaker.labels("sitepack-site").items()]


def _finding(finding: SaidFinding) -> dict[str, Any]:
    """A finding as hands need it; the office pack has its rule and source too."""
    return {
        "code": finding.code,
        "severity": finding.severity.value,
        "where": finding.where,
        "message": finding.message,
        "measured": finding.measured,
        "remedy": finding.remedy,
        "structural": finding.code.startswith(JUDGED),
    }


def _figures(plan: Plan, speaker: Speaker) -> Iterator[tuple[str, str]]:
    for name, found in plan.counts.items():
        if found.used and any(bound.proven and bound.stocks == (name,) for bound in plan.bounds):
            known = "fewest"
        elif found.proven and found.used:
            known = "fewest_of_these"
        elif found.used:
            # Where stocks stand in for each other, each alone may need none: that says nothing.
            known = "at_least" if found.lower_bound else "used"
        else:
            continue
        figure = speaker.text("sitepack-sheets", known, used=found.used, least=found.lower_bound)
        yield speaker.text("sitepack-sheets", stock=name), figure
    reused = sum(sheet.source != "new" for sheet in plan.sheets)
    if reused:
        yield speaker.text("sitepack-reused"), str(reused)
    every = [board for surface in plan.surfaces for board in surface.boards]
    boards = [board for board in every if not board.fixed]
    if len(boards) < len(every):
        yield speaker.text("sitepack-up"), str(len(every) - len(boards))
    yield speaker.text("sitepack-boards"), str(len(boards))
    yield speaker.text("sitepack-cuts"), str(sum(len(sheet.cuts) for sheet in plan.sheets))
    yield speaker.text("sitepack-fasteners"), str(sum(len(board.fasteners) for board in boards))
    tiles = [tile for surface in plan.surfaces for tile in surface.tiles]
    if tiles:
        whole = sum(tile.whole for tile in tiles)
        found_tiles = speaker.text("sitepack-tiles", "found", whole=whole, cut=len(tiles) - whole)
        yield speaker.text("sitepack-tiles"), found_tiles
    for what in ("sheets", "tiles"):
        cost = plan.workings.get(f"cost-{what}@job")
        if cost is not None:
            said = speaker.working(cost)
            yield speaker.text("sitepack-cost", what=what), f"{said.result} {said.unit}"
