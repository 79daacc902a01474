import pytest

from firstcourse.cutting import Blank, CannotCutError, CutSheet, KeptSize, StockSize, cut
from firstcourse.cutting.packing import MANNERS, Manner, Room, in_order, manners, pack
from firstcourse.errors import InputValueError

SHEET = StockSize("small", 36, 60, 18)
LARGE = StockSize("large", 48, 96, 38)


def blanks(*sizes, allowed=("small",), may_turn=True):
    return tuple(Blank(f"p{i}", w, h, allowed, may_turn) for i, (w, h) in enumerate(sizes))


def test_one_whole_sheet_needs_no_cut():
    plan = cut(blanks((36, 60)), (SHEET,), effort=0)
    assert plan.proven
    assert plan.sheets[0].cuts == ()
    assert [part.blank for part in plan.sheets[0].parts] == ["p0"]


def test_nothing_to_cut():
    plan = cut((), (SHEET,), effort=1)
    assert plan.sheets == () and plan.cost == 0 and plan.proven
    assert plan.counts["small"].used == 0


def test_blank_turns_only_where_both_allow():
    wide = (60, 36)
    assert cut(blanks(wide), (SHEET,), effort=0).sheets[0].parts[0].turned
    with pytest.raises(CannotCutError, match="p0"):
        cut(blanks(wide, may_turn=False), (SHEET,), effort=0)
    with pytest.raises(CannotCutError):
        cut(blanks(wide), (StockSize("small", 36, 60, 18, may_turn=False),), effort=0)


def test_kept_rectangle_saves_a_sheet():
    demand = blanks((36, 60), (20, 20))
    kept = (KeptSize("k", "small", 20, 20),)
    assert cut(demand, (SHEET,), effort=0).counts["small"].used == 2
    plan = cut(demand, (SHEET,), kept, effort=0)
    assert plan.counts["small"].used == 1 and plan.proven
    assert plan.sheets[0].kept == "k"


def test_stocks_that_share_no_blank_are_separate():
    demand = (Blank("wall", 18, 60, ("small",)), Blank("floor", 18, 60, ("large",)))
    plan = cut(demand, (SHEET, LARGE), effort=1)
    assert [sheet.stock for sheet in plan.sheets] == ["small", "large"]
    assert plan.cost == 56 and plan.proven


def test_cheaper_of_two_sizes_is_taken():
    plan = cut(blanks((30, 50), allowed=("small", "large")), (LARGE, SHEET), effort=0)
    assert [sheet.stock for sheet in plan.sheets] == ["small"]


def test_two_blanks_over_half_are_proven_apart():
    plan = cut(blanks((20, 31), (20, 31), may_turn=False), (StockSize("small", 36, 60, 1),), effort=0)
    assert plan.counts["small"].used == 2 and plan.proven
    assert plan.counts["small"].bound.proof == "dual_functions"


def test_largest_left_over_is_marked():
    plan = cut(blanks((36, 20), (10, 10)), (SHEET,), effort=0)
    kept = [part for part in plan.sheets[0].parts if part.keep]
    assert [part.size for part in kept] == [(26, 40)] or [part.size for part in kept] == [(36, 30)]


@pytest.mark.parametrize(
    ("demand", "stock", "kept", "effort"),
    [
        (blanks((1, 1)), (SHEET, SHEET), (), 0),
        (blanks((1, 1)) * 2, (SHEET,), (), 0),
        (blanks((1, 1), allowed=("none",)), (SHEET,), (), 0),
        (blanks((1, 1)), (SHEET,), (KeptSize("k", "none", 1, 1),), 0),
        (blanks((1, 1)), (SHEET,), (), 4),
    ],
)
def test_wrong_input_is_refused(demand, stock, kept, effort):
    with pytest.raises(InputValueError):
        cut(demand, stock, kept, effort=effort)


@pytest.mark.parametrize("size", [(0, 1), (1, -1)])
def test_sizes_are_positive(size):
    with pytest.raises(InputValueError):
        blanks(size)


def test_a_manner_left_out_packs_like_one_before_it() -> None:
    room = Room("s", None, 60, 36, 1, True)
    listed = [
        Blank(f"b{number}", side, side - number % 3, ("s",)) for number, side in enumerate((30, 24, 18, 9, 5))
    ]
    kept = list(manners(listed, MANNERS))
    assert len(kept) < len(MANNERS)

    def sheets(manner: Manner) -> list[CutSheet]:
        return [filling.sheet() for filling in pack(in_order(listed, manner.order), [room], [], manner)]

    made = [sheets(manner) for _, manner in kept]
    assert all(sheets(manner) in made for manner in MANNERS)


def test_a_packing_is_given_up_where_it_costs_too_much() -> None:
    room = Room("s", None, 60, 36, 3, True)
    listed = [Blank(f"b{number}", 40, 30, ("s",)) for number in range(3)]
    assert len(pack(listed, [room], [], MANNERS[0], limit=9)) == 3
    with pytest.raises(CannotCutError):
        pack(listed, [room], [], MANNERS[0], limit=8)


def test_sheets_do_not_depend_on_whether_patterns_are_weighed() -> None:
    listed = [Blank(f"b{number}", 31 + number % 4, 19 + number % 3, ("s",)) for number in range(14)]
    proven, plain = (cut(listed, [StockSize("s", 60, 36, 5)], effort=1, prove=prove) for prove in (True, False))
    assert proven.sheets == plain.sheets
    assert proven.counts["s"].bound.value >= plain.counts["s"].bound.value
    assert proven.cost_bound.value >= plain.cost_bound.value


def test_a_list_that_costs_more_than_it_may_is_not_cut():
    listed = blanks(*[(30, 40)] * 3)
    assert cut(listed, (SHEET,), effort=0, limit=54).cost == 54
    with pytest.raises(CannotCutError):
        cut(listed, (SHEET,), effort=0, limit=53)
    with pytest.raises(CannotCutError):
        cut(blanks(*[(30, 40)] * 3, allowed=("small", "large")), (SHEET, LARGE), effort=0, limit=37)
