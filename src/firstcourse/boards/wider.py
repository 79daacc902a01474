"""One board made larger or smaller where it stands, by what the gaps at walls and ceilings may give."""

from collections.abc import Iterator, Sequence

import shapely
from shapely import LineString, Polygon

from firstcourse.boards.edges import edge_members
from firstcourse.boards.faults import narrow_boards
from firstcourse.boards.field import opening_gap, side_gaps
from firstcourse.geometry import Ring, axis_near, bounds, sides
from firstcourse.plan import Board, SideKind, Support, Surface, opening_ring
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, floor_to

_SLACK = 2
"""Rounding of a side that runs along no axis [ticks]."""
_SPECK = TICKS_PER_MM**2
"""What rounding leaves of an area [ticks²]."""


def resized(
    surface: Surface,
    boards: Sequence[Board],
    supports: Sequence[Support],
    number: int,
    axis: int,
    by: int,
    rules: RuleSet,
    graduation: int,
) -> Board | None:
    """A board larger or smaller by a little, at one end where that can be, or None where its gaps do not give it.

    Only gaps at walls, cabinets and ceilings give, from `boards.gap.perimeter.least` to
    `boards.gap.perimeter.most`. The foot's gap is sealed and stays, and so do gaps between boards and round
    openings. A board that would then be too narrow, or have too narrow a limb, stays as it is.

    Args:
        surface: The surface, with its openings.
        boards: Its boards.
        supports: Its members, those added among them; the board must be carried by them as before.
        number: The board's place in `boards`.
        axis: 0 where it becomes longer along u, 1 along v.
        by: How much longer, negative where shorter [ticks], whole graduations.
        rules: Rules in force.
        graduation: Tape graduation [ticks].
    """
    bare = edge_members(surface, boards, supports, rules)
    way = 1 if by > 0 else -1
    for low in _shares(abs(by), graduation):
        board = _stretched(boards[number], axis, way * low, by - way * low)
        if board is None:
            continue
        may = _has_room if by > 0 else _may_stay_open
        if not may(surface, boards, number, board, axis, rules) or any(narrow_boards(surface, [board], rules)):
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
    """The board with its ends along an axis moved out.

    None where what meets an end is not about square to it, and where not all of an end would come along.
    """
    ring = board.outline
    box = bounds(ring)
    spots = list(ring)
    count = len(ring)
    for extreme, out in ((box[axis], -low), (box[axis + 2], high)):
        end = _end(ring, axis, extreme) if out else set[int]()
        # A notch or a step of a tick parts an end in two, and the other part would stay where it is.
        if any(abs(spot[axis] - extreme) < abs(out) and index not in end for index, spot in enumerate(ring)):
            return None
        for index in end:
            if spots[index] != ring[index]:
                return None
            beside = {(index - 1) % count, (index + 1) % count} - end
            drift = 0
            for other in beside:
                if axis_near(ring[index], ring[other]) != "uv"[axis]:
                    return None
                # The corner slides along the side that meets the end there.
                along = ring[other][axis] - ring[index][axis]
                drift = round(out * (ring[other][1 - axis] - ring[index][1 - axis]) / along)
            u, v = ring[index]
            spots[index] = (u + out, v + drift) if axis == 0 else (u + drift, v + out)
    # An end may be nearer to a notch than it is to move.
    if not Polygon(spots, board.holes).is_valid:
        return None
    return board.model_copy(update={"outline": tuple(spots)})


def _end(ring: Ring, axis: int, extreme: int) -> set[int]:
    """The corners of the end that reaches farthest along an axis: those at it, and on sides about square to it."""
    count = len(ring)
    found = {index for index, spot in enumerate(ring) if spot[axis] == extreme}
    left = list(found)
    while left:
        index = left.pop()
        for other in ((index - 1) % count, (index + 1) % count):
            if other not in found and axis_near(ring[index], ring[other]) == "vu"[axis]:
                found.add(other)
                left.append(other)
    return found


def _has_room(
    surface: Surface, boards: Sequence[Board], number: int, board: Board, axis: int, rules: RuleSet
) -> bool:
    more = Polygon(board.outline).difference(Polygon(boards[number].outline))
    if more.difference(Polygon(surface.outline)).area > _SPECK:
        return False
    least = rules.ticks("boards.gap.perimeter.least")
    for (a, b), side, gap in zip(sides(surface.outline), surface.sides, side_gaps(surface, rules), strict=True):
        faces_end = side.kind is SideKind.PERIMETER and axis_near(a, b) == "vu"[axis]
        if LineString([a, b]).distance(more) < (min(least, gap) if faces_end else gap - _SLACK):
            return False
    for opening in surface.openings:
        if Polygon(opening_ring(opening)).distance(more) < opening_gap(opening, rules):
            return False
    between = rules.ticks("boards.gap.between")
    return all(
        Polygon(other.outline).distance(more) >= between for index, other in enumerate(boards) if index != number
    )


def _may_stay_open(
    surface: Surface, boards: Sequence[Board], number: int, board: Board, axis: int, rules: RuleSet
) -> bool:
    """Whether what the board leaves open lies all within the widest gap of sides that its ends face."""
    less = Polygon(boards[number].outline).difference(Polygon(board.outline))
    most = rules.ticks("boards.gap.perimeter.most")
    beside = [
        LineString([a, b]).buffer(most, cap_style="square")
        for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
        if side.kind is SideKind.PERIMETER and axis_near(a, b) == "vu"[axis]
    ]
    return bool(less.difference(shapely.union_all(beside)).area <= _SPECK)


def end_gaps(surface: Surface, ring: Ring, most: int) -> tuple[int, ...]:
    """How far a board is from the walls, cabinets and ceilings that it ends at, the nearest first [ticks].

    Args:
        surface: The surface.
        ring: The board.
        most: It ends at none that is farther [ticks].
    """
    shape = Polygon(ring)
    gaps = (
        int(LineString([a, b]).distance(shape))
        for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
        if side.kind is SideKind.PERIMETER and axis_near(a, b)
    )
    return tuple(sorted(gap for gap in gaps if gap <= most + _SLACK))


def nearest_mark(length: int, graduation: int) -> int:
    """A length to the nearest tape mark [ticks]."""
    return floor_to(length + graduation // 2, graduation)
