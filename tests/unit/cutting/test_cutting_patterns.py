"""The bound over patterns against hand examples, plans and exhaustive search."""

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.cutting import Blank, KeptSize, StockSize, cut
from firstcourse.cutting.packing import MANNERS, Room, in_order, pack
from firstcourse.cutting.patterns import _Search, least_by_patterns

Size = tuple[int, int]


def blanks(sizes: list[Size], *, may_turn: bool = True) -> list[Blank]:
    return [Blank(f"p{i:02}", w, h, ("s",), may_turn) for i, (w, h) in enumerate(sizes)]


def bound(demand: list[Blank], w: int, h: int, *, effort: int = 1) -> int:
    built = pack(in_order(demand, "area"), [Room("s", None, w, h, 1, True)], (), MANNERS[0])
    return least_by_patterns(demand, StockSize("s", w, h, 1), (), built, effort=effort).value


def test_three_of_which_only_two_share_a_sheet() -> None:
    """Each covers 0.4 of the sheet and two take its whole length: area asks for 2 sheets, patterns for 3."""
    assert bound(blanks([(10, 4)] * 5), 10, 10) == 3


def test_a_mixture_of_patterns() -> None:
    """Pieces over half both ways take a sheet each; the strips fill what is left beside them."""
    sizes = [(6, 6)] * 3 + [(10, 4)] * 4
    assert bound(blanks(sizes), 10, 10) == 4


def test_turning_is_not_allowed_where_it_is_not() -> None:
    sizes = [(4, 10), (10, 4)] * 2
    assert bound(blanks(sizes), 10, 10) == 2
    assert bound(blanks([(6, 4)] * 3, may_turn=False), 10, 10) == 2
    assert bound(blanks([(6, 4)] * 3), 10, 10) == 1


def test_a_pinwheel_is_no_pattern() -> None:
    """Four would lie round an empty middle, but no cut from edge to edge frees them."""
    assert bound(blanks([(6, 4)] * 4), 10, 10) == 2


def test_effort_0_and_lists_that_are_too_fine_are_left_alone() -> None:
    assert bound(blanks([(3, 3)]), 10, 10, effort=0) == 0
    fine = blanks([(30_011, 20_011), (10_007, 19_997)])
    assert bound(fine, 100_003, 50_021) == 0


def test_a_list_that_area_does_not_prove() -> None:
    demand = blanks([(5, 9)] * 3 + [(7, 6)] * 2)
    plan = cut(demand, (StockSize("s", 10, 10, 7),), effort=1)
    assert plan.proven and plan.cost == 7 * plan.counts["s"].used
    assert plan.cost_bound.value == 7 * plan.counts["s"].bound.value


@pytest.mark.parametrize("may_turn", [True, False])
def test_the_dearest_pattern_is_worth_what_is_said(may_turn: bool) -> None:
    kinds = [(3, 2), (4, 4), (7, 5)]
    prices = [7, 17, 40]
    search = _Search(kinds, set(kinds) if may_turn else set(), StockSize("s", 10, 9, 1))
    most, pattern, given = search.dearest(prices, [KeptSize("k", "s", 7, 6)])
    assert sum(n * p for n, p in zip(pattern, prices, strict=True)) == most
    assert most == most_by_search(10, 9, may_turn)
    assert given == most_by_search(7, 6, may_turn)


@cache
def most_by_search(w: int, h: int, may_turn: bool) -> int:
    """Most worth of the same three kinds, by every cut."""
    best = 0
    for (a, b), price in zip([(3, 2), (4, 4), (7, 5)], [7, 17, 40], strict=True):
        if (a <= w and b <= h) or (may_turn and b <= w and a <= h):
            best = max(best, price)
    for x in range(1, w // 2 + 1):
        best = max(best, most_by_search(x, h, may_turn) + most_by_search(w - x, h, may_turn))
    for y in range(1, h // 2 + 1):
        best = max(best, most_by_search(w, y, may_turn) + most_by_search(w, h - y, may_turn))
    return best


@settings(max_examples=30, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 12), st.integers(1, 9)), min_size=1, max_size=14), st.booleans())
def test_no_plan_goes_below_it_and_more_effort_never_bounds_less(sizes: list[Size], may_turn: bool) -> None:
    demand = blanks([(min(w, 9), h) for w, h in sizes] if may_turn else sizes, may_turn=may_turn)
    plan = cut(demand, (StockSize("s", 12, 9, 1),), effort=1)
    bounds = [bound(demand, 12, 9, effort=effort) for effort in (0, 1, 2)]
    assert bounds == sorted(bounds) and bounds[-1] <= plan.cost


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.tuples(st.integers(1, 9), st.integers(1, 9)), min_size=1, max_size=12),
    st.lists(st.tuples(st.integers(1, 12), st.integers(1, 9)), min_size=1, max_size=3),
)
def test_kept_rectangles_take_off_no_less_than_they_give(sizes: list[Size], kept: list[Size]) -> None:
    hand = [KeptSize(f"k{i}", "s", w, h) for i, (w, h) in enumerate(kept)]
    plan = cut(blanks(sizes), (StockSize("s", 12, 9, 1),), hand, effort=1)
    assert plan.cost >= plan.cost_bound.value


def test_a_kept_rectangle_larger_than_a_sheet_is_not_weighed() -> None:
    stock, kept = StockSize("s", 10, 10, 1), [KeptSize("k", "s", 11, 4)]
    assert least_by_patterns(blanks([(9, 9)]), stock, kept, (), effort=1).value == 0


def test_a_kept_rectangle_that_holds_one_of_three_spares_its_share() -> None:
    """Two of three large pieces need a sheet each; the kept rectangle gives the third."""
    plan = cut(blanks([(6, 9)] * 3), (StockSize("s", 10, 10, 1),), [KeptSize("k", "s", 9, 6)], effort=1)
    assert plan.proven and plan.cost == 2
