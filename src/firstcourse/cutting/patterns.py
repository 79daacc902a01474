"""A bound on sheets for fixed blanks, over every pattern of edge-to-edge cuts (Gilmore & Gomory 1965).

Put a price on each blank such that no sheet yields parts worth more than one sheet: the blanks are worth at least
as many sheets. The best prices are found by a linear programme over the patterns known, to which the pattern that
is worth most at these prices is added in turn. The programme only proposes: each set of prices is rounded to whole
numbers, the most that one sheet is worth at them is found exactly, and the bound is counted in whole numbers. A
blank may fill a pattern more often than it is wanted, which weakens the bound and never falsifies it. The method
is stated from memory; the tests compare it with exhaustive search.
"""

from bisect import bisect_right
from collections import Counter
from collections.abc import Sequence
from math import gcd
from typing import TYPE_CHECKING

from firstcourse.cutting.bounds import NO_BOUND
from firstcourse.cutting.model import Blank, Bound, KeptSize, StockSize
from firstcourse.cutting.packing import Filling

if TYPE_CHECKING:
    from firstcourse.cutting.kernels import Ints

ROUNDS = (0, 60, 400, 2_000)
"""Patterns added at most, by effort."""
WORK = (0, 3 * 10**8, 4 * 10**10, 4 * 10**11)
"""Sums looked at, by effort; fewer patterns are added where each takes many."""
WORTH = 1_000_000
"""What the dearest blank is worth at the most, in whole numbers."""
MOST_SIDE = 4_000
"""Sheets with more places than this along a side are not looked at."""
MOST_KINDS = 250

Kind = tuple[int, int]
Pattern = tuple[int, ...]


