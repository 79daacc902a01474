"""Where a cut would take off too little to be snapped, boards keep the sheet's edge and gaps at walls give way."""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from firstcourse.boards import SurfaceLayout, covered_area, narrowest_gap, nearest_mark, widened
from firstcourse.cutting import CutLine, CutPart, CutSheet
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds, moved
from firstcourse.plan import Board, Piece, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, ceil_to, format_length


class Kept(NamedTuple):
    """Layouts and sheets with the factory edges that gaps let boards keep."""

    layouts: tuple[SurfaceLayout, ...]
    sheets: tuple[CutSheet, ...]


def factory_edges_kept(
    surfaces: Sequence[Surface],
    layouts: Sequence[SurfaceLayout],
    sheets: Sequence[CutSheet],
    rules: RuleSet,
    tape: Tape,
) -> Kept:
    """Widen boards by the strips too thin to snap that cuts leave beside them, as far as the gaps at walls allow.

    A strip goes only where every board beside it takes it. The sheets, their number and all other cuts stay.

    Args:
        surfaces: All surfaces, with what stands in them.
        layouts: Theirs, in the same order.
        sheets: What their pieces are cut from.
        rules: For `boards.cut.least` and the gaps.
        tape: Tape whose graduation edges lie on.
    """
    held = {layout.surface_id: layout for layout in layouts}
    by_id = {surface.id: surface for surface in surfaces}
    owner = {piece.id: layout.surface_id for layout in layouts for piece in layout.pieces}
    least = rules.ticks("boards.cut.least")
    made = []
    for sheet in sheets:
        tried: set[tuple[int, int]] = set()
        while (
            cut := next((c for c in _thin(sheet, least) if _strip(sheet, c).at not in tried), None)
        ) is not None:
            strip = _strip(sheet, cut)
            tried.add(strip.at)
            changed = _taken_up(sheet, cut, by_id, held, owner, rules, tape)
            if changed is not None:
                held |= changed
                sheet = _without(sheet, cut)
        made.append(sheet)
    done = []
    for old in layouts:
        new = held[old.surface_id]
        if new is not old:
            told = _told(by_id[old.surface_id], old, new, rules, tape)
            new = new.model_copy(update={"findings": (*new.findings, *told)})
        done.append(new)
    return Kept(tuple(done), tuple(made))


def _strip(sheet: CutSheet, cut: CutLine) -> CutPart:
    return next(part for part in sheet.parts if part.name == cut.gives[1])


def _across(cut: CutLine) -> int:
    """The axis of the sheet that a cut divides."""
    return 1 if cut.along == "x" else 0


def _thin(sheet: CutSheet, least: int) -> list[CutLine]:
    """The cuts whose right or upper part is left over and narrower than `least` [ticks]."""
    left_over = {part.name: part.size for part in sheet.parts if part.blank is None}
    return [
        cut for cut in sheet.cuts if cut.gives[1] in left_over and left_over[cut.gives[1]][_across(cut)] < least
    ]


def _beside(sheet: CutSheet, cut: CutLine) -> list[CutPart]:
    """The parts that end at a cut, on the side that is used."""
    axis = _across(cut)
    line = _strip(sheet, cut).at[axis]
    return [
        part
        for part in sheet.parts
        if part.name.startswith(cut.gives[0]) and part.at[axis] + part.size[axis] == line
    ]


def _taken_up(
    sheet: CutSheet,
    cut: CutLine,
    surfaces: dict[str, Surface],
    layouts: dict[str, SurfaceLayout],
    owner: dict[str, str],
    rules: RuleSet,
    tape: Tape,
) -> dict[str, SurfaceLayout] | None:
    """The layouts with every board beside a strip wider by it, None where one cannot be."""
    axis = _across(cut)
    by = _strip(sheet, cut).size[axis]
    if by % tape.graduation:
        return None
    changed: dict[str, SurfaceLayout] = {}
    for part in _beside(sheet, cut):
        if part.blank is None:
            continue
        name = owner[part.blank]
        layout = _wider(
            surfaces[name], changed.get(name, layouts[name]), part.blank, axis ^ part.turned, by, rules, tape
        )
        if layout is None:
            return None
        changed[name] = layout
    return changed


