"""One board made wider where it stands, by what the gaps at walls and ceilings may give."""

from collections.abc import Iterator, Sequence

from shapely import LineString, Polygon

from firstcourse.boards.edges import edge_members
from firstcourse.boards.field import opening_gap, opening_ring, side_gaps
from firstcourse.geometry import axis_of, bounds, sides
from firstcourse.geometry.polygon import Ring
from firstcourse.plan import Board, SideKind, Support, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import floor_to

_SLACK = 2
"""Rounding of a side that runs along no axis [ticks]."""


def widened(
    surface: Surface,
    boards: Sequence[Board],
    supports: Sequence[Support],
    number: int,
    axis: int,
    by: int,
    rules: RuleSet,
    graduation: int,
) -> Board | None:
    """A board wider by a little, whole at one end where that can be, or None where its gaps do not give so much.

    Only gaps at walls, cabinets and ceilings give: at most down to `boards.gap.perimeter.least`. The foot's gap is
    sealed and stays, and so do gaps between boards and round openings.

    Args:
        surface: The surface, with its openings.
        boards: Its boards.
        supports: Its members, those added among them; the wider board must be carried by them as well.
        number: The board's place in `boards`.
        axis: 0 where it becomes longer along u, 1 along v.
        by: How much [ticks], whole graduations.
        rules: Rules in force.
        graduation: Tape graduation [ticks].
    """
    bare = edge_members(surface, boards, supports, rules)
    for low in _shares(by, graduation):
        board = _stretched(boards[number], axis, low, by - low)
        if board is None or not _has_room(surface, boards, number, board, axis, rules):
            continue
        if edge_members(surface, [*boards[:number], board, *boards[number + 1 :]], supports, rules) == bare:
            return board
    return None


def _shares(by: int, graduation: int) -> Iterator[int]:
    """What the lower or left end takes: nothing, all, then shares from the even one outwards."""
    yield 0
    yield by
    yield from sorted(range(graduation, by, graduation), key=lambda low: (abs(2 * low - by), low))


def _stretched(board: Board, axis: int, low: int, high: int) -> Board | None:
    """The board with its ends along an axis moved out; None where what meets an end is not square to it."""
    box = bounds(board.outline)
    ends = {box[axis]: -low, box[axis + 2]: high}
    ring = board.outline
    spots = []
    for index, spot in enumerate(ring):
        out = ends.get(spot[axis], 0)
        for other in (ring[index - 1], ring[(index + 1) % len(ring)]):
            if out and other[axis] != spot[axis] and other[1 - axis] != spot[1 - axis]:
                return None
        spots.append((spot[0] + out, spot[1]) if axis == 0 else (spot[0], spot[1] + out))
    return board.model_copy(update={"outline": tuple(spots)})


def _has_room(
    surface: Surface, boards: Sequence[Board], number: int, board: Board, axis: int, rules: RuleSet
) -> bool:
    more = Polygon(board.outline).difference(Polygon(boards[number].outline))
    if not Polygon(surface.outline).covers(more):
        return False
    least = rules.ticks("boards.gap.perimeter.least")
    for (a, b), side, gap in zip(sides(surface.outline), surface.sides, side_gaps(surface, rules), strict=True):
        faces_end = side.kind is SideKind.PERIMETER and axis_of(a, b) == "vu"[axis]
        if LineString([a, b]).distance(more) < (min(least, gap) if faces_end else gap - _SLACK):
            return False
    for opening in surface.openings:
        if Polygon(opening_ring(opening)).distance(more) < opening_gap(opening, rules):
            return False
    between = rules.ticks("boards.gap.between")
    return all(
        Polygon(other.outline).distance(more) >= between for index, other in enumerate(boards) if index != number
    )


def narrowest_gap(surface: Surface, ring: Ring, graduation: int) -> int:
    """The least distance of a board from a wall, cabinet or ceiling square to it, to the nearest tape mark."""
    shape = Polygon(ring)
    least = min(
        LineString([a, b]).distance(shape)
        for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
        if side.kind is SideKind.PERIMETER and axis_of(a, b)
    )
    return nearest_mark(int(least), graduation)


def nearest_mark(length: int, graduation: int) -> int:
    """A length to the nearest tape mark [ticks]."""
    return floor_to(length + graduation // 2, graduation)
