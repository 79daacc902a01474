"""Write into a job what is done of a plan: boards that are up, pieces that are cut, what is left of sheets."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from firstcourse.errors import InputValueError
from firstcourse.geometry import bounds, rectangle
from firstcourse.job import FieldValue, Job, edited_text, exact_length, with_block, without_item
from firstcourse.plan import Board, Plan, Sheet

MOST_KEPT = 50
"""Rests of sheets that are written at most, the largest first: so many can be weighed when it is planned again."""


class Rest(NamedTuple):
    """What is left of a sheet: its part's name or the board it was cut for, its stock, and its size [ticks]."""

    name: str
    stock: str
    size: tuple[int, int]


def marked_done(
    text: str,
    job: Job,
    plan: Plan,
    *,
    boards: Iterable[str],
    cut: Iterable[str] = (),
    taken_out: Iterable[str] = (),
    first_courses: Mapping[str, int] | None = None,
) -> str:
    """The document with what is done of a plan, comments kept.

    A board that is up keeps its place. A sheet that one was cut from is cut up: what is left beside the cuts that
    its piece asked for stands under `offcuts`, and so does a piece that is cut and not up, as `W1-6 cut`. All
    other boards are written down where they are planned, so that the next plan leaves them there.

    Args:
        text: The document.
        job: What it says.
        plan: A plan of it.
        boards: Ids or marks of boards that are up; those that were up in the plan are still.
        cut: Ids or marks of boards whose pieces are cut and not up.
        taken_out: Ids or marks of boards that were up and had to come out again.
        first_courses: By surface id, the height at which its first course stands, above the floor [ticks].

    Raises:
        InputValueError: A board or a surface is named that the plan does not have, or one is both up and not.
        JobError: The document cannot be changed.
    """
    named = _Named(plan)
    up, out, pieces = (named.ids(some) for some in (boards, taken_out, cut))
    for one, other, what in ((up, out, "up and taken out"), (up, pieces, "up and only cut")):
        if both := sorted(one & other):
            raise InputValueError(f"board {both[0]} is said to be {what}; say one of the two")
    standing = {board.id for board in named.boards.values() if board.fixed}
    if wrong := sorted(out - standing - up):
        raise InputValueError(f"board {wrong[0]} is said to be taken out, and was not up")
    new = up - standing
    rests, used, opened = _left(plan, new, pieces)
    text = _with_done(text, job, plan, (standing | up) - out, opened)
    text = _with_rests(text, job, rests, used)
    for surface, height in (first_courses or {}).items():
        text = _with_start(text, job, plan, surface, height)
    return text


class _Named:
    """The boards of a plan by id and by mark."""

    def __init__(self, plan: Plan) -> None:
        self.boards = {board.id: board for surface in plan.surfaces for board in surface.boards}
        self._by_mark: dict[str, list[str]] = {}
        for board in self.boards.values():
            self._by_mark.setdefault(board.mark, []).append(board.id)

    def ids(self, names: Iterable[str]) -> set[str]:
        """The ids of boards named by id or mark."""
        found = set()
        for name in names:
            ids = [name] if name in self.boards else self._by_mark.get(name, [])
            if len(ids) != 1:
                known = ", ".join(sorted(self._by_mark)[:12])
                said = (
                    f"names {len(ids)} boards; give its id" if ids else f"is no board of this plan; it has {known}"
                )
                raise InputValueError(f"'{name}' {said}")
            found.add(ids[0])
        return found


def _left(plan: Plan, up: set[str], cut: set[str]) -> tuple[list[Rest], set[str], Counter[str]]:
    """What is left of sheets that are cut up, the kept offcuts among them, and how many new ones there are."""
    piece_of = {piece.board: piece for piece in plan.pieces}
    gone = {piece_of[name].id for name in up if name in piece_of}
    made = {piece_of[name].id for name in cut if name in piece_of}
    rests: list[Rest] = []
    used: set[str] = set()
    opened: Counter[str] = Counter()
    for sheet in plan.sheets:
        inside = {part.piece for part in sheet.parts}
        if not inside & (gone | made):
            continue
        if sheet.source == "new":
            opened[sheet.stock] += 1
        else:
            used.add(sheet.source.removeprefix("offcut:"))
        rests += _rests(sheet, gone, made)
    return rests, used, opened


def _rests(sheet: Sheet, gone: set[str], made: set[str]) -> list[Rest]:
    """The largest parts of a sheet that hold no piece that is gone or cut, and the pieces that are cut."""
    sizes = {sheet.id: sheet.size}
    gives: dict[str, tuple[str, str]] = {}
    for line in sheet.cuts:
        wide, high = sizes[line.of]
        gives[line.of] = line.gives
        near, far = line.gives
        across = line.along == "x"
        sizes[near] = (wide, line.at) if across else (line.at, high)
        sizes[far] = (wide, high - line.at) if across else (wide - line.at, high)
    pieces = {part.id: part.piece for part in sheet.parts if part.piece is not None}
    keep = {part.id for part in sheet.parts if part.keep}

    def inside(name: str) -> set[str]:
        return {name} | (set().union(*map(inside, gives[name])) if name in gives else set())

    def walk(name: str) -> list[Rest]:
        held = {pieces[part] for part in inside(name) if part in pieces}
        if not held & (gone | made):
            return [Rest(name, sheet.stock, sizes[name])] if held or inside(name) & keep else []
        if name not in gives:
            # Whoever finds it on the rack must know what it was cut as: it may be notched.
            return [Rest(f"{pieces[name].removeprefix('P')} cut", sheet.stock, sizes[name])] if held & made else []
        return [rest for part in gives[name] for rest in walk(part)]

    return walk(sheet.id)


