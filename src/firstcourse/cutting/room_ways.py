"""Ways to cut all that one room takes, each packed by itself."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firstcourse.cutting.model import Blank, CannotCutError, CutSheet, KeptSize, StockSize
from firstcourse.cutting.packing import Filling, Room

if TYPE_CHECKING:
    from firstcourse.cutting.kernels import Ints


@dataclass(frozen=True)
class PackingWay:
    """How a list is packed.

    Attributes:
        manner: Below `kernels.NUM_MANNERS`.
        use_kept: Whether kept rectangles are used.
        buy: The room wanted for each sheet bought, in order.
        least: Least side of any blank, in units of the packing.
    """

    manner: int
    use_kept: bool
    buy: tuple[int, ...]
    least: int


def rooms_of(stock: Sequence[StockSize], kept: Sequence[KeptSize]) -> list[Room]:
    """Kept rectangles, then sheets, the cheapest for their area first."""
    turns = {s.id: s.may_turn for s in stock}
    listed = sorted(stock, key=lambda s: (s.cost * 10**9 // (s.w * s.h), s.cost, s.id))
    return [Room(k.stock, k.id, k.w, k.h, 0, turns[k.stock]) for k in kept] + [
        Room(s.id, None, s.w, s.h, s.cost, s.may_turn) for s in listed
    ]


def room_table(rooms: Sequence[Room], unit: int) -> "Ints":
    """Rooms as `kernels.pack` has them, in whole units."""
    import numpy as np

    return np.array([(r.w // unit, r.h // unit, int(r.may_turn), r.cost) for r in rooms], np.int64)


def packed(
    blanks: Sequence[Blank], rooms: Sequence[Room], num_kept: int, way: PackingWay, unit: int
) -> list[CutSheet]:
    """The sheets of one packing, with their cuts in working order.

    Args:
        blanks: What is packed, equal ones in this order.
        rooms: What can be cut, in the order of `rooms_of`.
        num_kept: So many of them are kept rectangles.
        way: How.
        unit: A divisor of all sides of blanks.

    Raises:
        CannotCutError: If a blank fits no room.
    """
    import numpy as np

    from firstcourse.cutting import kernels

    num = len(blanks)

    def ints(values: Sequence[int]) -> "Ints":
        return np.array(values, np.int64)

    placed = np.zeros((num, 8), np.int64)
    room_of, most = np.zeros(num + num_kept, np.int64), num + num_kept
    buy = ints([*way.buy, *([num_kept] * (num + 1 - len(way.buy)))])
    sheets, _, _ = kernels.pack(
        ints([b.w // unit for b in blanks]), ints([b.h // unit for b in blanks]),
        ints([sum((room.stock in b.allowed) << bit for bit, room in enumerate(rooms)) for b in blanks]), num,
        room_table(rooms, unit), num_kept, int(way.use_kept), buy, way.least, way.manner, ints([0] * num),
        ints([0] * num), np.zeros((2 * num + num_kept + 2, 5), np.int64), ints([0] * most), room_of, placed,
    )  # fmt: skip
    if sheets < 0:
        raise CannotCutError(next(b.id for b in blanks))
    fillings = [Filling(rooms[room]) for room in room_of[:sheets].tolist()]
    for blank, sheet, x, y, turned, across, _, _ in placed.tolist():
        filling = fillings[sheet]
        index = next(i for i, free in enumerate(filling.free) if free[1:3] == (x * unit, y * unit))
        filling.place(blanks[blank], index, bool(turned), "x" if across else "y")
    return [filling.sheet() for filling in fillings if filling.placed]
