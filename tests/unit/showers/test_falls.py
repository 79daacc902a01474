"""Falls: planes cover the floor and meet, water finds the drain, and limits choose the rise."""

import math
import random

import pytest
from shapely import Point, Polygon
from shapely.ops import unary_union

from firstcourse.details.shelves import FallLimits, drop_of_shelf
from firstcourse.errors import InputValueError
from firstcourse.showers.fall_planes import (
    FallingFloor,
    HiddenFromDrainError,
    level_floor,
    single_floor,
    square_floor,
)
from firstcourse.showers.falls import choose_rise, drain_places, drain_ratio, largest_tile, nearest_drain

US = FallLimits(least=1 / 48, greatest=1 / 24)
AU = FallLimits(least=1 / 80, greatest=1 / 50)


def rectangle(length: float, width: float) -> tuple[tuple[float, float], ...]:
    return ((0.0, 0.0), (length, 0.0), (length, width), (0.0, width))


L_SHAPE = ((0.0, 0.0), (1500.0, 0.0), (1500.0, 900.0), (900.0, 900.0), (900.0, 1500.0), (0.0, 1500.0))
U_SHAPE = (
    (0.0, 0.0), (1500.0, 0.0), (1500.0, 1500.0), (1000.0, 1500.0), (1000.0, 500.0), (500.0, 500.0),
    (500.0, 1500.0), (0.0, 1500.0),
)  # fmt: skip


def proven(floor: FallingFloor) -> None:
    """Planes tile the floor, heights agree where they meet, and from everywhere water runs down to the drain."""
    shapes = [Polygon(plane.ring) for plane in floor.planes]
    whole = Polygon(floor.outline)
    assert sum(shape.area for shape in shapes) == pytest.approx(whole.area, rel=1e-6)
    assert unary_union(shapes).symmetric_difference(whole).area < 1.0
    for plane in floor.planes:
        for at in plane.ring:
            heights = [
                other.height(at)
                for other, shape in zip(floor.planes, shapes, strict=True)
                if shape.distance(Point(at)) < 1e-3
            ]
            assert max(heights) - min(heights) < 1e-2 * floor.greatest_plane + 1e-9
    for end in floor.drain:
        assert floor.height(end) == pytest.approx(0.0, abs=1e-6)
    assert floor.standing() == ()


def test_level_perimeter_round_a_drain_off_centre():
    floor = level_floor(rectangle(900, 1200), ((300.0, 500.0),), 20.0)
    proven(floor)
    assert {round(height, 9) for _, height in floor.perimeter} == {20.0}
    assert sorted(plane.fall for plane in floor.planes) == pytest.approx([20 / 700, 20 / 600, 20 / 500, 20 / 300])
    assert len(floor.valleys) == 4


@pytest.mark.parametrize("seed", range(12))
def test_level_perimeter_of_any_convex_floor(seed):
    chance = random.Random(seed)
    angles = sorted(chance.uniform(0, 2 * math.pi) for _ in range(chance.randint(3, 9)))
    outline = tuple((1000 + 800 * math.cos(at), 1000 + 800 * math.sin(at)) for at in angles)
    middle = Polygon(outline).centroid
    floor = level_floor(outline, ((middle.x, middle.y),), 25.0)
    proven(floor)
    assert all(fold.valley for fold in floor.folds)


def test_an_l_shape_has_a_ridge_at_its_inner_corner():
    floor = level_floor(L_SHAPE, ((450.0, 450.0),), 25.0)
    proven(floor)
    (ridge,) = [fold for fold in floor.folds if not fold.valley]
    assert ridge.high == (900.0, 900.0)
    proven(square_floor(L_SHAPE, ((450.0, 450.0),), 1 / 60))


def test_a_drain_that_does_not_see_the_floor_is_refused():
    for make in (level_floor, square_floor):
        with pytest.raises(HiddenFromDrainError):
            make(U_SHAPE, ((250.0, 1200.0),), 1.0)
    with pytest.raises(HiddenFromDrainError):
        level_floor(rectangle(900, 900), ((1000.0, 450.0),), 10.0)


def test_a_linear_drain_in_the_floor_takes_two_planes_and_two_ends():
    floor = level_floor(rectangle(1500, 900), ((450.0, 450.0), (1050.0, 450.0)), 15.0)
    proven(floor)
    assert sorted(len(plane.ring) for plane in floor.planes) == [3, 3, 4, 4]
    assert len(floor.valleys) == 4
    assert floor.least_flow == pytest.approx(15 / math.hypot(450, 450))
    assert {round(height, 9) for _, height in floor.perimeter} == {15.0}


def test_a_linear_drain_askew_still_takes_flat_planes():
    proven(level_floor(rectangle(1500, 1000), ((450.0, 400.0), (1050.0, 600.0)), 15.0))


