"""Shower floors against worked examples: rises, falls and limits.

Sources: a building certifier's note on shower grading under NCC 2022 (1800 x 900 mm, published result), a home
repair forum on a 2 in threshold (published result), limits of IRC P2709.1 with arithmetic by hand for the others.
"""

import math

import pytest

from firstcourse.details.shelves import FallLimits
from firstcourse.plan import LevelPoint
from firstcourse.showers.fall_planes import level_floor, run_for_rise, single_floor
from firstcourse.showers.falls import choose_rise
from firstcourse.showers.valley_levels import valley_levels
from firstcourse.units import inches, ticks_from_mm

FOOT = 12.0
US = FallLimits(least=0.25 / FOOT, greatest=0.5 / FOOT)
AU = FallLimits(least=1 / 80, greatest=1 / 50)


def rectangle(length: float, width: float) -> tuple[tuple[float, float], ...]:
    return ((0.0, 0.0), (length, 0.0), (length, width), (0.0, width))


def centred(length: float, width: float, rise: float = 1.0):
    return level_floor(rectangle(length, width), ((length / 2, width / 2),), rise)


def test_36_in_square_keeps_the_least_fall_on_its_diagonal():
    choice = choose_rise(centred(36, 36), US)
    assert choice.least_rise_flow == pytest.approx(0.53033, abs=0.0005)
    floor = centred(36, 36, choice.least_rise_flow)
    assert [height for _, height in floor.perimeter] == pytest.approx([0.53033] * 4, abs=0.0005)
    assert floor.least_plane * FOOT == pytest.approx(0.35355, abs=0.0005)
    assert floor.least_flow * FOOT == pytest.approx(0.25, abs=0.0005)
    assert choice.kept == "flow"


def test_36_in_square_is_half_as_high_half_way_down_its_valleys():
    # A plane through the drain and a level side: heights grow in step with the way from the drain.
    floor = level_floor(rectangle(36 * 25.4, 36 * 25.4), ((18 * 25.4, 18 * 25.4),), 0.53033 * 25.4)
    drain, *middles = valley_levels(floor, _corners(floor), inches(24))
    assert (drain.at, drain.height) == ((inches(18), inches(18)), 0)
    assert sorted(point.at for point in middles) == [(inches(u), inches(v)) for u in (9, 27) for v in (9, 27)]
    assert [point.height for point in middles] == pytest.approx([0.53033 / 2 * 25.4 * 640] * 4, abs=1)


def test_a_longer_valley_has_a_point_on_every_part():
    # 30 x 16 in from the centre to a corner: a valley of 34 in, with points every 11 1/3 in where 12 is allowed.
    floor = level_floor(rectangle(60 * 25.4, 32 * 25.4), ((30 * 25.4, 16 * 25.4),), 0.625 * 25.4)
    points = valley_levels(floor, _corners(floor), inches(12))
    assert len(points) == 1 + 4 * 2
    heights = sorted({point.height for point in points})
    assert heights == pytest.approx([0, 0.625 / 3 * 25.4 * 640, 0.625 * 2 / 3 * 25.4 * 640], abs=1)


def _corners(floor):
    return tuple(
        LevelPoint(at=(ticks_from_mm(u), ticks_from_mm(v)), height=ticks_from_mm(height), kind="corner")
        for (u, v), height in floor.perimeter
    )


def test_1800_by_900_mm_cannot_comply_in_australia():
    choice = choose_rise(centred(1800, 900), AU)
    assert choice.least_rise_planes == pytest.approx(11.25, abs=0.001)
    assert choice.greatest_rise == pytest.approx(9.0, abs=0.001)
    assert choice.kept == "none"


def test_longest_shower_that_can_comply_in_australia_is_one_and_six_tenths_as_long_as_wide():
    assert choose_rise(centred(1600, 1000), AU).kept == "planes"
    assert choose_rise(centred(1602, 1000), AU).kept == "none"


def test_60_by_32_in_complies_in_the_states():
    choice = choose_rise(centred(60, 32), US)
    assert choice.least_rise_planes == pytest.approx(0.625, abs=0.0005)
    assert choice.greatest_rise == pytest.approx(0.66667, abs=0.0005)
    assert choice.kept == "planes"


def test_72_by_32_in_fails_in_the_states():
    choice = choose_rise(centred(72, 32), US)
    assert choice.least_rise_planes == pytest.approx(0.75, abs=0.0005)
    assert choice.greatest_rise == pytest.approx(0.66667, abs=0.0005)
    assert choice.kept == "none"
    assert choose_rise(centred(64, 32), US).kept == "planes"


def test_linear_drain_at_one_end_of_60_in():
    floor = single_floor(rectangle(60, 36), ((0.0, 36.0), (0.0, 0.0)), US.least)
    assert floor.rise == pytest.approx(1.25, abs=0.0001)
    assert len(floor.planes) == 1
    assert floor.folds == ()
    assert floor.standing() == ()


@pytest.mark.parametrize(("fall", "feet"), [(0.5, 4.0), (0.25, 8.0)])
def test_run_from_drain_to_doorway_that_gains_2_in(fall, feet):
    assert run_for_rise(2.0, fall / FOOT) / FOOT == pytest.approx(feet, abs=0.0001)


def test_valley_slope_of_any_rectangle_is_rise_over_half_diagonal():
    floor = centred(60, 32, 0.625)
    assert len(floor.valleys) == 4
    for valley in floor.valleys:
        assert valley.fall == pytest.approx(0.625 / math.hypot(30, 16), rel=1e-9)
        assert valley.turn == pytest.approx(math.hypot(0.625 / 30, 0.625 / 16), rel=1e-9)


def test_volume_over_a_level_perimeter_is_two_thirds_of_its_box():
    # The water that the falls hold is a pyramid, a third of base times height.
    floor = centred(36, 48, 0.75)
    assert floor.volume(1.5) == pytest.approx(36 * 48 * (1.5 + 0.75 * 2 / 3), rel=1e-9)
