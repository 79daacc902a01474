"""The tile drawing shows every tile true to scale, hatches what is cut, and its cut list counts it."""

from functools import cache
from pathlib import Path

import pytest

from firstcourse.drawings import draw_tiling
from firstcourse.drawings.tiles import cut_rows
from firstcourse.geometry import bounds
from firstcourse.plan import Plan
from firstcourse.planning import plan_file
from firstcourse.units import TICKS_PER_MM

TUB = Path(__file__).parents[3] / "examples" / "tub-bathroom" / "job.yaml"


@cache
def _plan() -> Plan:
    return plan_file(TUB, effort=0).plan


@pytest.mark.parametrize("number", range(4))
def test_every_tile_is_drawn_true_to_the_scale_stated(number: int):
    surface = _plan().surfaces[number]
    drawing = draw_tiling(_plan(), surface)
    drawn = {poly.name: poly for poly in drawing.polys if poly.layer == "tile" and len(poly.points) >= 3}
    assert drawn.keys() == {tile.id for tile in surface.tiles}
    tile = next(tile for tile in surface.tiles if tile.whole)
    left, lower, right, upper = bounds(tile.outline)
    xs = [x for x, _ in drawn[tile.id].points]
    ys = [y for _, y in drawn[tile.id].points]
    assert (max(xs) - min(xs)) * drawing.scale == pytest.approx((right - left) / TICKS_PER_MM)
    assert (max(ys) - min(ys)) * drawing.scale == pytest.approx((upper - lower) / TICKS_PER_MM)


@pytest.mark.parametrize("number", range(4))
def test_the_cut_list_counts_every_cut_piece_under_a_mark(number: int):
    surface = _plan().surfaces[number]
    rows = cut_rows(_plan(), surface)
    assert sum(int(count) for _, count, *_ in rows) == sum(not tile.whole for tile in surface.tiles)
    assert len({mark for mark, *_ in rows}) == len(rows)


def test_soft_joints_and_hatching_are_drawn():
    surface = _plan().surfaces[1]
    layers = {line.layer for line in draw_tiling(_plan(), surface).lines}
    assert {"soft", "hatch"} <= layers