def test_a_linear_drain_along_a_whole_wall_makes_one_plane_either_way():
    drain = ((0.0, 0.0), (900.0, 0.0))
    single = single_floor(rectangle(900, 1200), drain, 1 / 60)
    level = level_floor(rectangle(900, 1200), drain, 20.0)
    for floor in (single, level):
        proven(floor)
        assert len(floor.planes) == 1
        assert floor.rise == pytest.approx(20.0)
        assert floor.perimeter[0][1] == floor.perimeter[1][1] == 0.0


def test_a_drain_from_wall_to_wall_takes_two_planes():
    floor = single_floor(rectangle(900, 1800), ((0.0, 600.0), (900.0, 600.0)), 1 / 80)
    proven(floor)
    assert [round(height, 6) for _, height in floor.perimeter] == [7.5, 7.5, 0.0, 15.0, 15.0, 0.0]


def test_water_stands_beside_a_drain_that_is_shorter_than_its_wall():
    floor = single_floor(rectangle(900, 1200), ((100.0, 0.0), (900.0, 0.0)), 1 / 60)
    assert floor.standing() == ((0.0, 0.0),)


def test_a_short_drain_in_the_middle_leaves_a_level_valley():
    floor = single_floor(rectangle(900, 1200), ((200.0, 600.0), (700.0, 600.0)), 1.0)
    assert floor.standing() == ((900.0, 600.0), (0.0, 600.0))
    choice = choose_rise(floor, US)
    assert choice.kept == "planes"
    assert choice.least_rise_flow == math.inf


def test_a_single_plane_asks_for_a_linear_drain():
    with pytest.raises(InputValueError, match="two ends"):
        single_floor(rectangle(900, 900), ((450.0, 450.0),), 0.02)


def test_even_falls_let_the_perimeter_rise_along_the_long_walls():
    floor = square_floor(rectangle(1800, 900), ((900.0, 450.0),), 1 / 60)
    proven(floor)
    assert {round(plane.fall, 9) for plane in floor.planes} == {round(1 / 60, 9)}
    assert floor.least_flow == pytest.approx(1 / 60 / math.sqrt(2))
    heights = {(round(u), round(v)): height for (u, v), height in floor.perimeter}
    assert heights[0, 0] == pytest.approx(15.0)
    assert [heights[450, 0], heights[1350, 900]] == pytest.approx([7.5, 7.5])
    assert choose_rise(floor, AU).kept == "flow"


def test_volume_follows_the_planes():
    floor = single_floor(rectangle(900, 1200), ((0.0, 0.0), (900.0, 0.0)), 1 / 60)
    assert floor.volume(30.0) == pytest.approx(900 * 1200 * (30 + 10))


def test_rise_goes_up_to_the_tape_where_the_limits_leave_room():
    floor = level_floor(rectangle(914.4, 914.4), ((457.2, 457.2),), 1.0)
    sixteenth = 25.4 / 16
    choice = choose_rise(floor, US, step=sixteenth)
    assert choice.rise == pytest.approx(9 * sixteenth)
    assert choice.kept == "flow"
    tight = FallLimits(least=1 / 48, greatest=1 / 48 * math.sqrt(2) * 1.001)
    assert choose_rise(floor, tight, step=sixteenth).rise == choose_rise(floor, tight).rise


def test_without_a_greatest_fall_every_floor_complies():
    floor = level_floor(rectangle(3000, 500), ((1500.0, 250.0),), 1.0)
    choice = choose_rise(floor, FallLimits(least=1 / 80))
    assert choice.kept == "flow"
    assert choice.greatest_rise == math.inf


def test_a_drain_too_far_off_centre_is_moved_the_least_that_does():
    outline = rectangle(1200, 900)
    drain = (250.0, 450.0)
    assert drain_ratio(outline, drain) == pytest.approx(950 / 250)
    places = list(drain_places(outline, (0.0, 0.0), ((1.0, 0.0), (0.0, 1.0)), 25.0))
    place, least = nearest_drain(outline, drain, places, US)
    assert place == (400.0, 450.0)
    assert least == pytest.approx(600 / 450)
    assert nearest_drain(rectangle(1800, 900), (900.0, 450.0), places, AU)[0] is None


def test_the_drain_sees_nothing_from_outside():
    assert drain_ratio(rectangle(900, 900), (1000.0, 450.0)) == math.inf


def test_a_two_inch_tile_follows_a_usual_shower_and_a_foot_does_not():
    floor = level_floor(rectangle(36, 36), ((18.0, 18.0),), 0.5625)
    side = largest_tile(floor, 1 / 32)
    assert side == pytest.approx(4 / 32 / (0.5625 / 18 * math.sqrt(2)))
    assert 2 < side < 3
    assert largest_tile(single_floor(rectangle(36, 36), ((0.0, 0.0), (36.0, 0.0)), 0.02), 1 / 32) == math.inf


def test_a_bench_drops_by_its_depth_times_the_limits():
    assert drop_of_shelf(12.0, US) == pytest.approx((0.25, 0.5))
    assert drop_of_shelf(12.0, FallLimits(least=1 / 80))[1] == math.inf
