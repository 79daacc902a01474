"""Centre and balance, no cut under half a tile: ANSI A108.02 4.3.1 and 4.3.2, two rooms worked by hand.

The first is told in the trade press, the second follows from the same rule. A field of 118 in takes tiles of 12 in
with 1/8 in joints centred on a joint (cuts of 10 7/16 in), a field of 100 in tiles of 24 in centred on a tile
(cuts of 13 3/4 in); the other way round the cuts are 4 3/8 in and 1 11/16 in.
"""

import datetime

import pytest
from shapely import box

from firstcourse.plan import TileStock
from firstcourse.rules import load_rules
from firstcourse.tiles.model import TileArea
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.start import find_starts, judge_start
from firstcourse.units import inches

RULES = load_rules(datetime.date(2026, 1, 1))
INCH = 25.4
JOINT = 0.125 * INCH


@pytest.mark.parametrize(
    ("field_in", "tile_in", "chosen_in", "other_in", "whole", "whole_otherwise"),
    [(118, 12, 10.4375, 4.375, 8, 9), (100, 24, 13.75, 1.6875, 3, 4)],
)
def test_a_field_is_centred_the_way_that_leaves_the_better_cuts(
    field_in: float, tile_in: float, chosen_in: float, other_in: float, whole: int, whole_otherwise: int
) -> None:
    size = inches(tile_in)
    tile = TileStock(id="t", size=(size, size), thickness=inches(0.3125), kind="ceramic", joint=inches(0.125))
    cell = repeat_cell("stacked", [tile], JOINT)
    field = TileArea(area=box(0, 0, field_in * INCH, field_in * INCH))
    pick = find_starts(cell, field, RULES)[0]
    assert pick.smallest_cut / INCH == pytest.approx(chosen_in, abs=0.0005)
    assert pick.whole_tiles == whole**2
    across = other_in * INCH + JOINT
    other = judge_start(cell, field, (across, across), RULES)
    assert other.smallest_cut / INCH == pytest.approx(other_in, abs=0.0005)
    assert other.whole_tiles == whole_otherwise**2
    assert other.penalty > pick.penalty
