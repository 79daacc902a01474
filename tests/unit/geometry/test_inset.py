import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon

from firstcourse.geometry import Grid, bounds, from_shapely, grown, inset, rectangle, sides

MARK = 1_016  # 1/16 in
GRID = Grid(origin=(0, 0), graduation=MARK)
L_SHAPE = ((0, 0), (90_000, 0), (90_000, 50_000), (40_000, 50_000), (40_000, 80_000), (0, 80_000))


def test_sides_along_an_axis_land_on_the_grid():
    ((ring, holes),) = from_shapely(inset(rectangle(0, 0, 100_000, 60_001), (2_032,) * 4, GRID))
    assert holes == ()
    left, lower, right, upper = bounds(ring)
    assert (left, lower) == (2_032, 2_032)
    assert right % MARK == 0 and upper % MARK == 0
    assert 2_032 <= 100_000 - right < 2_032 + MARK
    assert 2_032 <= 60_001 - upper < 2_032 + MARK


def test_every_side_keeps_its_own_gap():
    gaps = (4_064, 2_032, 0, 2_032)
    ((ring, _),) = from_shapely(inset(rectangle(0, 0, 101_600, 60_960), gaps, GRID))
    assert bounds(ring) == (2_032, 4_064, 99_568, 60_960)


def test_reflex_corner_is_kept_square():
    ((ring, _),) = from_shapely(inset(L_SHAPE, (2_032,) * 6, Grid(origin=(0, 0), graduation=1)))
    assert (37_968, 47_968) in ring
    assert len(ring) == 6


def test_nothing_is_left_of_what_is_all_gap():
    assert from_shapely(inset(rectangle(0, 0, 4_000, 60_000), (2_032,) * 4, GRID)) == []


def test_opening_grows_outwards_to_the_grid():
    ((ring, _),) = from_shapely(grown(rectangle(10_000, 10_000, 30_001, 20_000), 2_032, GRID))
    left, lower, right, upper = bounds(ring)
    for gap in (10_000 - left, 10_000 - lower, right - 30_001, upper - 20_000):
        assert 2_032 <= gap < 2_032 + MARK
    assert all(value % MARK == 0 for value in bounds(ring))


@given(
    st.lists(st.integers(-9_000, 9_000), min_size=8, max_size=8),
    st.lists(st.integers(0, 6_000), min_size=4, max_size=4),
)
def test_no_gap_of_a_tapered_outline_is_ever_less(shift, gaps):
    base = ((0, 0), (900_000, 0), (900_000, 700_000), (0, 700_000))
    outline = tuple((u + shift[2 * i], v + shift[2 * i + 1]) for i, (u, v) in enumerate(base))
    shape = inset(outline, tuple(gaps), GRID)
    ((ring, _),) = from_shapely(shape)
    for (a, b), gap in zip(sides(outline), gaps, strict=True):
        away = LineString([a, b]).distance(Polygon(ring))
        assert away >= gap - 1e-6
        assert away < gap + MARK + 3


@given(st.floats(0, 2 * math.pi), st.integers(5_000, 60_000))
def test_no_gap_round_a_turned_opening_is_ever_less(angle, size):
    c, s = math.cos(angle), math.sin(angle)
    ring = tuple((round(c * u - s * v), round(s * u + c * v)) for u, v in rectangle(0, 0, size, 5_000))
    ((outer, _),) = from_shapely(grown(ring, 2_032, GRID))
    assert Polygon(outer).exterior.distance(Polygon(ring)) >= 2_032 - 1e-6


@pytest.mark.parametrize("gap", [0, 1, 2_032])
def test_inset_lies_within_the_outline(gap):
    assert shapely.covers(Polygon(L_SHAPE), inset(L_SHAPE, (gap,) * 6, GRID))
