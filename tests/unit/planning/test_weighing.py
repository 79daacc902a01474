"""What decides between layouts, and the cost that no cutting goes below."""

import pytest

from firstcourse.cutting import KeptSize, StockSize
from firstcourse.planning.weighing import Value, least_cost

SHEET = StockSize("s", 10, 10, 7)


def test_cost_decides_before_anything_else() -> None:
    cheap = Value(cost=10, kept=0, labour=99, smallest=-1, heaviest=9)
    assert cheap < Value(cost=11, kept=-5, labour=1, smallest=-9, heaviest=1)
    assert cheap > cheap._replace(kept=-1, labour=100)


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