def _wider(
    surface: Surface, layout: SurfaceLayout, piece_id: str, axis: int, by: int, rules: RuleSet, tape: Tape
) -> SurfaceLayout | None:
    number = next(n for n, board in enumerate(layout.boards) if board.piece == piece_id)
    old = layout.boards[number]
    if any(finding.where.endswith(f"board {old.mark}") for finding in layout.findings):
        # What is told of it was measured as it is.
        return None
    supports = (*surface.supports, *layout.added_supports)
    board = widened(surface, layout.boards, supports, number, axis, by, rules, tape.graduation)
    if board is None:
        return None
    boards = (*layout.boards[:number], board, *layout.boards[number + 1 :])
    pieces = tuple(_cut_as(board, piece, tape) if piece.id == piece_id else piece for piece in layout.pieces)
    key = f"boards {surface.id}"
    working = layout.workings[key].model_copy(update={"result": covered_area(boards, tape)})
    return layout.model_copy(
        update={"boards": boards, "pieces": pieces, "workings": {**layout.workings, key: working}}
    )


def _cut_as(board: Board, piece: Piece, tape: Tape) -> Piece:
    left, lower, right, upper = bounds(board.outline)
    return piece.model_copy(
        update={
            "blank": (ceil_to(right - left, tape.graduation), ceil_to(upper - lower, tape.graduation)),
            "outline": moved(board.outline, -left, -lower),
            "holes": tuple(moved(hole, -left, -lower) for hole in board.holes),
        }
    )


def _without(sheet: CutSheet, cut: CutLine) -> CutSheet:
    """The sheet without a cut, what lies beside its strip wider by it; parts are named by the cuts left."""
    axis, (kept, gone) = _across(cut), cut.gives
    by = _strip(sheet, cut).size[axis]
    wider = {part.name for part in _beside(sheet, cut)}

    def named(name: str) -> str:
        return cut.of + name[len(kept) :] if name.startswith(kept) else name

    def grown(size: tuple[int, int]) -> tuple[int, int]:
        return (size[0] + by, size[1]) if axis == 0 else (size[0], size[1] + by)

    return replace(
        sheet,
        cuts=tuple(
            replace(other, of=named(other.of), gives=(named(other.gives[0]), named(other.gives[1])))
            for other in sheet.cuts
            if other is not cut
        ),
        parts=tuple(
            replace(part, name=named(part.name), size=grown(part.size) if part.name in wider else part.size)
            for part in sheet.parts
            if part.name != gone
        ),
    )


def _told(surface: Surface, old: SurfaceLayout, new: SurfaceLayout, rules: RuleSet, tape: Tape) -> list[Finding]:
    """One finding for each board with less gap than usual, so that nobody cuts it back."""
    entry, usual = rules.entry("boards.gap.perimeter.least"), rules.ticks("boards.gap.perimeter")
    found = []
    for before, board in zip(old.boards, new.boards, strict=True):
        if board.outline == before.outline:
            continue
        gap = narrowest_gap(surface, board.outline, tape.graduation)
        if gap >= nearest_mark(usual, tape.graduation):
            continue
        found.append(
            Finding(
                code="BRD-207",
                severity=Severity.NOTE,
                where=f"{surface.title or surface.id}, board {board.mark}",
                message="A board keeps the sheet's edge, and has less gap at the wall than usual.",
                measured=format_length(gap, tape),
                limit=format_length(rules.ticks(entry.id), tape),
                rule=entry.id,
                source=entry.source,
                remedy=f"Set it with this gap in place of {format_length(usual, tape)}; cut nothing off.",
            )
        )
    return found
