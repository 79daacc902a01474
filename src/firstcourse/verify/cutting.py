"""Pieces and sheets: the cuts replayed edge to edge, each piece cut once, each as its board lies."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from firstcourse.geometry import Ring, bounds, moved
from firstcourse.units import ceil_to
from firstcourse.verify.structure import Board, Document, Part, Piece, Said, Sheet, Surface
from firstcourse.verify.told import at_least, mm, said, untrue
from firstcourse.verify.verdict import Objection

_Box = tuple[int, int, int, int]
"""Left, lower, width, height of a part on its sheet [ticks]."""


def check_cutting(plan: Document) -> Iterator[Objection]:
    """Object to cuts that cannot be made and to pieces that are not their boards."""
    yield from _references(plan)
    for sheet in plan.sheets:
        yield from _sheet(plan, sheet)
    yield from _thin(plan)
    boards = {board.id: board for surface in plan.surfaces for board in surface.boards}
    pieces = {piece.id: piece for piece in plan.pieces}
    for piece in plan.pieces:
        if piece.board in boards:
            yield from _piece(piece, boards[piece.board], plan.tape.graduation)
    placed = [(sheet, part) for sheet in plan.sheets for part in sheet.parts if part.piece is not None]
    for sheet, part in placed:
        found = pieces.get(part.piece or "")
        if found is None:
            continue
        if found.stock != sheet.stock:
            yield Objection(
                "VER-508", part.id, f"piece {found.id} is of {found.stock}, its sheet of {sheet.stock}"
            )
        blank = found.blank[::-1] if part.turned else found.blank
        if not all(_as_blank(part, sheet, blank, axis, plan.tape.graduation) for axis in (0, 1)):
            yield Objection("VER-504", part.id, f"is not of the size of the blank of piece {found.id}")
        elif found.board in boards:
            yield from _factory_edges(boards[found.board], found, sheet, part, plan.tape.graduation)


def _as_blank(part: Part, sheet: Sheet, blank: tuple[int, int], axis: int, graduation: int) -> bool:
    """Whether a part is as wide as its blank; at the sheet's edge less than a tape mark more is not cut off."""
    more = part.size[axis] - blank[axis]
    at_edge = part.at[axis] + part.size[axis] == sheet.size[axis]
    return more == 0 or (at_edge and 0 < more < graduation and sheet.size[axis] % graduation == more)


def _thin(plan: Document) -> Iterator[Objection]:
    """What is too narrow to be snapped off is told of each surface, board by board, and no more than that."""
    least = plan.rules.ticks("boards.cut.least")
    strips: dict[str, list[tuple[int, str]]] = {}
    for sheet in plan.sheets:
        left = {sheet.id: sheet.size}
        for cut in sheet.cuts:
            size = left.pop(cut.of, None)
            across = 1 if cut.along == "x" else 0
            if size is None or not 0 < cut.at < size[across]:
                break
            near, far = cut.at, size[across] - cut.at
            for name, part in zip(cut.gives, (near, far), strict=True):
                left[name] = (size[0], part) if across else (part, size[1])
            for off, stays, width in ((*cut.gives, near), (*cut.gives[::-1], far)):
                if width < least:
                    for piece in _touched(sheet, off, stays, across):
                        strips.setdefault(piece, []).append((width, sheet.id))
    told = [one for one in plan.findings if one.code == "BRD-206"]
    yield from untrue("VER-510", told, _thin_told(plan.surfaces, strips, least))


def _thin_told(
    surfaces: Iterable[Surface], strips: Mapping[str, Sequence[tuple[int, str]]], least: int
) -> Iterator[Said]:
    """One finding for each surface with boards beside strips too narrow: their widths, boards and sheets."""
    for surface in surfaces:
        there = [(*strip, board.id) for board in surface.boards for strip in strips.get(board.piece, ())]
        if there:
            yield said(
                "BRD-206",
                "note",
                surface.id,
                "break_off",
                "dust",
                rule="boards.cut.least",
                limit=at_least(least),
                widths=[mm(width) for width, _, _ in there],
                boards=[{"ref": board} for _, _, board in there],
                sheets=[{"ref": f"sheet/{sheet}"} for _, sheet, _ in there],
            )


