"""Seams moved where a cut would take off too little to be snapped: the sheets and the boards stay as many."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from firstcourse.boards import SurfaceLayout, build_layout, shifted
from firstcourse.cutting import CutLine, CutPart, CutSheet, CuttingPlan, StockSize, recut, thin_strips
from firstcourse.job import Job
from firstcourse.plan import Stock
from firstcourse.rules import RuleSet
from firstcourse.sheets.cut import blanks_of, cut_pieces, sizes_to_cut
from firstcourse.sheets.seams import demand
from firstcourse.sheets.together import Surfaced
from firstcourse.units import Tape, ceil_to

Weight = tuple[int, int, int]
"""Thin strips, cuts, and how far seams move [ticks]; less is better."""


@dataclass(frozen=True)
class _Given:
    surfaces: Mapping[str, Surfaced]
    stock: Sequence[Stock]
    sizes: Sequence[StockSize]
    rules: RuleSet
    tape: Tape
    least: int


@dataclass(frozen=True)
class _State:
    layouts: Mapping[str, SurfaceLayout]
    sheets: tuple[CutSheet, ...]


def seams_shifted(
    surfaces: Sequence[Surfaced],
    layouts: Sequence[SurfaceLayout],
    cutting: CuttingPlan,
    stock: Sequence[Stock],
    job: Job,
    rules: RuleSet,
    *,
    effort: int,
) -> tuple[tuple[SurfaceLayout, ...], CuttingPlan]:
    """Move seams by what a strip too thin to snap is wide, or by what is wanting to snap it.

    One strip after the other: of all moves that break no rule more than before and leave each piece on its sheet,
    the one is made that leaves the fewest thin strips, then the fewest cuts; none where that spares no strip.

    Args:
        surfaces: All surfaces.
        layouts: Theirs, in the same order.
        cutting: What their pieces are cut from.
        stock: All sheets of the job.
        job: For its tape and offcuts.
        rules: For `boards.cut.least`, and all that layouts keep.
        effort: Level 0 to 3; the sheets are bounded again where pieces changed.
    """
    least = rules.ticks("boards.cut.least")
    sizes = [replace(size, least_cut=least) for size in sizes_to_cut(stock, stock, job.tape)]
    given = _Given({item.surface.id: item for item in surfaces}, stock, sizes, rules, job.tape, least)
    begun = state = _State({layout.surface_id: layout for layout in layouts}, cutting.sheets)
    while (better := _better(state, given)) is not None:
        state = better
    if state is begun:
        return tuple(layouts), cutting
    done = tuple(state.layouts[item.surface.id] for item in surfaces)
    pieces, allowed = demand(surfaces, done)
    cut = cut_pieces(pieces, allowed, stock, job, effort=effort, known=state.sheets, least_cut=least)
    return done, cut


def _better(state: _State, given: _Given) -> _State | None:
    """The state with one strip less at least."""
    for number, sheet in enumerate(state.sheets):
        for cut in sheet.cuts:
            strip = thin_strip(sheet, cut, given.least)
            if strip is None:
                continue
            best: tuple[Weight, _State] | None = None
            for tried in _tries(state, number, cut, strip, given):
                if best is None or tried[0] < best[0]:
                    best = tried
            if best is not None:
                return best[1]
    return None


def thin_strip(sheet: CutSheet, cut: CutLine, least: int) -> CutPart | None:
    """What a cut takes off to the right or above, where that is left over and narrower than `least` [ticks]."""
    axis = 1 if cut.along == "x" else 0
    part = next((part for part in sheet.parts if part.name == cut.gives[1]), None)
    return part if part is not None and part.blank is None and part.size[axis] < least else None


def beside(sheet: CutSheet, cut: CutLine, strip: CutPart) -> list[CutPart]:
    """The parts that end at a cut, on the side that is used."""
    axis = 1 if cut.along == "x" else 0
    return [
        part
        for part in sheet.parts
        if part.name.startswith(cut.gives[0]) and part.at[axis] + part.size[axis] == strip.at[axis]
    ]


def _tries(
    state: _State, number: int, cut: CutLine, strip: CutPart, given: _Given
) -> Iterator[tuple[Weight, _State]]:
    axis = 1 if cut.along == "x" else 0
    wide, step = strip.size[axis], given.tape.graduation
    owner = {piece.id: layout.surface_id for layout in state.layouts.values() for piece in layout.pieces}
    for part in beside(state.sheets[number], cut, strip):
        if part.blank is None:
            continue
        layout = state.layouts[owner[part.blank]]
        for by in (wide, -ceil_to(given.least - wide, step)):
            for changed in _moved(layout, part.blank, axis ^ part.turned, by, given):
                tried = _recut(state, layout, changed, given)
                if tried is not None:
                    weight, sheets = tried
                    yield (
                        (*weight, abs(by)),
                        _State({**state.layouts, layout.surface_id: changed}, sheets),
                    )


def _moved(layout: SurfaceLayout, piece: str, axis: int, by: int, given: _Given) -> Iterator[SurfaceLayout]:
    """The layout with a piece longer by so much, where that breaks no more rules."""
    item, choice = given.surfaces[layout.surface_id], layout.choice
    if choice is None:
        return
    board = next(n for n, made in enumerate(layout.boards) if made.piece == piece)
    for other in shifted(item.surface, choice, board, axis, by, given.rules, given.tape.graduation):
        built = build_layout(item.surface, other, item.stock, given.rules, given.tape, mark=item.mark)
        if (
            [made.piece for made in built.boards] == [made.piece for made in layout.boards]
            and len(built.added_supports) <= len(layout.added_supports)
            and Counter(f.code for f in built.findings) <= Counter(f.code for f in layout.findings)
        ):
            yield built


def _recut(
    state: _State, old: SurfaceLayout, new: SurfaceLayout, given: _Given
) -> tuple[tuple[int, int], tuple[CutSheet, ...]] | None:
    """The sheets with changed pieces cut again, with thin strips and cuts; None where that spares no strip."""
    sizes = {piece.id: piece.blank for piece in old.pieces}
    changed = {piece.id for piece in new.pieces if piece.blank != sizes[piece.id]}
    touched = [
        number for number, sheet in enumerate(state.sheets) if any(part.blank in changed for part in sheet.parts)
    ]
    layouts = [new if layout is old else layout for layout in state.layouts.values()]
    pieces, allowed = demand([given.surfaces[layout.surface_id] for layout in layouts], layouts)
    blanks = {blank.id: blank for blank in blanks_of(pieces, allowed, given.stock)}
    sheets = list(state.sheets)
    before = sum(thin_strips(sheets[number], given.least) for number in touched)
    after = 0
    for number in touched:
        inside = [blanks[part.blank] for part in sheets[number].parts if part.blank is not None]
        again = recut(sheets[number], inside, given.sizes)
        if again is None:
            return None
        sheets[number] = again
        after += thin_strips(again, given.least)
    if after >= before:
        return None
    return (after - before, sum(len(sheet.cuts) for sheet in sheets)), tuple(sheets)
