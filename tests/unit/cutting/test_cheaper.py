from collections import Counter

import pytest

from firstcourse.cutting import Blank, KeptSize, StockSize, cut
from firstcourse.cutting.cheaper import cheaper
from firstcourse.cutting.packing import MANNERS, Filling, Room, in_order, pack

# Pieces of one bathroom; 6 sheets of 1536 x 768 are proven fewest.
ROOM = (
    (1471, 764), (1405, 768), (1149, 378), (881, 764), (841, 764), (653, 764), (649, 764), (573, 378), (497, 764),
    (493, 764), (251, 764), (186, 768), (129, 768),
)  # fmt: skip
SHEET = Room("s", None, 1536, 768, 1, True)


def blanks(sizes, allowed=("s",)):
    return [Blank(f"p{i:03}", w, h, allowed) for i, (w, h) in enumerate(sizes)]


def placed(fillings):
    return Counter(blank.id for filling in fillings for *_, blank in filling.placed)


def one_each(demand, room):
    return [pack([blank], [room], (), MANNERS[0])[0] for blank in demand]


def test_from_a_sheet_for_each_to_the_fewest():
    demand = blanks(ROOM)
    found = cheaper(one_each(demand, SHEET), [SHEET], (), bound=6, steps=20_000)
    assert len(found) == 6
    assert placed(found) == Counter(blank.id for blank in demand)
    for filling in found:
        boxes = [(x, y, *((b.h, b.w) if turned else (b.w, b.h))) for _, x, y, turned, b in filling.placed]
        assert all(x + w <= 1536 and y + h <= 768 for x, y, w, h in boxes)
        assert sum(w * h for *_, w, h in boxes) + sum(f[3] * f[4] for f in filling.free) == 1536 * 768


def test_same_arguments_same_sheets():
    demand = blanks(ROOM)
    start = one_each(demand, SHEET)
    first, second = (cheaper(start, [SHEET], (), bound=0, steps=4_000) for _ in range(2))
    assert [f.placed for f in first] == [f.placed for f in second]


def test_more_steps_are_never_worse():
    start = one_each(blanks(ROOM), SHEET)
    costs = [len(cheaper(start, [SHEET], (), bound=0, steps=steps)) for steps in (0, 1, 10, 100, 1_000, 10_000)]
    assert costs == sorted(costs, reverse=True) and costs[0] == len(ROOM)


def test_what_cannot_be_cheaper_stays_the_same_object():
    start = pack(in_order(blanks(ROOM), "area"), [SHEET], (), MANNERS[0])
    assert cheaper(start, [SHEET], (), bound=len(start), steps=1_000) is start


def test_sheets_of_two_sizes_are_exchanged_for_cheaper_ones():
    small, large = Room("s", None, 10, 10, 10, True), Room("l", None, 20, 10, 15, True)
    demand = blanks([(10, 10), (10, 10)], ("s", "l"))
    found = cheaper(one_each(demand, small), [small, large], (), bound=15, steps=2_000)
    assert [filling.room.stock for filling in found] == ["l"]


def test_a_rectangle_at_hand_is_used():
    kept = Room("s", "k", 10, 10, 0, True)
    room = Room("s", None, 10, 10, 10, True)
    demand = blanks([(10, 10), (10, 10)])
    found = cheaper(one_each(demand, room), [room], [kept], bound=10, steps=2_000)
    assert sorted(filling.room.kept or "" for filling in found) == ["", "k"]


def test_a_blank_lies_only_where_it_may():
    room = Room("s", None, 10, 20, 10, False)
    other = Room("t", None, 20, 10, 9, False)
    demand = [Blank("a", 10, 20, ("s",)), Blank("b", 20, 10, ("t",))]
    start = [Filling(room), Filling(other)]
    start[0].place(demand[0], 0, False, "x")
    start[1].place(demand[1], 0, False, "x")
    assert cheaper(start, [room, other], (), bound=0, steps=2_000) is start


@pytest.mark.parametrize("effort", [1, 2])
def test_a_list_that_building_up_cuts_from_one_sheet_more(effort):
    sizes = [(953, 572), (953, 286), (953, 286), (700, 572), (256, 572), (500, 400), (456, 400), (956, 172)]
    stock = (StockSize("s", 960, 576, 1),)
    plan = cut(blanks(sizes), stock, effort=effort)
    assert plan.cost == 4 and plan.proven


def test_kept_rectangles_never_make_it_dearer():
    demand = blanks(ROOM)
    stock = (StockSize("s", 1536, 768, 1),)
    kept = (KeptSize("k", "s", 1420, 700), KeptSize("l", "s", 300, 768))
    assert cut(demand, stock, kept, effort=1).cost < cut(demand, stock, effort=1).cost
