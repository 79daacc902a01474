"""The printed site pack: cover, surfaces at a stated scale, cut tickets, what to buy, what to look at."""

from collections.abc import Iterator
from typing import Any

from firstcourse.documents.board_checks import board_checks
from firstcourse.documents.fall_pages import fall_pages
from firstcourse.documents.judgement_pages import JUDGED, structure_cautions
from firstcourse.documents.pages import PAGE_SIZES, Paper, compiled
from firstcourse.documents.room_pages import room_pages
from firstcourse.documents.rule_pages import CAUTIONS
from firstcourse.documents.tile_pages import tile_pages
from firstcourse.documents.water_pages import water_pages
from firstcourse.drawings import (
    Drawing,
    draw_heights,
    draw_piece,
    draw_sheet,
    draw_surface,
    has_second_cuts,
    to_svg,
)
from firstcourse.drawings.svg import svg_size
from firstcourse.findings import Finding, alike_together
from firstcourse.geometry import bounds
from firstcourse.plan import Plan, Sheet, Surface, SurfaceKind
from firstcourse.units import as_needed, format_length, one_or_more


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
    return compiled(("pages.typ", "site_pack.typ"), {**data, "paper": PAGE_SIZES[paper]})


def pack_data(plan: Plan) -> dict[str, Any]:
    """All that the pages print, as plain values; the same on every paper."""
    return {
        "pack": "site pack",
        "job": plan.job.name,
        "date": plan.job.date,
        "practice": plan.job.practice.upper(),
        "digest": plan.job.digest[:12],
        "site": _site(plan),
        "figures": [list(row) for row in _figures(plan)],
        "cautions": [rule.value for rule in plan.rules if rule.id.startswith(CAUTIONS)],
        "structure": structure_cautions(plan),
        "stops": [
            [f"{found.where}: {found.message}", found.code.startswith(JUDGED)]
            for found in plan.findings
            if found.severity == "stop"
        ],
        "rooms": room_pages(plan),
        # Of a slab that is tiled as it is there is nothing to show but its tile.
        "surfaces": [
            _surface(plan, surface)
            for surface in plan.surfaces
            if surface.boarded and (surface.boards or not surface.tiles)
        ],
        "heights": [_heights(plan, surface) for surface in plan.surfaces if surface.heights],
        "tiled": tile_pages(plan),
        "falls": fall_pages(plan),
        "water": water_pages(plan),
        "tickets": [_ticket(plan, sheet) for sheet in plan.sheets],
        "second": [
            {"id": piece.id.removeprefix("P"), **_image(draw_piece(plan, piece))}
            for piece in plan.pieces
            if has_second_cuts(piece)
        ],
        "checks": board_checks(plan),
        "findings": [_finding(finding) for finding in alike_together(plan.findings)],
        "shopping": [
            [q.item, f"{q.buy}", q.pack, as_needed(q.exact), one_or_more(q.exact, q.unit)]
            for q in plan.quantities
            if q.buy
        ],
    }


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


def _finding(finding: Finding) -> dict[str, Any]:
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
            yield f"sheets of {name}", f"{found.used} (no layout takes fewer)"
        elif found.proven and found.used:
            yield f"sheets of {name}", f"{found.used} (the fewest for these seams)"
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


def _image(drawing: Drawing) -> dict[str, Any]:
    return {"svg": to_svg(drawing), "width_mm": svg_size(drawing)[0], "scale": f"1:{drawing.scale}"}


_DRAWING_MM = (182.0, 222.0)
"""Width and height of a page that a surface's drawing may take beside its heading; its table's rows come off."""
_ROW_MM = 6.4
_LEAST_MM = 160.0


def _surface(plan: Plan, surface: Surface) -> dict[str, Any]:
    left, lower, _, _ = bounds(surface.extent or surface.outline)
    tape = plan.job.tape
    stocks = {piece.id: piece.stock for piece in plan.pieces}
    rows = []
    for board in surface.boards:
        u0, v0, u1, v1 = bounds(board.outline)
        rows.append(
            [
                board.mark,
                f"{format_length(u1 - u0, tape)} × {format_length(v1 - v0, tape)}",
                format_length(u0 - left, tape),
                format_length(v0 - lower, tape),
                str(len(board.fasteners)),
                stocks[board.piece],
            ]
        )
    return {
        "title": surface.title or surface.id,
        "up": "from the foot" if surface.kind is SurfaceKind.WALL else "from the lower edge",
        "rows": rows,
        # As large as the page allows with the table below it; a long table goes on overleaf.
        **_image(
            draw_surface(
                plan, surface, room=(_DRAWING_MM[0], max(_LEAST_MM, _DRAWING_MM[1] - _ROW_MM * (len(rows) + 1)))
            )
        ),
    }


def _heights(plan: Plan, surface: Surface) -> dict[str, Any]:
    return {
        "title": f"{surface.title or surface.id}: highs and lows",
        **_image(draw_heights(plan, surface, room=(182.0, 200.0))),
    }


def _ticket(plan: Plan, sheet: Sheet) -> dict[str, Any]:
    tape = plan.job.tape
    cuts = [
        f"({number}) part {cut.of}: {format_length(cut.at, tape, feet=False)} from its "
        f"{'lower' if cut.along == 'x' else 'left'} edge"
        for number, cut in enumerate(sheet.cuts, start=1)
    ]
    pieces = {piece.id: piece for piece in plan.pieces}
    second = []
    for part in sheet.parts:
        piece = pieces.get(part.piece or "")
        if piece is not None and has_second_cuts(piece):
            second.append(f"{piece.id.removeprefix('P')}: then its second cuts, see its drawing")
        if part.keep:
            size = " × ".join(format_length(side, tape, feet=False) for side in part.size)
            second.append(f"keep {part.id}, {size}: label it")
    source = "new sheet" if sheet.source == "new" else f"kept offcut {sheet.source.removeprefix('offcut:')}"
    size = " × ".join(format_length(side, tape, feet=False) for side in sheet.size)
    return {
        "id": sheet.id,
        "source": f"{source}, {sheet.stock}, {size}",
        "cuts": cuts,
        "second": second,
        **_image(draw_sheet(plan, sheet)),
    }