def least_by_patterns(
    blanks: Sequence[Blank],
    stock: StockSize,
    kept: Sequence[KeptSize],
    fillings: Sequence[Filling],
    *,
    effort: int,
) -> Bound:
    """Fewest sheets of one stock from which all blanks can be cut.

    Args:
        blanks: That are cut from this stock and no other.
        stock: The stock.
        kept: Rectangles of it at hand, none larger than a sheet; each takes off what it can be worth at the most.
        fillings: A plan for these blanks; its patterns are the first to be known, those bought are enough.
        effort: Level 0 to 3; more never bounds less.

    Returns:
        The bound in sheets; 0 where the blanks are too many or too fine, or effort is 0.
    """
    wanted = Counter(_kind(blank, stock) for blank in blanks)
    kinds = sorted(wanted)
    turns = {(_kind(blank, stock), blank.may_turn and stock.may_turn) for blank in blanks}
    large = any(rest.w > stock.w or rest.h > stock.h for rest in kept)
    if large or not kinds or len(kinds) > MOST_KINDS or len(turns) > len(kinds) or not ROUNDS[effort]:
        return NO_BOUND
    search = _Search(kinds, {kind for kind, may_turn in turns if may_turn}, stock)
    if search.too_fine:
        return NO_BOUND
    demand = [wanted[kind] for kind in kinds]
    bought = [filling for filling in fillings if filling.room.kept is None]
    known = {search.pattern(Counter(_kind(blank, stock) for *_, blank in filling.placed)) for filling in bought}
    known |= {tuple(int(i == j) for j in range(len(kinds))) for i in range(len(kinds))}
    best = 0
    for _ in range(min(ROUNDS[effort], WORK[effort] // search.work)):
        prices = _prices(sorted(known), demand)
        most, pattern, given = search.dearest(prices, kept)
        need = sum(price * copies for price, copies in zip(prices, demand, strict=True)) - given
        best = max(best, -(-need // most))
        if best >= len(bought) or pattern in known:
            break
        known.add(pattern)
    return Bound(best, "pattern_prices")


def _kind(blank: Blank, stock: StockSize) -> Kind:
    """Size, the longer side first where it may be turned."""
    if blank.may_turn and stock.may_turn:
        return max(blank.w, blank.h), min(blank.w, blank.h)
    return blank.w, blank.h


def _prices(patterns: Sequence[Pattern], demand: Sequence[int]) -> list[int]:
    """Prices at which no known pattern is worth more than a sheet and the demand is worth most."""
    import numpy as np
    from scipy.optimize import linprog

    found = linprog(
        -np.array(demand, float), A_ub=np.array(patterns, float), b_ub=np.ones(len(patterns)), method="highs"
    )
    return [max(0, round(float(price) * WORTH)) for price in found.x]


class _Search:
    """Finds the pattern that is worth most at given prices."""

    def __init__(self, kinds: Sequence[Kind], turning: set[Kind], stock: StockSize) -> None:
        self.kinds = kinds
        ways = [(number, w, h) for number, (w, h) in enumerate(kinds)]
        ways += [(number, h, w) for number, (w, h) in enumerate(kinds) if (w, h) in turning and w != h]
        self.ways = [(number, w, h) for number, w, h in ways if w <= stock.w and h <= stock.h]
        self.xs = _sums({w for _, w, _ in self.ways}, stock.w)
        self.ys = _sums({h for _, _, h in self.ways}, stock.h)
        self.too_fine = not self.xs or not self.ys
        self.arrays: tuple[Ints, ...] | None = None
        self.work = len(self.xs) * len(self.ys) * (len(self.xs) + len(self.ys)) // 4 + 1

    def pattern(self, counted: Counter[Kind]) -> Pattern:
        """A pattern by how often each kind is in it."""
        return tuple(counted[kind] for kind in self.kinds)

    def dearest(self, prices: Sequence[int], kept: Sequence[KeptSize] = ()) -> tuple[int, Pattern, int]:
        """The most that a sheet's parts are worth, such parts, and the most that the parts of all kept are."""
        import numpy as np

        from firstcourse.cutting.pattern_kernels import most_worth

        if self.arrays is None:
            self.arrays = _arrays(self.xs, self.ys, self.ways)
        xs, ys, rest_x, rest_y, at_x, at_y = self.arrays
        table = np.zeros((len(xs), len(ys)), np.int64)
        price: Ints = np.array([prices[number] for number, _, _ in self.ways], np.int64)
        most_worth(xs, ys, rest_x, rest_y, at_x, at_y, price, table)
        counts = [0] * len(self.kinds)
        cells = {(int(x), int(y)): number for x, y, p, (number, _, _) in
                 sorted(zip(at_x, at_y, price, self.ways, strict=True), key=lambda way: way[2])}  # fmt: skip
        todo = [(len(xs) - 1, len(ys) - 1)]
        while todo:
            i, j = todo.pop()
            worth = table[i, j]
            if worth == 0:
                continue
            while table[i - 1, j] == worth:
                i -= 1
            while table[i, j - 1] == worth:
                j -= 1
            number = cells.get((i, j))
            if number is not None and prices[number] == worth:
                counts[number] += 1
                continue
            across = np.flatnonzero(table[1:i, j] + table[rest_x[i, 1:i], j] == worth)
            if len(across):
                p = int(across[0]) + 1
                todo += [(p, j), (int(rest_x[i, p]), j)]
            else:
                q = int(np.flatnonzero(table[i, 1:j] + table[i, rest_y[j, 1:j]] == worth)[0]) + 1
                todo += [(i, q), (i, int(rest_y[j, q]))]
        given = sum(
            int(table[bisect_right(self.xs, rest.w) - 1, bisect_right(self.ys, rest.h) - 1]) for rest in kept
        )
        return int(table[-1, -1]), tuple(counts), given


def _arrays(xs: Sequence[int], ys: Sequence[int], ways: Sequence[tuple[int, int, int]]) -> "tuple[Ints, ...]":
    """What the kernel asks for beside prices: places, rests of their differences, places of the ways."""
    import numpy as np

    def ints(values: object) -> "Ints":
        return np.array(values, np.int64)

    def rests(places: "Ints") -> "Ints":
        return ints(np.searchsorted(places, places[:, None] - places[None, :], side="right") - 1)

    wide, high = ints(xs), ints(ys)
    at_x = ints(np.searchsorted(wide, [w for _, w, _ in ways]))
    at_y = ints(np.searchsorted(high, [h for _, _, h in ways]))
    return wide, high, rests(wide), rests(high), at_x, at_y


def _sums(sides: set[int], whole: int) -> list[int]:
    """All sums of sides up to the whole, from 0; empty where they are too many."""
    unit = gcd(*sides)
    most = whole // unit
    if most > MOST_SIDE:
        return []
    reached = [True] + [False] * most
    for side in sorted(side // unit for side in sides):
        for place in range(side, most + 1):
            reached[place] = reached[place] or reached[place - side]
    return [place * unit for place, is_sum in enumerate(reached) if is_sum]


def warm() -> None:
    """Compile the search where that is not yet on disk."""
    _Search([(2, 1)], set(), StockSize("s", 4, 4, 1)).dearest([1])
