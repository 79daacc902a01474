"""Between boards and cutting: pieces as blanks, stocks as sizes, and the cuts back as the plan's sheets."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from firstcourse.cutting import Blank, CutPart, CutSheet, CuttingPlan, KeptSize, StockSize, cut, quick_cut
from firstcourse.geometry import bounds
from firstcourse.job import BOOK_STOCK, Job
from firstcourse.plan import Board, Count, Cut, Part, Piece, Sheet, Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, ceil_to, floor_to, parse_length, to_mm
from firstcourse.values import Word, currency_of, money
from firstcourse.workings import Working

_CENTS = 100


def job_stock(job: Job, rules: RuleSet) -> dict[SurfaceKind, tuple[Stock, ...]]:
    """The sheets each kind of surface may be boarded with; the rule book's where the job names none."""
    if job.stock:
        listed = [
            (
                Stock(
                    id=item.id,
                    size=item.size,
                    thickness=item.thickness,
                    kind=item.kind,
                    price=item.price,
                    density_kg_m3=item.density_kg_m3,
                ),
                item.used_for,
            )
            for item in job.stock
        ]
    else:
        width, length = (parse_length(side) for side in rules.text("boards.sheet.sizes").split("x"))
        listed = [
            (
                Stock(
                    id=name,
                    size=(width, length),
                    thickness=rules.ticks(f"boards.sheet.thickness_{use[0].value}"),
                    kind="fibre_cement",
                ),
                use,
            )
            for name, use in zip(
                BOOK_STOCK, ((SurfaceKind.FLOOR,), (SurfaceKind.WALL, SurfaceKind.CEILING)), strict=True
            )
        ]
    return {kind: tuple(item for item, use in listed if not use or kind in use) for kind in SurfaceKind}


def allowed_stock(surface: Surface, stock: Mapping[SurfaceKind, tuple[Stock, ...]]) -> tuple[Stock, ...]:
    """The sheets one surface may be boarded with; none on a slab that is tiled as it is."""
    if surface.slab == "tiled":
        return ()
    usable = stock[surface.kind]
    return tuple(s for s in usable if not surface.board_stock or s.id in surface.board_stock)


def cut_pieces(
    pieces: Sequence[Piece],
    allowed: Mapping[str, tuple[Stock, ...]],
    stock: Sequence[Stock],
    job: Job,
    *,
    effort: int,
    known: Sequence[CutSheet] = (),
    prove: bool = True,
    limit: int | None = None,
    least_cut: int = 0,
) -> CuttingPlan:
    """Cut pieces from the sheets of their own thickness and family that they may be of.

    Args:
        pieces: What the boards are cut as.
        allowed: By piece id, the sheets its surface may be boarded with.
        stock: All sheets of the job.
        job: For kept offcuts.
        effort: Level 0 to 3.
        known: Sheets that all pieces were cut from before; the plan is no worse.
        prove: Whether all patterns are weighed for the bound; the sheets are the same.
        limit: What the sheets may cost where none are known.
        least_cut: What a cut should take off, see `boards.cut.least` [ticks].

    Raises:
        CannotCutError: A piece fits none of its sheets, or all cost more than `limit`.
    """
    used = _used(allowed, stock)
    return cut(
        blanks_of(pieces, allowed, stock),
        [replace(size, least_cut=least_cut) for size in sizes_to_cut(used, stock, job.tape)],
        kept_to_cut(used, job),
        effort=effort,
        known=known,
        prove=prove,
        limit=limit,
    )


def bounded_again(
    cutting: CuttingPlan,
    pieces: Sequence[Piece],
    allowed: Mapping[str, tuple[Stock, ...]],
    stock: Sequence[Stock],
    job: Job,
    *,
    effort: int,
) -> CuttingPlan:
    """The same number of sheets, bounded for pieces cut smaller since; arguments as for `cut_pieces`."""
    now = cut_pieces(pieces, allowed, stock, job, effort=effort, known=cutting.sheets)
    return replace(
        cutting,
        counts={
            name: replace(found, bound=min(found.bound, now.counts[name].bound, key=lambda bound: bound.value))
            for name, found in cutting.counts.items()
        },
        cost_bound=min(cutting.cost_bound, now.cost_bound, key=lambda bound: bound.value),
    )


def about_cut(
    pieces: Sequence[Piece], allowed: Mapping[str, tuple[Stock, ...]], stock: Sequence[Stock], job: Job
) -> tuple[int, int]:
    """Cost and cuts that pieces take at the most, found in little time; arguments as for `cut_pieces`.

    Raises:
        CannotCutError: A piece fits none of its sheets.
    """
    used = _used(allowed, stock)
    return quick_cut(
        blanks_of(pieces, allowed, stock), sizes_to_cut(used, stock, job.tape), kept_to_cut(used, job)
    )


def _used(allowed: Mapping[str, tuple[Stock, ...]], stock: Sequence[Stock]) -> list[Stock]:
    return [item for item in stock if any(item in options for options in allowed.values())]


def blanks_of(
    pieces: Sequence[Piece], allowed: Mapping[str, tuple[Stock, ...]], stock: Sequence[Stock]
) -> list[Blank]:
    """Pieces as the cutting knows them; arguments as for `cut_pieces`."""
    by_id = {item.id: item for item in stock}
    return [
        Blank(piece.id, *piece.blank, _alike(piece, by_id[piece.stock], allowed[piece.id])) for piece in pieces
    ]


def stock_sizes(used: Sequence[Stock], stock: Sequence[Stock]) -> list[StockSize]:
    """Some sheets of the job at their cost; where any of the job's has no price, they are weighed by area."""
    priced = all(item.price for item in stock)
    return [StockSize(item.id, *item.size, _cost(item, priced=priced)) for item in used]


