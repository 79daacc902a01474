"""The printed site pack: cover, surfaces at a stated scale, cut tickets, what to buy, what to look at."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from firstcourse.documents.blocks import HIGH_MM, WIDE_MM, pages_of, words_height
from firstcourse.documents.board_checks import board_checks
from firstcourse.documents.board_pages import board_blocks
from firstcourse.documents.fall_pages import fall_pages
from firstcourse.documents.judgement_pages import JUDGED, structure_cautions
from firstcourse.documents.pages import PAGE_SIZES, Paper, compiled, marked
from firstcourse.documents.room_pages import room_pages
from firstcourse.documents.rule_pages import CAUTIONS
from firstcourse.documents.ticket_pages import second_cuts, slight_tapers, tickets
from firstcourse.documents.tile_pages import saw_page, tile_blocks, tile_poles
from firstcourse.documents.water_pages import water_pages
from firstcourse.plan import Plan, Quantity
from firstcourse.units import as_needed, one_or_more
from firstcourse.words import SaidFinding, Speaker, alike_together, speaker_for

_MARGINS_MM = ((22, 19), (20, 18), (18, 17), (16, 16))
"""Margins above, for the clip, and below, for cautions in the foot, that are tried in turn [mm]."""
_LEAST_END_MM = 60.0
"""What goes on over several pages ends no higher than this on its last one [mm]."""


def site_pack(plan: Plan, paper: Paper) -> bytes:
    """The site pack as a PDF.

    Args:
        plan: A verified plan.
        paper: Page size; drawings keep the scale they state on either.

    Raises:
        PaperError: A warning of the page maker, such as a missing letter in the face.
    """
    return print_pack(pack_data(plan), paper)


def print_pack(data: dict[str, Any], paper: Paper) -> bytes:
    """The site pack as a PDF, from what its pages print: to print it on several papers the drawings are made once.

    Args:
        data: As `pack_data` gives it.
        paper: Page size.

    Raises:
        PaperError: A warning of the page maker.
    """
    sources = ("pages.typ", "site_pack.typ")
    printed = {**data, "paper": PAGE_SIZES[paper]}
    # A last page with next to nothing on it is spared by narrower margins, where that takes it away.
    for top, bottom in _MARGINS_MM:
        printed |= {"top": top, "bottom": bottom}
        if all(end >= _LEAST_END_MM for end in marked(sources, printed, "end-of-flow")):
            break
    else:
        printed |= {"top": _MARGINS_MM[0][0], "bottom": _MARGINS_MM[0][1]}
    return compiled(sources, printed)


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
        "site": _site(plan),
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


_COVER_MM = 118.0
"""What a cover takes without cautions, figures and findings [mm]."""


def _fits_on_cover(findings: Sequence[Mapping[str, Any]], cautions: Sequence[str], figures: int) -> bool:
    """Whether all that was found has room on the cover; else what is only to know stands at the end."""
    told = [" ".join(f"{found[key]}" for key in ("where", "message", "measured", "remedy")) for found in findings]
    height = words_height(cautions, WIDE_MM - 6.0, 9.5, gap=1.0) + 5.5 * (figures + 1) // 2
    return _COVER_MM + height + words_height(told, WIDE_MM, 9.8, gap=2.5) <= HIGH_MM


def _data(plan: Plan, drawn: Plan, speaker: Speaker) -> dict[str, Any]:
    cautions = [rule.value for rule in plan.rules if rule.id.startswith(CAUTIONS)]
    # What stands among the cautions is not told again.
    found = [said for said in speaker.findings(plan.findings) if said.message not in cautions]
    findings = [_finding(finding) for finding in alike_together(found)]
    figures = [list(row) for row in _figures(plan)]
    return {
        "told-early": _fits_on_cover(findings, cautions, len(figures)),
        "pack": "site pack",
        "words": {"soft": "soft joint", "softs": "Soft joints"},
        "job": plan.job.name,
        "date": plan.job.date,
        "practice": plan.job.practice.upper(),
        "digest": plan.job.digest[:12],
        "figures": figures,
        "cautions": cautions,
        "structure": structure_cautions(plan),
        "rooms": room_pages(drawn),
        "boards": pages_of(board_blocks(drawn)),
        "tile": pages_of(tile_blocks(drawn)),
        "poles": tile_poles(drawn),
        "saw": saw_page(drawn),
        "falls": fall_pages(drawn),
        "water": water_pages(drawn),
        "tickets": tickets(drawn),
        "second": second_cuts(drawn),
        "slight": slight_tapers(drawn),
        "checks": board_checks(drawn),
        "findings": findings,
        "shopping": [_to_buy(speaker, quantity) for quantity in plan.quantities if quantity.buy],
    }


def _to_buy(speaker: Speaker, quantity: Quantity) -> list[str]:
    """What to buy, how many packs of what, and the need: rounded up in the reader's unit, so never short."""
    need, unit = speaker.amount(quantity.exact, quantity.unit)
    return [quantity.item, f"{quantity.buy}", quantity.pack, as_needed(need), one_or_more(need, unit)]


def _site(plan: Plan) -> list[list[str]]:
    """For whom, where, by whom and when; what the job does not say is a blank to fill."""
    site = plan.job.site
    return [
        ["Client", site.client],
        ["Setter", site.setter],
        ["Address", site.address],
        ["Starts", site.starts],
        ["Phone", site.phone],
        ["Ends", site.ends],
    ]


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


def _figures(plan: Plan) -> Iterator[tuple[str, str]]:
    for name, found in plan.counts.items():
        if found.used and any(bound.proven and bound.stocks == (name,) for bound in plan.bounds):
            yield f"sheets of {name}", f"{found.used} (no layout that keeps the rules takes fewer)"
        elif found.proven and found.used:
            yield f"sheets of {name}", f"{found.used} (these boards take no fewer; with other seams fewer may do)"
        elif found.used:
            # Where stocks stand in for each other, each alone may need none: that says nothing.
            least = f" (at least {found.lower_bound})" if found.lower_bound else ""
            yield f"sheets of {name}", f"{found.used}{least}"
    reused = sum(sheet.source != "new" for sheet in plan.sheets)
    if reused:
        yield "kept offcuts used up", str(reused)
    boards = [board for surface in plan.surfaces for board in surface.boards]
    yield "boards", str(len(boards))
    yield "cuts edge to edge", str(sum(len(sheet.cuts) for sheet in plan.sheets))
    yield "fasteners", str(sum(len(board.fasteners) for board in boards))
    tiles = [tile for surface in plan.surfaces for tile in surface.tiles]
    if tiles:
        whole = sum(tile.whole for tile in tiles)
        cut = len(tiles) - whole
        yield "tiles", f"{whole} whole, {cut} cut {one_or_more(cut, 'pieces')}"
    for what in ("sheets", "tiles"):
        cost = plan.workings.get(f"cost {what}")
        if cost is not None:
            yield f"cost of the {what}", f"{cost.result} {cost.unit}"
