"""What a list costs to cut, about: the best of the greedy packings, for comparing many lists in little time."""

from collections.abc import Sequence
from math import gcd

from firstcourse.cutting.model import Blank, CannotCutError, KeptSize, StockSize
from firstcourse.cutting.room_ways import room_table, rooms_of


def quick_cut(
    demand: Sequence[Blank], stock: Sequence[StockSize], kept: Sequence[KeptSize] = ()
) -> tuple[int, int]:
    """Cost of the sheets and number of cuts of the best greedy packing; `cut` finds no worse, mostly.

    Args:
        demand: What is to be cut.
        stock: Sheets that can be bought in any number, at most `choice.MOST_ROOMS` with `kept`.
        kept: Rectangles at hand.

    Raises:
        CannotCutError: If a blank fits no sheet.

    Example:
        >>> quick_cut([Blank("p", 30, 50, ("s",)), Blank("q", 30, 10, ("s",))], [StockSize("s", 36, 60, 10)])
        (10, 2)
    """
    import numpy as np

    from firstcourse.cutting import kernels

    num = len(demand)
    if not num:
        return 0, 0
    rooms = rooms_of(stock, kept)
    unit = gcd(*(side for blank in demand for side in (blank.w, blank.h)))
    w = np.array([blank.w // unit for blank in demand], np.int64)
    h = np.array([blank.h // unit for blank in demand], np.int64)
    mask = np.array(
        [sum((room.stock in blank.allowed) << bit for bit, room in enumerate(rooms)) for blank in demand], np.int64
    )
    table, at_hand = room_table(rooms, unit), len(kept)
    keys, rank, placed = np.zeros(num, np.int64), np.zeros(num, np.int64), np.zeros((num, 8), np.int64)
    free = np.zeros((2 * num + at_hand + 2, 5), np.int64)
    load, room_of = np.zeros(num + at_hand, np.int64), np.zeros(num + at_hand, np.int64)
    best: tuple[int, int] | None = None
    for first in range(at_hand, len(rooms)):
        buy = np.full(num + 1, first, np.int64)
        for use_kept in range(2 if at_hand else 1):
            for manner in range(kernels.NUM_MANNERS):
                sheets, cost, cuts = kernels.pack(
                    w, h, mask, num, table, at_hand, use_kept, buy, int(min(w.min(), h.min())), manner, keys, rank,
                    free, load, room_of, placed,
                )  # fmt: skip
                if sheets < 0:
                    raise CannotCutError(demand[0].id)
                if best is None or (cost, cuts) < best:
                    best = (cost, cuts)
    assert best is not None
    return best