def sizes_to_cut(used: Sequence[Stock], stock: Sequence[Stock], tape: Tape) -> list[StockSize]:
    """The same in whole tape marks: what a sheet has beyond its last mark is never cut off."""
    return [
        replace(size, w=floor_to(size.w, tape.graduation), h=floor_to(size.h, tape.graduation))
        for size in stock_sizes(used, stock)
    ]


def kept_to_cut(used: Sequence[Stock], job: Job) -> list[KeptSize]:
    """The job's offcuts of some sheets in whole tape marks."""
    step = job.tape.graduation
    return [replace(size, w=floor_to(size.w, step), h=floor_to(size.h, step)) for size in kept_sizes(used, job)]


def kept_sizes(used: Sequence[Stock], job: Job) -> list[KeptSize]:
    """The job's offcuts of some sheets."""
    ids = {item.id for item in used}
    return [KeptSize(offcut.id, offcut.stock, *offcut.size) for offcut in job.offcuts if offcut.stock in ids]


def _alike(piece: Piece, own: Stock, options: tuple[Stock, ...]) -> tuple[str, ...]:
    width, height = piece.blank
    return tuple(
        item.id
        for item in options
        if (item.thickness, item.kind) == (own.thickness, own.kind)
        and min(width, height) <= min(item.size)
        and max(width, height) <= max(item.size)
    )


def _cost(item: Stock, *, priced: bool) -> int:
    # Where a price is missing, sheets are weighed by their area.
    if priced and item.price:
        return max(1, round(item.price * _CENTS))
    return max(1, round(to_mm(item.size[0]) * to_mm(item.size[1]) / 100))


def plan_sheets(sheets: Sequence[CutSheet], stock: Sequence[Stock], job: Job, rules: RuleSet) -> tuple[Sheet, ...]:
    """The cuts as the plan's sheets, of their own sizes.

    What lies at a sheet's right or upper edge keeps what is there beyond the last tape mark. What is left over is
    kept where both sides reach `choice.offcut.least_side`.
    """
    whole: dict[tuple[str, str | None], tuple[int, int]] = {(item.id, None): item.size for item in stock}
    whole |= {(offcut.stock, offcut.id): offcut.size for offcut in job.offcuts}
    least = rules.ticks("choice.offcut.least_side")
    return tuple(
        _sheet(f"S{number}", sheet, whole[sheet.stock, sheet.kept], least)
        for number, sheet in enumerate(sheets, start=1)
    )


def _sheet(name: str, sheet: CutSheet, whole: tuple[int, int], least: int) -> Sheet:
    def size(part: CutPart) -> tuple[int, int]:
        right, upper = (at + side for at, side in zip(part.at, part.size, strict=True))
        return (
            (whole[0] if right == sheet.w else right) - part.at[0],
            (whole[1] if upper == sheet.h else upper) - part.at[1],
        )

    return Sheet(
        id=name,
        stock=sheet.stock,
        size=whole,
        source=f"offcut:{sheet.kept}" if sheet.kept else "new",
        cuts=tuple(
            Cut(of=name + c.of, along=c.along, at=c.at, gives=(name + c.gives[0], name + c.gives[1]))
            for c in sheet.cuts
        ),
        parts=tuple(
            Part(
                id=name + part.name,
                at=part.at,
                size=size(part),
                piece=part.blank,
                turned=part.turned,
                keep=part.blank is None and min(size(part)) >= least,
            )
            for part in sheet.parts
        ),
    )


def with_factory_edges(board: Board, sheet: Sheet, part: Part, graduation: int) -> Board:
    """The board with its uncut edges marked; an offcut's edges are not known to be a factory's.

    An edge less than a tape mark from the sheet's is the sheet's: nothing is cut there.
    """
    if sheet.source != "new":
        return board
    left, lower, _, upper = bounds(board.outline)
    high = ceil_to(upper - lower, graduation)
    edges = []
    count = len(board.outline)

    def at_edge(place: int, axis: int) -> bool:
        ends_here = part.at[axis] + part.size[axis] == sheet.size[axis]
        return place == 0 or (ends_here and place > sheet.size[axis] - graduation)

    for index in range(count):
        ends = []
        for u, v in (board.outline[index], board.outline[(index + 1) % count]):
            x, y = u - left, v - lower
            # Turned, the blank's width runs up the sheet: a quarter turn to the left keeps the face up.
            spot = (high - y, x) if part.turned else (x, y)
            ends.append((part.at[0] + spot[0], part.at[1] + spot[1]))
        (ax, ay), (bx, by) = ends
        if (ax == bx and at_edge(ax, 0)) or (ay == by and at_edge(ay, 1)):
            edges.append(index)
    return board.model_copy(update={"factory_edges": tuple(edges)})


def sheet_counts(
    cutting: CuttingPlan, stock: Sequence[Stock], job: Job
) -> tuple[dict[str, Count], tuple[Working, ...]]:
    """Sheets used beside their bound, with what proves it; and their cost, where every sheet has a price."""
    counts, workings = {}, []
    for name, found in cutting.counts.items():
        counts[name] = Count(used=found.used, lower_bound=found.bound.value, proven=found.proven)
        workings.append(
            Working(
                formula="bounds-sheets",
                at=(f"stock/{name}",),
                inputs={"used": found.used, "proof": Word(word=found.bound.proof)},
                result=found.bound.value,
            )
        )
    if stock and all(item.price for item in stock):
        workings.append(
            Working(
                formula="bounds-cost",
                at=("job",),
                inputs={
                    "cost": money(cutting.cost / _CENTS),
                    "proof": Word(word=cutting.cost_bound.proof),
                    "currency": currency_of(job.currency),
                },
                result=money(cutting.cost_bound.value / _CENTS),
            )
        )
    return counts, tuple(workings)
