"""Less gap than usual at a wall: only where it keeps a sheet's edge that no cut could take off, and told."""

from collections.abc import Iterator

from shapely import LineString

from firstcourse.geometry import axis_of
from firstcourse.geometry.polygon import sides
from firstcourse.units import floor_to, format_length
from firstcourse.verify.structure import Board, Document, Sheet, Surface
from firstcourse.verify.verdict import Objection

_SLACK = 1
"""Rounding of a side along an axis [ticks]."""


def check_kept_edges(plan: Document) -> Iterator[Objection]:
    """Object to a gap below the usual one that saves no cut too thin to snap, and to one that is not told."""
    usual = plan.rules.ticks("boards.gap.perimeter")
    told = {said.where: said.measured for said in plan.findings if said.code == "BRD-207"}
    less = {
        (board.piece, axis)
        for surface in plan.surfaces
        for board in surface.boards
        for axis, _ in _less_gaps(surface, board, usual)
    }
    uncut = {name: axes for sheet in plan.sheets for name, axes in _uncut(sheet, less).items()}
    needless = usual - plan.rules.ticks("boards.cut.least")
    step = plan.tape.graduation
    for surface in plan.surfaces:
        for board in surface.boards:
            gaps = dict(_less_gaps(surface, board, usual))
            where = f"{surface.title or surface.id}, board {board.mark}"
            said = told.pop(where, "")
            for axis, gap in gaps.items():
                if axis not in uncut.get(board.piece, ()) or gap <= needless:
                    yield Objection("VER-102", board.id, "has less gap than usual, and saves no thin cut by it")
            # What is less than usual by a part of a tape mark cannot be set, nor is it told.
            marked, as_usual = (
                floor_to(gap + step // 2, step) for gap in (min(gaps.values(), default=usual), usual)
            )
            shown = format_length(marked, plan.tape) if marked < as_usual else ""
            if said != shown:
                yield Objection(
                    "VER-110", board.id, f"is told to have {said or 'the usual'} gap, not {shown or 'the usual'}"
                )
    for where in sorted(told):
        yield Objection("VER-110", where, "is said to have less gap than usual, and is no board")


def _less_gaps(surface: Surface, board: Board, usual: int) -> Iterator[tuple[int, int]]:
    """The axes along which a board is nearer to a wall than usual, 0 for u and 1 for v, and how near [ticks]."""
    least: dict[int, int] = {}
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        along = axis_of(a, b)
        if kind != "perimeter" or not along:
            continue
        gap = int(LineString([a, b]).distance(board.shape))
        if gap < usual - _SLACK:
            axis = 0 if along == "v" else 1
            least[axis] = min(gap, least.get(axis, gap))
    yield from least.items()


def _uncut(sheet: Sheet, less: set[tuple[str, int]]) -> dict[str, tuple[int, ...]]:
    """For each piece the axes along which it cannot be cut smaller but by a cut of its own beside others.

    That is where nothing is left over beyond the nearest cut, or a piece with its usual gaps ends at that cut too.
    """
    parent = {name: cut for cut in sheet.cuts for name in cut.gives}
    left_over = {part.id for part in sheet.parts if part.piece is None}
    found = {}
    for part in sheet.parts:
        if part.piece is None:
            continue
        axes = []
        for axis in (0, 1):
            name, cut = part.id, parent.get(part.id)
            while cut is not None and (cut.along == "x") != (axis == 1):
                name, cut = cut.of, parent.get(cut.of)
            held = {
                other.piece
                for other in sheet.parts
                if other.piece
                and other.id.startswith(name)
                and other.at[axis] + other.size[axis] == part.at[axis] + part.size[axis]
                and (other.piece, axis ^ other.turned) not in less
            }
            if cut is None or held or not left_over & {other for other in cut.gives if other != name}:
                axes.append(axis ^ part.turned)
        found[part.piece] = tuple(axes)
    return found
