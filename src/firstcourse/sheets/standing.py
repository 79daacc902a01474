"""Boards that are up already: put on their surfaces, refused where they cannot stand, and named as before."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely
from shapely import Polygon

from firstcourse.boards import Planned, SurfaceLayout
from firstcourse.cutting import CutSheet
from firstcourse.errors import InputProblem, JobError
from firstcourse.geometry import bounds, clockwise
from firstcourse.job import BoardDone, Job, SurfaceDone
from firstcourse.plan import Board, Opening, Stock, Surface, opening_ring
from firstcourse.rules import RuleSet
from firstcourse.sheets.together import Surfaced
from firstcourse.units import TICKS_PER_MM

_SPECK = TICKS_PER_MM**2
"""Two boards that share no more than rounding do not lie over each other [ticks²]."""


def with_done(surfaces: Sequence[Surfaced], stock: Sequence[Stock], job: Job) -> tuple[Surfaced, ...]:
    """The surfaces with the boards that are up, and those planned before beside them.

    Args:
        surfaces: All surfaces of the job.
        stock: All sheets of the job.
        job: For what is done.

    Raises:
        JobError: A surface is named that the job does not board, or a board cannot stand where it is said to.
    """
    if job.done is None:
        return tuple(surfaces)
    by_id = {item.surface.id: item for item in surfaces}
    known = {item.id for item in stock}
    problems = []
    for number, part in enumerate(job.done.surfaces, start=1):
        place = f"done.surfaces[{number}]"
        item = by_id.get(part.surface)
        if item is None:
            problems.append(_problem(f"{place}.surface", f"'{part.surface}' is no surface that this job boards"))
            continue
        found = list(_wrong(part, item.surface, known))
        problems += [_problem(f"{place}.{field}", message) for field, message in found]
        if not found:
            by_id[part.surface] = _with_boards(item, part)
    if problems:
        raise JobError(tuple(problems))
    return tuple(by_id[item.surface.id] for item in surfaces)


def _problem(field: str, message: str) -> InputProblem:
    return InputProblem(file="job", line=0, column=0, field=field, message=message)


def _wrong(part: SurfaceDone, surface: Surface, stocks: set[str]) -> Iterator[tuple[str, str]]:
    """What is wrong with the boards of one surface: the field, and what to do."""
    outline = Polygon(surface.outline)
    before: list[tuple[BoardDone, Polygon]] = []
    for number, board in enumerate(part.boards, start=1):
        place = f"boards[{number}]"
        shape = Polygon(board.outline, board.holes)
        if not shape.is_valid:
            yield place, f"the outline of board {board.board} crosses itself; measure its corners again"
            continue
        if board.stock not in stocks:
            yield f"{place}.stock", f"'{board.stock}' is not one of the job's stocks: {', '.join(sorted(stocks))}"
        if not _is_up(board, part):
            continue
        if shape.difference(outline).area > _SPECK:
            yield (
                place,
                (f"board {board.board} is up and reaches out of {surface.id}; measure again where it stands"),
            )
        for opening in surface.openings:
            if shape.intersection(_open(opening)).area > _SPECK:
                yield (
                    place,
                    (
                        f"board {board.board} is up and lies over opening '{opening.id}'; enter the hole that is "
                        "cut in it, or measure one of the two again"
                    ),
                )
        for other, its in before:
            if shape.intersection(its).area > _SPECK:
                yield place, f"boards {other.board} and {board.board} are both up and lie over each other"
        before.append((board, shape))


def _open(opening: Opening) -> shapely.Geometry:
    if opening.centre is not None and opening.diameter is not None:
        return shapely.Point(opening.centre).buffer(opening.diameter / 2)
    return Polygon(opening_ring(opening))


def _is_up(board: BoardDone, part: SurfaceDone) -> bool:
    """Whether a board is up still: nothing was taken out where it stood."""
    shape = Polygon(board.outline)
    return board.up and not any(Polygon(out.outline).intersection(shape).area > _SPECK for out in part.taken_out)


def _with_boards(item: Surfaced, part: SurfaceDone) -> Surfaced:
    up: list[Planned] = []
    planned: list[Planned] = []
    for board in part.boards:
        is_up = _is_up(board, part)
        made = Board(
            id=f"{item.surface.id}#{board.board}",
            piece=f"P{board.mark}",
            outline=board.outline,
            holes=tuple(map(clockwise, board.holes)),
            fixed=is_up,
            mark=board.mark,
        )
        (up if is_up else planned).append(Planned(made, board.stock))
    surface = item.surface.model_copy(update={"boards": tuple(one.board for one in up)})
    return item._replace(surface=surface, up=tuple(up), planned=tuple(planned))


def named_as_before(
    surfaces: Sequence[Surfaced], layouts: Sequence[SurfaceLayout], sheets: Sequence[CutSheet], rules: RuleSet
) -> tuple[tuple[SurfaceLayout, ...], tuple[CutSheet, ...]]:
    """Boards that come out where one was planned have its number and mark; no other has a number used before.

    Args:
        surfaces: All surfaces, with what was planned and what is up.
        layouts: Theirs, in the same order.
        sheets: What their pieces are cut from.
        rules: For how much wider or less a gap at a wall may be than it was.
    """
    most = rules.ticks("boards.gap.perimeter.most") if any(item.planned for item in surfaces) else 0
    renamed = []
    pieces: dict[str, str] = {}
    for item, layout in zip(surfaces, layouts, strict=True):
        if not item.planned:
            renamed.append(layout)
            continue
        names = _names(item, layout, most)
        pieces |= {f"P{board.mark}": f"P{names[board.id].mark}" for board in layout.boards if not board.fixed}
        renamed.append(_named(layout, names))
    return tuple(renamed), tuple(
        replace(
            sheet,
            parts=tuple(
                replace(part, blank=pieces.get(part.blank, part.blank)) if part.blank is not None else part
                for part in sheet.parts
            ),
        )
        for sheet in sheets
    )


def _names(item: Surfaced, layout: SurfaceLayout, most: int) -> dict[str, Board]:
    """By the id that a board has now, a board with the id and mark that it is to have."""
    free = [one.board for one in item.planned]
    up = [one.board for one in item.up]
    last = max(int(board.id.rpartition("#")[2]) for board in (*free, *up))
    stem = Counter(board.mark.rpartition("-")[0] for board in (*free, *up)).most_common(1)[0][0] or item.mark
    names: dict[str, Board] = {}
    for near in (0, most):
        for board in layout.boards:
            if board.fixed or board.id in names:
                continue
            was = next((other for other in free if _same_place(board, other, near)), None)
            if was is not None:
                free.remove(was)
                names[board.id] = was
    for board in layout.boards:
        if not board.fixed and board.id not in names:
            last += 1
            names[board.id] = board.model_copy(
                update={"id": f"{item.surface.id}#{last}", "mark": f"{stem}-{last}"}
            )
    return names


def _same_place(one: Board, other: Board, near: int) -> bool:
    return all(abs(a - b) <= near for a, b in zip(bounds(one.outline), bounds(other.outline), strict=True))


def _named(layout: SurfaceLayout, names: dict[str, Board]) -> SurfaceLayout:
    boards = tuple(
        board
        if board.fixed
        else board.model_copy(
            update={
                "id": names[board.id].id,
                "mark": names[board.id].mark,
                "piece": f"P{names[board.id].mark}",
            }
        )
        for board in layout.boards
    )
    ids = {old: new.id for old, new in names.items()}
    return layout.model_copy(
        update={
            "boards": boards,
            "pieces": tuple(
                piece.model_copy(update={"id": f"P{names[piece.board].mark}", "board": names[piece.board].id})
                for piece in layout.pieces
            ),
            "findings": tuple(
                finding.model_copy(update={"at": tuple(ids.get(at, at) for at in finding.at)})
                for finding in layout.findings
            ),
        }
    )
