"""Less or more gap than usual at a wall: only where it saves a cut too thin to snap, and told."""

from collections.abc import Iterator

from shapely import LineString

from firstcourse.geometry import axis_near, sides
from firstcourse.units import floor_to
from firstcourse.verify.structure import Board, Document, Sheet, Surface
from firstcourse.verify.told import at_least, at_most, mm, said, untrue
from firstcourse.verify.verdict import Objection

_SLACK = 2
"""Rounding of a side askew to the axes [ticks]."""


def check_kept_edges(plan: Document) -> Iterator[Objection]:
    """Object to a gap that is not the usual one and saves no cut too thin to snap, or is not told as it is."""
    yield from _cut_back(plan)
    usual, lowest = (plan.rules.ticks(f"boards.gap.perimeter{end}") for end in ("", ".least"))
    less = {
        (board.piece, axis)
        for surface in plan.surfaces
        for board in surface.boards
        if not board.fixed
        for axis, _ in _less_gaps(surface, board, usual)
    }
    uncut = {name: axes for sheet in plan.sheets for name, axes in _uncut(sheet, less).items()}
    needless = usual - plan.rules.ticks("boards.cut.least")
    step = plan.tape.graduation
    wanted = []
    for surface in plan.surfaces:
        for board in (board for board in surface.boards if not board.fixed):
            gaps = dict(_less_gaps(surface, board, usual))
            for axis, gap in gaps.items():
                if axis not in uncut.get(board.piece, ()) or gap <= needless:
                    yield Objection("VER-102", board.id, "has less gap than usual, and saves no thin cut by it")
            # What is less than usual by a part of a tape mark cannot be set, nor is it told.
            gap, as_usual = (_marked(each, step) for each in (min(gaps.values(), default=usual), usual))
            if gap < as_usual:
                wanted.append(
                    said(
                        "BRD-207",
                        "note",
                        board.id,
                        "cut_nothing",
                        rule="boards.gap.perimeter.least",
                        measured=mm(gap),
                        limit=at_least(lowest),
                        usual=mm(usual),
                    )
                )
    yield from untrue("VER-110", [one for one in plan.findings if one.code == "BRD-207"], wanted)


def _marked(length: int, step: int) -> int:
    """A length to the nearest tape mark [ticks]."""
    return floor_to(length + step // 2, step)


def _cut_back(plan: Document) -> Iterator[Objection]:
    """Boards told to end farther from a wall: by so much, and because the strip could not be snapped otherwise.

    Ground left open beside any other board is bare, see the checks of coverage.
    """
    usual, most = (plan.rules.ticks(f"boards.gap.perimeter{end}") for end in ("", ".most"))
    least, step = plan.rules.ticks("boards.cut.least"), plan.tape.graduation
    told = [one for one in plan.findings if one.code == "BRD-208"]
    named = {one.place for one in told}
    strips = {name: widths for sheet in plan.sheets for name, widths in _left_beside(sheet).items()}
    wanted = []
    for surface in plan.surfaces:
        for board in surface.boards:
            if board.id not in named or board.fixed:
                continue
            more = _more_gaps(surface, board, plan)
            widest = _marked(max((gap for gaps in more.values() for gap in gaps), default=0), step)
            wanted.append(
                said(
                    "BRD-208",
                    "note",
                    board.id,
                    "wider_gap",
                    rule="boards.gap.perimeter.most",
                    measured=mm(widest),
                    limit=at_most(most),
                    usual=mm(usual),
                )
            )
            for axis, gaps in more.items():
                strip = strips.get(board.piece, {}).get(axis)
                if strip is None or not least <= strip < least + sum(gap - usual for gap in gaps) + step:
                    yield Objection("VER-102", board.id, "has more gap than usual, and saves no thin cut by it")
    yield from untrue("VER-110", told, wanted)


def _more_gaps(surface: Surface, board: Board, plan: Document) -> dict[int, list[int]]:
    """By axis, 0 for u and 1 for v, the gaps at walls wider than usual by more than a tape mark [ticks]."""
    usual, most = (plan.rules.ticks(f"boards.gap.perimeter{end}") for end in ("", ".most"))
    found: dict[int, list[int]] = {}
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        along = axis_near(a, b)
        gap = int(LineString([a, b]).distance(board.shape))
        if kind == "perimeter" and along and usual + plan.tape.graduation < gap <= most + _SLACK:
            found.setdefault(0 if along == "v" else 1, []).append(gap)
    return found


def _left_beside(sheet: Sheet) -> dict[str, dict[int, int]]:
    """For each piece, by its own axis, how wide what is left over beyond the cut it ends at is [ticks]."""
    found: dict[str, dict[int, int]] = {}
    waste = {part.id: part for part in sheet.parts if part.piece is None}
    for cut in sheet.cuts:
        axis = 1 if cut.along == "x" else 0
        if (strip := waste.get(cut.gives[1])) is None:
            continue
        for part in sheet.parts:
            ends_there = part.at[axis] + part.size[axis] == strip.at[axis]
            if part.piece and part.id.startswith(cut.gives[0]) and ends_there:
                found.setdefault(part.piece, {})[axis ^ part.turned] = strip.size[axis]
    return found


def _less_gaps(surface: Surface, board: Board, usual: int) -> Iterator[tuple[int, int]]:
    """The axes along which a board is nearer to a wall than usual, 0 for u and 1 for v, and how near [ticks]."""
    least: dict[int, int] = {}
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        along = axis_near(a, b)
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
