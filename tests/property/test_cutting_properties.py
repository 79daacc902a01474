from dataclasses import replace
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.cutting import Blank, CuttingPlan, KeptSize, StockSize, bounds, cut

SHEETS = (StockSize("s", 12, 20, 10), StockSize("t", 16, 32, 21), StockSize("u", 12, 12, 7))


@st.composite
def lists(draw, most=12):
    sizes = draw(st.lists(st.tuples(st.integers(1, 12), st.integers(1, 12), st.booleans()), max_size=most))
    return tuple(Blank(f"p{i}", w, h, ("s", "t", "u"), turn) for i, (w, h, turn) in enumerate(sizes))


kept_lists = st.lists(st.tuples(st.integers(1, 16), st.integers(1, 16)), max_size=3).map(
    lambda sizes: tuple(KeptSize(f"k{i}", "st"[i % 2], w, h) for i, (w, h) in enumerate(sizes))
)


def replay(sheet):
    left = {"": (0, 0, sheet.w, sheet.h)}
    for line in sheet.cuts:
        x, y, w, h = left.pop(line.of)
        low, high = line.gives
        if line.along == "x":
            assert 0 < line.at < h
            left[low], left[high] = (x, y, w, line.at), (x, y + line.at, w, h - line.at)
        else:
            assert 0 < line.at < w
            left[low], left[high] = (x, y, line.at, h), (x + line.at, y, w - line.at, h)
    return left


def value(plan: CuttingPlan):
    left = [p.size[0] * p.size[1] for s in plan.sheets for p in s.parts if p.keep]
    return plan.cost, -max(left, default=0), sum(len(s.cuts) for s in plan.sheets)


def check(plan, demand, stock, kept):
    wanted = {b.id: b for b in demand}
    sizes, hand = {s.id: s for s in stock}, {k.id: k for k in kept}
    cost, used = 0, []
    for sheet in plan.sheets:
        if sheet.kept is None:
            cost += sizes[sheet.stock].cost
            assert (sheet.w, sheet.h) == (sizes[sheet.stock].w, sizes[sheet.stock].h)
        else:
            own = hand.pop(sheet.kept)
            assert (sheet.stock, sheet.w, sheet.h) == (own.stock, own.w, own.h)
        used.append(sheet.stock if sheet.kept is None else None)
        assert replay(sheet) == {p.name: (*p.at, *p.size) for p in sheet.parts}
        waste = [p for p in sheet.parts if p.blank is None]
        assert sum(p.keep for p in sheet.parts) == bool(waste)
        for part in sheet.parts:
            if part.blank is None:
                continue
            blank = wanted.pop(part.blank)
            assert sheet.stock in blank.allowed and not part.keep
            assert part.size == ((blank.h, blank.w) if part.turned else (blank.w, blank.h))
            assert not part.turned or (blank.may_turn and sizes[sheet.stock].may_turn)
    assert not wanted
    assert plan.cost == cost >= plan.cost_bound.value
    for name, count in plan.counts.items():
        assert count.used == used.count(name) >= count.bound.value


@settings(max_examples=30, deadline=None)
@given(lists(), kept_lists)
def test_every_plan_replays_and_meets_its_demand(demand, kept):
    check(cut(demand, SHEETS, kept, effort=0), demand, SHEETS, kept)


@settings(max_examples=25, deadline=None)
@given(lists(), kept_lists)
def test_more_stock_or_kept_never_costs_more(demand, kept):
    alone = tuple(Blank(b.id, b.w, b.h, ("t",), b.may_turn) for b in demand)
    one = cut(alone, SHEETS, effort=0)
    more = cut(demand, SHEETS, effort=0)
    assert more.cost <= one.cost
    assert cut(demand, SHEETS, kept, effort=0).cost <= more.cost


@settings(max_examples=8, deadline=None)
@given(lists(), kept_lists)
def test_longer_effort_is_never_worse(demand, kept):
    values = [value(cut(demand, SHEETS, kept, effort=effort)) for effort in (0, 1, 2)]
    assert values == sorted(values, reverse=True)