def _touched(sheet: Sheet, off: str, stays: str, across: int) -> list[str]:
    """The pieces that a strip is taken off: of the strip itself, at the cut, or else all on its other side."""
    of_strip = [part.piece for part in sheet.parts if part.piece and part.id.startswith(off)]
    beyond = [part for part in sheet.parts if part.id.startswith(stays)]
    edge = max((part.at[across] + part.size[across] for part in beyond), default=0)
    at_cut = [part.piece for part in beyond if part.piece and part.at[across] + part.size[across] == edge]
    return of_strip or at_cut or [part.piece for part in beyond if part.piece]


def _references(plan: Document) -> Iterator[Objection]:
    boards = [board for surface in plan.surfaces for board in surface.boards]
    lists = {
        "surface": [surface.id for surface in plan.surfaces],
        "board": [board.id for board in boards],
        "piece": [piece.id for piece in plan.pieces],
        "sheet": [sheet.id for sheet in plan.sheets],
        "offcut": [sheet.source for sheet in plan.sheets if sheet.source != "new"],
    }
    for kind, ids in lists.items():
        for name in sorted(name for name, number in Counter(ids).items() if number > 1):
            yield Objection("VER-508", name, f"two {kind}s have this id, or it is used twice")
    pieces = {piece.id: piece for piece in plan.pieces}
    for surface in plan.surfaces:
        for board in surface.boards:
            piece = pieces.get(board.piece)
            if piece is None or piece.board != board.id:
                yield Objection("VER-508", board.id, f"piece {board.piece} is not the piece of this board")
            elif surface.board_stock and piece.stock not in surface.board_stock:
                yield Objection("VER-508", board.id, f"{piece.stock} may not be used on this surface")
    fixed = {board.piece for board in boards if board.fixed}
    known = {board.id for board in boards}
    cut = Counter(part.piece for sheet in plan.sheets for part in sheet.parts if part.piece is not None)
    for piece in plan.pieces:
        if piece.board not in known:
            yield Objection("VER-508", piece.id, f"board {piece.board} does not exist")
        if cut[piece.id] != (0 if piece.id in fixed else 1):
            yield Objection("VER-503", piece.id, f"is cut {cut[piece.id]} times")
    for name in sorted(set(cut) - set(pieces)):
        yield Objection("VER-503", name, "is cut but is no piece of the plan")


def _sheet(plan: Document, sheet: Sheet) -> Iterator[Objection]:
    stock = plan.stock.get(sheet.stock)
    if stock is None:
        yield Objection("VER-508", sheet.id, f"stock {sheet.stock} does not exist")
    elif sheet.source == "new":
        if sheet.size != stock:
            yield Objection("VER-506", sheet.id, "a new sheet is not of its stock's size")
    elif not sheet.source.startswith("offcut:") or len(sheet.source) <= len("offcut:"):
        yield Objection("VER-506", sheet.id, f"source '{sheet.source}' is neither new nor an offcut")
    elif any(have > most for have, most in zip(sorted(sheet.size), sorted(stock), strict=True)):
        yield Objection("VER-506", sheet.id, "an offcut is larger than the sheet it came from")
    left: dict[str, _Box] = {sheet.id: (0, 0, *sheet.size)}
    seen = {sheet.id}
    for number, cut in enumerate(sheet.cuts, 1):
        box = left.pop(cut.of, None)
        if box is None:
            yield Objection("VER-501", sheet.id, f"cut {number}: part {cut.of} is not there to be cut")
            return
        x, y, width, height = box
        if cut.at >= (height if cut.along == "x" else width):
            yield Objection("VER-501", sheet.id, f"cut {number} runs outside part {cut.of}")
            return
        if cut.gives[0] == cut.gives[1] or seen & set(cut.gives):
            yield Objection("VER-501", sheet.id, f"cut {number} gives a part whose id is taken")
            return
        seen |= set(cut.gives)
        if cut.along == "x":
            left[cut.gives[0]], left[cut.gives[1]] = (
                (x, y, width, cut.at),
                (x, y + cut.at, width, height - cut.at),
            )
        else:
            left[cut.gives[0]], left[cut.gives[1]] = (
                (x, y, cut.at, height),
                (x + cut.at, y, width - cut.at, height),
            )
    yield from _parts(sheet, left, plan.rules.ticks("choice.offcut.least_side"))