def _with_done(text: str, job: Job, plan: Plan, up: set[str], opened: Counter[str]) -> str:
    before = {} if job.done is None else dict(job.done.sheets)
    sheets = {name: before.get(name, 0) + opened[name] for name in dict.fromkeys((*before, *opened))}
    stock = {piece.board: piece.stock for piece in plan.pieces}
    surfaces: list[FieldValue] = []
    lines = [f"  sheets: {{{', '.join(f'{_text(name)}: {number}' for name, number in sheets.items())}}}"]
    lines.append("  surfaces:")
    for surface in plan.surfaces:
        if not surface.boards:
            continue
        rows = [_row(board, stock[board.id], board.id in up, job) for board in _in_order(surface.boards)]
        surfaces.append({"surface": surface.id, "boards": rows})
        lines += [f"    - surface: {_text(surface.id)}", "      boards:"]
        lines += [
            f"        - {{{', '.join(f'{key}: {_flow(value)}' for key, value in row.items())}}}" for row in rows
        ]
    return with_block(text, "done", {"sheets": dict(sheets), "surfaces": surfaces}, lines)


def _in_order(boards: Sequence[Board]) -> list[Board]:
    return sorted(boards, key=lambda board: int(board.id.rpartition("#")[2]))


def _row(board: Board, stock: str, up: bool, job: Job) -> dict[str, FieldValue]:
    def said(ticks: int) -> str:
        return exact_length(ticks, job.tape)

    row: dict[str, FieldValue] = {
        "board": int(board.id.rpartition("#")[2]),
        "mark": board.mark,
        "stock": stock,
        "up": up,
    }
    left, lower, right, upper = bounds(board.outline)
    if board.outline == rectangle(left, lower, right, upper):
        row |= {
            "left": said(left),
            "bottom": said(lower),
            "width": said(right - left),
            "height": said(upper - lower),
        }
    else:
        row["points"] = [[said(u), said(v)] for u, v in board.outline]
    if board.holes:
        row["holes"] = [[[said(u), said(v)] for u, v in hole] for hole in board.holes]
    return row


def _text(text: str) -> str:
    # A colon or a hyphen in a name is harmless within quotes.
    return f'"{text}"'


def _flow(value: FieldValue) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value if value.endswith((" in", " mm")) else _text(value)
    if isinstance(value, Sequence):
        return f"[{', '.join(map(_flow, value))}]"
    return str(value)


def _with_rests(text: str, job: Job, rests: Sequence[Rest], used: set[str]) -> str:
    there = [offcut.id for offcut in job.offcuts]
    for number in reversed([n for n, name in enumerate(there) if name in used]):
        text = without_item(text, "offcuts", number)
        del there[number]
    room = max(0, MOST_KEPT - len(there))
    largest = sorted(rests, key=lambda rest: -rest.size[0] * rest.size[1])[:room]
    for rest in (rest for rest in rests if rest in largest):
        name, number = rest.name, 1
        while name in there or name in used:
            number += 1
            name = f"{rest.name} {number}"
        size: list[FieldValue] = [exact_length(side, job.tape) for side in rest.size]
        item: dict[str, FieldValue] = {"id": name, "stock": rest.stock, "size": size}
        if not there and not job.offcuts and not text_has_offcuts(text):
            text = edited_text(text, "offcuts", [item])
        else:
            text = edited_text(text, f"offcuts[{len(there) + 1}]", item)
        there.append(name)
    return text


def text_has_offcuts(text: str) -> bool:
    """Whether a list of offcuts stands in the document, if only an empty one."""
    return any(line.startswith("offcuts:") for line in text.splitlines())


def _with_start(text: str, job: Job, plan: Plan, surface: str, height: int) -> str:
    """The document with a wall's tile started where its first course stands."""
    found = next((one for one in plan.surfaces if one.id == surface and one.tiled), None)
    if found is None or not found.tiled[0].starts:
        raise InputValueError(f"'{surface}' is no tiled surface of this plan")
    for r, room in enumerate(job.rooms, start=1):
        for w, wall in enumerate(room.walls, start=1):
            if f"{room.name}/wall/{wall.wall}" == surface and wall.tiling is not None:
                left = found.tiled[0].starts[0].origin[0]
                start: dict[str, FieldValue] = {
                    "left": exact_length(left, job.tape),
                    "up": exact_length(height, job.tape),
                }
                return edited_text(text, f"rooms[{r}].walls[{w}].tiling.start", start)
    raise InputValueError(
        f"'{surface}' is no tiled wall of this job; enter where its tile starts under tiling.start"
    )
