"""Lower bounds that hold for every way to cut, edge to edge or not.

Sizes are replaced by values of dual feasible functions: along any line across a sheet the values of the
pieces add up to no more than the value of the sheet, so products of two such functions bound like areas do,
and often better. The functions are those of Fekete & Schepers (2001) and Carlier, Clautiaux & Moukrim (2007),
stated here from memory; all are superadditive, so that one function also measures smaller sheets. The tests
compare the bounds with exhaustive search.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from math import gcd
from typing import Any

import numpy as np

from firstcourse.cutting.model import Blank, Bound, KeptSize, StockSize

NO_BOUND = Bound(0, "none")
FUNCTIONS_PER_AXIS = (8, 24, 24, 24)
"""Dual feasible functions tried on each axis, by effort. From level 1 on they are the same, so that the search
stops at the same bound and more effort never ends worse."""

_INT64 = 2**63

Function = Callable[[int], int]
Shape = tuple[int, int, bool]


def _threshold(whole: int, least: int) -> Function:
    def value(x: int) -> int:
        if x < least:
            return 0
        return whole if x > whole - least else x

    return value


def _steps(whole: int, k: int) -> Function:
    def value(x: int) -> int:
        scaled, rest = divmod((k + 1) * x, whole)
        return k * x if rest == 0 else scaled * whole

    return value


def _rounded(whole: int, unit: int) -> Function:
    def value(x: int) -> int:
        if 2 * x > whole:
            return 2 * (whole // unit - (whole - x) // unit)
        return whole // unit if 2 * x == whole else 2 * (x // unit)

    return value


def _functions(whole: int, sizes: Iterable[int], limit: int) -> list[Function]:
    found: list[Function] = [_threshold(whole, 0)]
    found += [_steps(whole, k) for k in (1, 2, 3)]
    for size in sorted({min(x, whole - x) for x in sizes if 0 < x < whole}, reverse=True):
        found += [_threshold(whole, size), _rounded(whole, size)]
    return found[:limit]


def _places(blank: Blank, stocks: Sequence[StockSize], kept: Sequence[KeptSize]) -> tuple[bool, bool]:
    """Whether a blank fits anywhere as it is, and anywhere turned."""
    turns = {stock.id: stock.may_turn for stock in stocks}
    rooms = [(s.id, s.w, s.h) for s in stocks] + [(k.stock, k.w, k.h) for k in kept]
    upright = turned = False
    for stock, w, h in rooms:
        if stock in blank.allowed:
            upright |= blank.w <= w and blank.h <= h
            turned |= blank.may_turn and turns[stock] and blank.h <= w and blank.w <= h
    return upright, turned


def _least_cost(need: int, capacities: Sequence[tuple[int, int]]) -> int:
    """Least cost, or less, of sheets (capacity, cost) that together hold `need`."""
    useful = [(capacity, cost) for capacity, cost in capacities if capacity > 0]
    if need <= 0 or not useful:
        return 0
    # Fractions of the sheet of best value relax the knapsack; whole sheets cost multiples of the costs' divisor.
    relaxed = min(-(-need * cost // capacity) for capacity, cost in useful)
    step = gcd(*(cost for _, cost in capacities))
    return -(-relaxed // step) * step


def least_cost(
    demand: Sequence[Blank], stocks: Sequence[StockSize], kept: Sequence[KeptSize], *, effort: int
) -> Bound:
    """Least cost of sheets from which all of `demand` can be cut, kept rectangles free of cost.

    Args:
        demand: Blanks that each fit some sheet.
        stocks: All stocks that any of them may be cut from.
        kept: All kept rectangles of these stocks.
        effort: Level 0 to 3: how many functions are tried; more never bounds less.

    Returns:
        The bound in units of cost, with its argument.
    """
    shapes: Counter[tuple[int, int, bool, bool]] = Counter()
    for blank in demand:
        shapes[(blank.w, blank.h, *_places(blank, stocks, kept))] += 1
    rooms = [(s.w, s.h) for s in stocks] + [(k.w, k.h) for k in kept]
    if not shapes:
        return NO_BOUND
    wide, high = max(w for w, _ in rooms), max(h for _, h in rooms)
    xs = {w for w, _, upright, _ in shapes if upright} | {h for _, h, _, turned in shapes if turned}
    ys = {h for _, h, upright, _ in shapes if upright} | {w for w, _, _, turned in shapes if turned}
    limit = FUNCTIONS_PER_AXIS[effort]
    sizes = sorted({side for w, h, *_ in shapes for side in (w, h)} | {side for room in rooms for side in room})
    across = _values(_functions(wide, xs, limit), sizes)
    up = _values(_functions(high, ys, limit), sizes)
    # Whole numbers all the way: a bound that were rounded might not hold.
    exact: type = np.int64 if across.max() * up.max() * (len(demand) + len(kept)) < _INT64 else object
    across, up = across.astype(exact), up.astype(exact)
    at = {size: number for number, size in enumerate(sizes)}

    def value(w: int, h: int) -> Any:
        # One row for each function across, one column for each function up.
        return np.outer(across[:, at[w]], up[:, at[h]])

    need: Any = np.zeros((len(across), len(up)), dtype=exact)
    for k in kept:
        need -= value(k.w, k.h)
    for (w, h, upright, turned), copies in shapes.items():
        ways = ([value(w, h)] if upright else []) + ([value(h, w)] if turned else [])
        need += copies * np.minimum(ways[0], ways[-1])
    needs = need.ravel()
    capacities = [value(s.w, s.h).ravel() for s in stocks]
    best = NO_BOUND
    for number in _promising(needs, capacities, [s.cost for s in stocks]):
        held = [(int(of[number]), s.cost) for of, s in zip(capacities, stocks, strict=True)]
        cost = _least_cost(int(needs[number]), held)
        if cost > best.value:
            best = Bound(cost, "area" if number == 0 else "dual_functions")
    return best


def _values(functions: Sequence[Function], sizes: Sequence[int]) -> Any:
    return np.array([[function(size) for size in sizes] for function in functions], dtype=object)


def _promising(needs: Any, capacities: Sequence[Any], costs: Sequence[int]) -> list[int]:
    """Pairs of functions, in order, among which is the first of those that bound best.

    The rest bound less by more than whole sheets and rounding can make up.
    """
    rough = np.full(needs.shape, np.inf)
    for capacity, cost in zip(capacities, costs, strict=True):
        held = capacity.astype(float)
        with np.errstate(divide="ignore", invalid="ignore"):
            rough = np.where(held > 0, np.minimum(rough, needs.astype(float) * cost / held), rough)
    rough[np.isinf(rough)] = 0.0
    step = gcd(*costs)
    return [int(number) for number in np.nonzero(rough > rough.max() * (1 - 1e-9) - step - 1)[0]]


def least_sheets(demand: Sequence[Blank], stock: StockSize, kept: Sequence[KeptSize], *, effort: int) -> Bound:
    """Fewest sheets of one stock that any plan buys: those for blanks allowed on no other stock.

    Args:
        demand: All blanks.
        stock: The stock counted.
        kept: All kept rectangles; those of other stocks are passed over.
        effort: Level 0 to 3.

    Returns:
        The bound in sheets.
    """
    only = [blank for blank in demand if set(blank.allowed) == {stock.id}]
    own = [k for k in kept if k.stock == stock.id]
    unit = StockSize(stock.id, stock.w, stock.h, 1, stock.may_turn)
    return least_cost(only, (unit,), own, effort=effort)
