"""ANSI A108.02 flatness as quoted in the trade press (known = read): 1/4 in in 10 ft, or 1/8 in for large tile.

The three cases are computed from the rule; no tolerance. Grid volume and planes: geometry, computed.
"""

import datetime

import pytest

from firstcourse.grounds.flatness import Spot, best_plane, judge_flatness, straightedge_passes, tolerance_for
from firstcourse.grounds.levelling import mean_depth_mm
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
INCH = 25.4


@pytest.mark.parametrize(
    ("long_in", "short_in", "edge_in", "passes"),
    [(0.16, 0.03, 24, False), (0.16, None, 12, True), (0.12, 0.07, 24, False)],
)
def test_straightedge_readings(long_in, short_in, edge_in, passes):
    tolerance = tolerance_for(RULES, edge_in * INCH)
    short = None if short_in is None else short_in * INCH
    assert straightedge_passes(tolerance, long_in * INCH, short) is passes


def test_the_closer_tolerance_begins_at_the_large_tile():
    assert not tolerance_for(RULES, 15 * INCH - 0.1).large
    assert tolerance_for(RULES, 15 * INCH).large


def test_fill_volume_of_a_grid():
    """Trapezoidal weights, computed: 11.1875 l."""
    depths = [[3, 5, 8, 6], [4, 9, 12, 7], [3, 6, 9, 5]]
    spots = [Spot(u_mm=500 * j, v_mm=500 * i, height_mm=0) for i in range(3) for j in range(4)]
    mean, _how = mean_depth_mm(spots, [depth for row in depths for depth in row])
    assert mean * 1500 * 1000 / 1e6 == pytest.approx(11.1875, abs=1e-9)


def test_a_sloping_plane_is_flat():
    """A 1 in 48 fall each way is found exactly and is no deviation."""
    spots = tuple(
        Spot(u_mm=u, v_mm=v, height_mm=5 + u / 48 - v / 96) for u in (0, 300, 600, 900) for v in (0, 300, 600)
    )
    plane = best_plane(spots)
    assert (plane.slope_u, plane.slope_v) == pytest.approx((1 / 48, -1 / 96))
    found = judge_flatness(spots, tolerance_for(RULES, 600))
    assert found.passes and found.worst_long_mm == pytest.approx(0, abs=1e-9)


def test_one_hump_is_seen_by_both_straightedges():
    spots = tuple(
        Spot(u_mm=u, v_mm=v, height_mm=4.0 if (u, v) == (300, 300) else 0.0)
        for u in (0, 300, 600)
        for v in (0, 300, 600)
    )
    found = judge_flatness(spots, tolerance_for(RULES, 600))
    assert not found.passes
    assert found.worst_long_mm == pytest.approx(4.0)
    assert found.worst_short_mm == pytest.approx(4.0)
    assert found.grind == (4,)