@settings(max_examples=8, deadline=None)
@given(lists(), kept_lists)
def test_same_input_same_plan_that_replays(demand, kept):
    plan = cut(demand, SHEETS, kept, effort=1)
    assert plan == cut(demand, SHEETS, kept, effort=1)
    check(plan, demand, SHEETS, kept)


@cache
def fits(items, w, h):
    """Whether edge-to-edge cuts get all items from w x h, found by trying every cut and every share."""
    if not items:
        return True
    if sum(a * b for a, b, _ in items) > w * h:
        return False
    if len(items) == 1:
        a, b, turn = items[0]
        return (a <= w and b <= h) or (turn and b <= w and a <= h)
    for mask in range(1, 2 ** len(items) - 1):
        some = tuple(item for i, item in enumerate(items) if mask >> i & 1)
        rest = tuple(item for i, item in enumerate(items) if not mask >> i & 1)
        if any(fits(some, x, h) and fits(rest, w - x, h) for x in range(1, w)):
            return True
        if any(fits(some, w, y) and fits(rest, w, h - y) for y in range(1, h)):
            return True
    return False


@cache
def fewest(items, w, h):
    """Fewest w x h sheets, by trying every share of the items."""
    if not items:
        return 0
    best = len(items)
    for mask in range(2 ** (len(items) - 1)):
        first = (items[0], *(item for i, item in enumerate(items[1:]) if mask >> i & 1))
        rest = tuple(item for i, item in enumerate(items[1:]) if not mask >> i & 1)
        if fits(first, w, h):
            best = min(best, 1 + fewest(rest, w, h))
    return best


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 5), st.integers(1, 6), st.booleans()), min_size=1, max_size=4))
def test_tiny_lists_against_every_way_to_cut(sizes):
    demand = tuple(Blank(f"p{i}", w, h, ("s",), turn) for i, (w, h, turn) in enumerate(sizes))
    count = cut(demand, (StockSize("s", 5, 6, 1),), effort=2).counts["s"]
    assert count.bound.value <= fewest(tuple(sorted(sizes)), 5, 6) == count.used


@settings(max_examples=60, deadline=None)
@given(lists(), kept_lists, st.sampled_from([1, 10**12]))
def test_the_bound_is_the_best_of_all_pairs_of_functions(demand, kept, scale):
    """Reckoned one pair at a time in whole numbers; also where products pass 64 bits."""
    stocks = [replace(s, w=s.w * scale, h=s.h * scale) for s in SHEETS]
    kept = [replace(k, w=k.w * scale, h=k.h * scale) for k in kept]
    fitting = [
        replace(b, w=b.w * scale, h=b.h * scale)
        for b in demand
        if any((b.w <= s.w and b.h <= s.h) or (b.may_turn and b.h <= s.w and b.w <= s.h) for s in SHEETS)
    ]
    wide, high = (max([getattr(s, way) for s in [*stocks, *kept]]) for way in "wh")
    places = {b.id: bounds._places(b, stocks, kept) for b in fitting}
    xs = {b.w for b in fitting if places[b.id][0]} | {b.h for b in fitting if places[b.id][1]}
    ys = {b.h for b in fitting if places[b.id][0]} | {b.w for b in fitting if places[b.id][1]}
    best = 0
    for f in bounds._functions(wide, xs, 24):
        for g in bounds._functions(high, ys, 24):
            need = -sum(f(k.w) * g(k.h) for k in kept)
            for b in fitting:
                ways = zip(places[b.id], ((b.w, b.h), (b.h, b.w)), strict=True)
                need += min(f(w) * g(h) for there, (w, h) in ways if there)
            best = max(best, bounds._least_cost(need, [(f(s.w) * g(s.h), s.cost) for s in stocks]))
    assert bounds.least_cost(fitting, stocks, kept, effort=1).value == (best if fitting else 0)
