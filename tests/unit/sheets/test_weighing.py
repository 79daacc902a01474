"""What decides between layouts, and the cost that no cutting goes below."""

import pytest

from firstcourse.cutting import KeptSize, StockSize
from firstcourse.sheets.weighing import Value, least_cost

SHEET = StockSize("s", 10, 10, 7)


def test_cost_decides_before_anything_else() -> None:
    cheap = Value(cost=10, boards=9, seams=99, thin=9, cuts=20, kept=0, smallest=-1, heaviest=9)
    assert cheap < Value(cost=11, boards=1, seams=1, thin=0, cuts=1, kept=-5, smallest=-9, heaviest=1)


def test_boards_then_seams_then_thin_strips_then_cuts_then_offcuts_decide() -> None:
    value = Value(cost=10, boards=4, seams=20, thin=2, cuts=6, kept=0, smallest=-1, heaviest=9)
    fewer_boards = value._replace(boards=3, seams=90, cuts=9)
    shorter_seams = value._replace(seams=19, cuts=9)
    fewer_thin = value._replace(thin=1, cuts=9)
    fewer_cuts = value._replace(cuts=5)
    more_kept = value._replace(kept=-4)
    assert sorted([value, more_kept, fewer_cuts, fewer_thin, shorter_seams, fewer_boards]) == [
        fewer_boards, shorter_seams, fewer_thin, fewer_cuts, more_kept, value,
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("areas", "kept", "cost"),
    [
        ([(100, [SHEET])], [], 7),
        ([(101, [SHEET])], [], 14),
        ([(60, [SHEET]), (60, [SHEET])], [], 14),
        ([(120, [SHEET])], [KeptSize("k", "s", 5, 4)], 7),
        ([(100, [SHEET, StockSize("t", 20, 10, 10)])], [], 5),
        ([(0, [SHEET])], [], 0),
        ([(50, [])], [], 0),
    ],
)
def test_least_cost(areas: list[tuple[int, list[StockSize]]], kept: list[KeptSize], cost: int) -> None:
    assert least_cost(areas, kept) == cost
