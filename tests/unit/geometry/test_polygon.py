import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point as ShapelyPoint
from shapely import Polygon

from firstcourse.geometry import (
    area2,
    as_ring,
    axis_of,
    bounds,
    circle_ring,
    clockwise,
    counter_clockwise,
    from_shapely,
    is_simple,
    moved,
    rectangle,
    to_shapely,
)

BOX = rectangle(0, 0, 10_000, 6_000)


def test_area_is_exact_and_signed():
    assert area2(BOX) == 2 * 10_000 * 6_000
    assert area2(clockwise(BOX)) == -area2(BOX)
    far = moved(BOX, 64_000_001, 63_999_999)
    assert area2(far) == area2(BOX)


def test_turning_a_ring_keeps_its_first_point():
    turned = clockwise(BOX)
    assert turned[0] == BOX[0]
    assert counter_clockwise(turned) == BOX


def test_bounds_and_axes():
    assert bounds(((3, 9), (-4, 2), (7, 5))) == (-4, 2, 7, 9)
    assert axis_of((0, 5), (9, 5)) == "u"
    assert axis_of((4, 5), (4, 0)) == "v"
    assert axis_of((0, 0), (9, 1)) == ""


@pytest.mark.parametrize(
    "ring",
    [
        ((0, 0), (10, 10), (10, 0), (0, 10)),
        ((0, 0), (10, 0)),
        ((0, 0), (10, 0), (20, 0)),
        ((0, 0), (10, 0), (10, 10), (5, 0), (0, 10)),
    ],
    ids=["bow-tie", "two points", "flat", "touches itself"],
)
def test_rings_that_bound_no_single_area(ring):
    assert not is_simple(ring)


def test_doubled_and_straight_points_go():
    ring = ((0, 0), (0, 0), (5, 0), (10, 0), (10, 6), (0, 6), (0, 3), (0, 0))
    assert as_ring(ring) == ((0, 0), (10, 0), (10, 6), (0, 6))


def test_shapes_come_back_in_one_order_whatever_made_them():
    left, right = rectangle(0, 0, 5_000, 5_000), rectangle(9_000, 0, 12_000, 5_000)
    one = to_shapely(left).union(to_shapely(right))
    other = Polygon(right[2:] + right[:2]).union(Polygon(tuple(reversed(left))))
    assert from_shapely(one) == from_shapely(other) == [(left, ()), (right, ())]


def test_slivers_lines_and_points_are_dropped():
    touching = to_shapely(BOX).intersection(to_shapely(rectangle(10_000, 0, 12_000, 6_000)))
    assert from_shapely(touching) == []
    assert from_shapely(Polygon(rectangle(0, 0, 10, 10))) == []


def test_holes_run_clockwise():
    ((outer, holes),) = from_shapely(to_shapely(BOX, [rectangle(2_000, 2_000, 4_000, 4_000)]))
    assert outer == BOX
    assert [area2(hole) for hole in holes] == [-2 * 2_000 * 2_000]


@given(st.integers(3_000, 700_000), st.integers(300, 2_000), st.integers(-50_000_000, 50_000_000))
def test_circle_ring_is_never_inside_the_circle(radius, excess, at):
    ring = circle_ring((at, -at), radius, excess=excess)
    centre = ShapelyPoint(at, -at)
    assert Polygon(ring).exterior.distance(centre) >= radius - 1e-6
    assert max(math.dist((at, -at), point) for point in ring) <= radius + max(excess, radius * 0.0004)


def test_a_hole_within_a_tick_of_the_outline_opens_into_it():
    # The lower side climbs by less than the hole's left corner lies above it: rounded alone, they would cross.
    outline = [(0, 0), (480_001, 9_007), (480_001, 900_000), (0, 900_000)]
    at = (160_000.4, 160_000.4 * 9_007 / 480_001 + 0.05)
    shape = Polygon(outline, [[at, (160_000, 300_000), (260_000, 300_000)]])
    assert shape.is_valid
    rounded = Polygon(outline, [[tuple(round(value) for value in at), (160_000, 300_000), (260_000, 300_000)]])
    assert not rounded.is_valid
    found = from_shapely(shape)
    assert all(to_shapely(outer, holes).is_valid for outer, holes in found)
    assert sum(to_shapely(outer, holes).area for outer, holes in found) == pytest.approx(shape.area, rel=1e-6)
