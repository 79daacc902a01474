"""All mirror images of a room are searched as one and the same; what is found lies in each as it is given."""

import math
from itertools import product
from typing import Any

import pytest
from shapely import box

from firstcourse.plan import TileStock
from firstcourse.tiles.handedness import at_corner, one_hand
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import XY, Edge, RepeatCell, TileArea
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.units import mm


def cell(pattern: Any, width: float, height: float, **more: Any) -> RepeatCell:
    tile = TileStock(id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="ceramic", joint=mm(3))
    return repeat_cell(pattern, [tile], 3.0, **more)


def room(left: bool, low: bool) -> TileArea:
    """A room with a recess in one of its corners, and one side that weighs more."""
    recess = box(0 if left else 700, 0 if low else 600, 300 if left else 1000, 250 if low else 850)
    at = 0.0 if left else 1000.0
    ends = ((at, 850.0), (at, 0.0)) if left else ((at, 0.0), (at, 850.0))
    return TileArea(area=box(0, 0, 1000, 850).difference(recess), edges=(Edge(a=ends[0], b=ends[1], weight=2.0),))


PATTERNS = [
    (cell("diagonal", 300, 200), cell("diagonal", 300, 200, angle=90)),
    (cell("basket_weave", 297, 97), cell("basket_weave", 297, 97)),
    (cell("herringbone", 300, 97), cell("herringbone", 300, 97, angle=90)),
]


@pytest.mark.parametrize(("one", "mirrored"), PATTERNS)
def test_every_mirror_image_is_searched_alike(one: RepeatCell, mirrored: RepeatCell) -> None:
    hands = [
        one_hand(one if left == low else mirrored, room(left, low))
        for left, low in product((True, False), repeat=2)
    ]
    assert len({hand.flip for hand in hands}) == 4
    assert len({hand.field.area.wkt for hand in hands}) == len({hand.field.edges for hand in hands}) == 1
    assert len({hand.cell for hand in hands}) == 1


@pytest.mark.parametrize(("given", "_"), PATTERNS)
def test_a_repeat_told_anew_makes_the_same_pattern(given: RepeatCell, _: RepeatCell) -> None:
    field = room(True, True)
    hand = one_hand(given, field)

    def laid(repeat: RepeatCell, area: Any, shift: XY) -> list[float]:
        return sorted(round(tile.shape.area, 3) for tile in lay(repeat, shift, area))

    searched = laid(hand.cell, hand.field.area, (41.0, 77.0))
    assert laid(given, field.area, hand.in_room((41.0, 77.0))) == pytest.approx(searched, abs=0.01)


def test_a_start_lies_at_the_lower_left_and_keeps_a_level() -> None:
    running, area = cell("running", 300, 97), TileArea(area=box(10, 20, 1000, 850))
    assert at_corner(running, area, (903.0, 320.0)) == pytest.approx((145.5, 20.0))
    assert at_corner(running, area, (903.0, 320.0), level=320.0) == pytest.approx((297.0, 320.0))
    # Whole ticks stay whole ticks; steps that are none leave a shift as it was.
    x, y = at_corner(cell("diagonal", 200, 200), area, (500.0, 500.0))
    side = 203 / math.sqrt(2)
    assert (x - 500) / side == pytest.approx(round((x - 500) / side))
    assert (y - 500) / side == pytest.approx(round((y - 500) / side))
