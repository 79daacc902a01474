"""From a plan to a cheaper one: name sets of sheets that cost less, and try to fit all blanks into one of them."""

from collections import Counter
from collections.abc import Sequence
from itertools import combinations_with_replacement
from math import log
from typing import TYPE_CHECKING, NamedTuple

from firstcourse.cutting.model import Blank
from firstcourse.cutting.packing import Filling, Room

if TYPE_CHECKING:
    from firstcourse.cutting.kernels import Ints

SLICE = 2_000
"""Steps spent on one set of sheets before the next has its turn."""
MOST_GOALS = 6
MOST_BLANKS = 3_000
"""Longer lists are left as they are: a step looks through all that is not placed yet."""

Stocks = Counter[str]


def cheaper(
    best: list[Filling], rooms: Sequence[Room], at_hand: Sequence[Room], *, bound: int, steps: int
) -> list[Filling]:
    """The blanks of a plan from cheaper sheets, where a counted search finds how.

    Args:
        best: Sheets with all blanks placed.
        rooms: Sheets that can be bought in any number.
        at_hand: Rectangles that cost nothing, each there once.
        bound: A cost that no plan goes below; the search ends there.
        steps: How many sheets are emptied and packed again; more steps never end worse.

    Returns:
        `best` itself, or sheets that cost less.
    """
    blanks = [blank for filling in best for *_, blank in filling.placed]
    while steps > 0 and _cost(best) > bound and len(blanks) <= MOST_BLANKS:
        goals = [_Goal(blanks, rooms, bought, at_hand) for bought in _goals(best, rooms, at_hand, bound)]
        if not goals:
            break
        found = None
        while steps > 0 and found is None:
            for goal in goals:
                steps -= goal.search(min(steps, SLICE))
                if goal.reached:
                    found = goal.fillings()
                    break
        if found is None:
            break
        best = found
    return best


def _cost(fillings: Sequence[Filling]) -> int:
    return sum(filling.room.cost for filling in fillings)


def _goals(best: Sequence[Filling], rooms: Sequence[Room], at_hand: Sequence[Room], bound: int) -> list[Stocks]:
    """Sets of sheets one or two exchanges away that cost less and are large enough, the dearest first."""
    now = Counter(filling.room.stock for filling in best if filling.room.kept is None)
    cost = {room.stock: room.cost for room in rooms}
    area = {room.stock: room.w * room.h for room in rooms}
    need = sum(filling.filled for filling in best) - sum(room.w * room.h for room in at_hand)
    found = set()
    for num in (1, 2):
        for gone in combinations_with_replacement(sorted(now), num):
            left = now.copy()
            left.subtract(gone)
            for instead in [(), *((stock,) for stock in sorted(cost))]:
                bought = left + Counter(instead)
                price = sum(cost[stock] * copies for stock, copies in bought.items())
                if min(left.values()) < 0 or not bound <= price < _cost(best):
                    continue
                if sum(area[stock] * copies for stock, copies in bought.items()) >= need:
                    found.add((-price, tuple(sorted(bought.items()))))
    return [Counter(dict(bought)) for _, bought in sorted(found)[:MOST_GOALS]]


class _State(NamedTuple):
    first: "Ints"
    after: "Ints"
    load: "Ints"
    lies: "Ints"
    heap: "Ints"


class _Goal:
    """All blanks, to be fitted into one set of sheets."""

    def __init__(
        self, blanks: Sequence[Blank], rooms: Sequence[Room], bought: Stocks, at_hand: Sequence[Room]
    ) -> None:
        import numpy as np

        from firstcourse.cutting import kernels

        self.blanks = sorted(blanks, key=lambda blank: blank.id)
        kinds = [*rooms, *at_hand]
        self.sheets = [number for number, room in enumerate(rooms) for _ in range(bought[room.stock])]
        self.sheets += range(len(rooms), len(kinds))
        self.kinds = kinds
        num = len(blanks)

        def ints(values: Sequence[object]) -> "Ints":
            return np.array(values, np.int64)

        w, h = ints([b.w for b in self.blanks]), ints([b.h for b in self.blanks])
        long, short = np.maximum(w, h), np.minimum(w, h)
        self.given = (
            w, h, ints([b.may_turn for b in self.blanks]),
            np.stack([w * h, (long << 30) + short, (short << 30) + long, w + h]),
            ints([[room.stock in b.allowed for room in kinds] for b in self.blanks]),
            ints([(room.w, room.h, room.may_turn) for room in kinds]), ints(self.sheets),
        )  # fmt: skip
        self.state = _State(
            np.full(len(self.sheets), -1, np.int64), np.full(num, -1, np.int64),
            np.zeros(len(self.sheets), np.int64), np.zeros((num, 6), np.int64), np.arange(num, dtype=np.int64),
        )  # fmt: skip
        self.num_heap, self.step = num, 0
        self.seed: Ints = ints([1])
        self.chance: Ints = ints([round(-1024 * log((i + 0.5) / kernels.CHANCES)) for i in range(kernels.CHANCES)])

    @property
    def reached(self) -> bool:
        """Whether all blanks lie on a sheet."""
        return self.num_heap == 0

    def search(self, steps: int) -> int:
        """Go on searching; returns the steps done."""
        from firstcourse.cutting.repacking import refit

        begun = self.step
        self.num_heap, self.step = refit(
            *self.given, *self.state, self.num_heap, self.seed, begun, begun + steps, self.chance
        )
        return self.step - begun

    def fillings(self) -> list[Filling]:
        """The sheets that hold something, cut as the search placed the blanks."""
        made = []
        for sheet, kind in enumerate(self.sheets):
            filling = Filling(self.kinds[kind])
            number = int(self.state.first[sheet])
            while number >= 0:
                x, y, turned, across, wide, high = (int(value) for value in self.state.lies[number])
                index = next(i for i, (_, *place) in enumerate(filling.free) if place == [x, y, wide, high])
                filling.place(self.blanks[number], index, bool(turned), "x" if across else "y")
                number = int(self.state.after[number])
            if filling.placed:
                made.append(filling)
        return made


def warm() -> None:
    """Compile the search where that is not yet on disk."""
    room = Room("s", None, 2, 2, 1, True)
    _Goal([Blank("b", 1, 2, ("s",))], [room], Counter(s=1), ()).search(1)