def _parts(sheet: Sheet, left: dict[str, _Box], least: int) -> Iterator[Objection]:
    listed = [part.id for part in sheet.parts]
    if sorted(listed) != sorted(left):
        yield Objection("VER-502", sheet.id, "the parts listed are not those the cuts leave")
    for part in sheet.parts:
        box = left.get(part.id)
        if box is not None and box != (*part.at, *part.size):
            yield Objection("VER-502", part.id, "does not lie where the cuts leave it, or is of another size")
        if part.keep and part.piece is not None:
            yield Objection("VER-502", part.id, "is a piece and cannot be kept as an offcut")
        if part.piece is None and part.keep != (min(part.size) >= least):
            told = "is kept, and is too small for that" if part.keep else "is worth keeping, and is not kept"
            yield Objection("VER-502", part.id, told)


def _piece(piece: Piece, board: Board, graduation: int) -> Iterator[Objection]:
    left, lower, right, upper = bounds(board.outline)
    outline = moved(board.outline, -left, -lower)
    holes = tuple(moved(hole, -left, -lower) for hole in board.holes)
    if not piece.face_up:
        outline = _mirrored(outline, right - left)
        holes = tuple(_mirrored(hole, right - left) for hole in holes)
    if _from_lowest(piece.outline) != _from_lowest(outline) or sorted(map(_from_lowest, piece.holes)) != sorted(
        map(_from_lowest, holes)
    ):
        yield Objection("VER-505", piece.id, f"is not of the shape of board {board.id}")
    if piece.blank != (ceil_to(right - left, graduation), ceil_to(upper - lower, graduation)):
        yield Objection("VER-505", piece.id, "its blank is not the board's box in whole tape marks")
    p_left, p_lower, p_right, p_upper = bounds(piece.outline)
    if p_left < 0 or p_lower < 0 or p_right > piece.blank[0] or p_upper > piece.blank[1]:
        yield Objection("VER-505", piece.id, "reaches out of its blank")


def _mirrored(ring: Ring, width: int) -> Ring:
    return tuple((width - u, v) for u, v in reversed(ring))


def _from_lowest(ring: Ring) -> Ring:
    start = min(range(len(ring)), key=lambda index: (ring[index][1], ring[index][0]))
    return ring[start:] + ring[:start]


def _factory_edges(board: Board, piece: Piece, sheet: Sheet, part: Part, graduation: int) -> Iterator[Objection]:
    left, lower, right, _ = bounds(board.outline)
    wide = piece.blank[1] if part.turned else piece.blank[0]

    def uncut(place: int, axis: int) -> bool:
        # What a sheet has beyond its last tape mark stays on.
        at_end = part.at[axis] + part.size[axis] == sheet.size[axis]
        return place == 0 or (at_end and 0 <= sheet.size[axis] - place < graduation)

    for index in board.factory_edges:
        ends = []
        for u, v in (board.outline[index], board.outline[(index + 1) % len(board.outline)]):
            x, y = (u - left if piece.face_up else right - u), v - lower
            # Turned, the blank's width runs up the sheet: a quarter turn to the left keeps the face up.
            ends.append((part.at[0] + wide - y, part.at[1] + x) if part.turned
                        else (part.at[0] + x, part.at[1] + y))  # fmt: skip
        (ax, ay), (bx, by) = ends
        if not ((ax == bx and uncut(ax, 0)) or (ay == by and uncut(ay, 1))):
            yield Objection("VER-507", board.id, f"side {index} is called a factory edge but is cut")
