"""Windows set back in boarded walls: a board on every return that must have one, with its framing behind it."""

from collections.abc import Iterator

from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.geometry import Ring, bounds, rectangle
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-113"
_NOISE = 200.0


def check_return_boards(plan: Document) -> Iterator[Objection]:
    """Object to returns without boards, or with others than their window asks, and to boards of no window."""
    by_id = {surface.id: surface for surface in plan.surfaces}
    known: set[str] = set()
    for wall in plan.surfaces:
        for window in wall.openings if wall.boards else ():
            if window.kind != "window" or window.outline is None or not window.depth:
                continue
            name = f"{wall.id}/{window.id}"
            width = window.depth - plan.rules.ticks("boards.gap.perimeter")
            if width < plan.rules.ticks("boards.limb.min"):
                if window.return_board:
                    yield Objection(_CODE, name, "has boards on returns that are too narrow for them")
                continue
            board = dict(wall.layers).get("board", 0)
            if not 0 < board < window.depth or window.return_board != board:
                yield Objection(_CODE, name, "has returns boarded with another thickness than its wall")
                continue
            for face, (outline, front) in _strips(window.outline, window.depth, board).items():
                known.add(f"{name}/{face} board")
                yield from _strip(f"{name}/{face} board", by_id, wall, (outline, front, board))
    for surface in plan.surfaces:
        if surface.boarded and surface.part_of and surface.id not in known:
            yield Objection(_CODE, surface.id, "is boarded as part of another surface that has no such window")


def _strips(window: Ring, depth: int, board: int) -> dict[str, tuple[Ring, int]]:
    """Each return's outline, and the number of the side that is its front."""
    left, low, right, top = bounds(window)
    flat, upright = rectangle(left, 0, right, depth), rectangle(0, low - board, depth, top + board)
    return {"sill": (flat, 0), "head": (flat, 2), "left": (upright, 3), "right": (upright, 1)}


def _strip(
    name: str, by_id: dict[str, Surface], wall: Surface, wanted: tuple[Ring, int, int]
) -> Iterator[Objection]:
    outline, front, board = wanted
    strip = by_id.get(name)
    if strip is None or not strip.boards:
        yield Objection(_CODE, name, "is a return that must be boarded, and has no board")
        return
    sides = tuple("free" if index == front else "perimeter" for index in range(4))
    if strip.outline != outline or strip.sides != sides or strip.part_of != wall.id or strip.openings:
        yield Objection(_CODE, name, "is not as large as the return of its window")
    if strip.board_stock != wall.board_stock:
        yield Objection(_CODE, name, "may be cut from other sheets than its wall")
    left, low, right, high = bounds(outline)
    # The framing is flush with the studs: a board's thickness behind the front edge.
    by = [board if index == front else 0 for index in range(4)]
    behind = Polygon(rectangle(left + by[3], low + by[0], right - by[1], high - by[2]))
    framing = unary_union([Polygon(support.outline) for support in strip.supports])
    if behind.symmetric_difference(framing).area > _NOISE:
        yield Objection(_CODE, name, "is carried by framing that does not lie behind it")
