"""Strips of trapezoids: the parts and stretches that clipping by a rectangle would give."""

import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, box

from firstcourse.boards.strips import Strip


def strip(area: shapely.Geometry) -> Strip:
    return Strip(part for part in shapely.get_parts(area) if part.geom_type == "Polygon")


def test_a_hole_splits_a_strip_into_parts() -> None:
    ring = box(0, 0, 100, 40).difference(box(30, 10, 50, 40))
    assert strip(ring).boxes(0, 100, 0) == ((0, 0, 100, 40),)
    assert strip(ring.intersection(box(0, 10, 100, 40))).boxes(0, 100, 0) == ((0, 10, 30, 40), (50, 10, 100, 40))


def test_parts_that_meet_further_on_are_one() -> None:
    slot = box(0, 0, 100, 40).difference(box(0, 10, 50, 30))
    assert strip(slot).boxes(0, 100, 0) == ((0, 0, 100, 40),)
    assert strip(slot).boxes(0, 50, 0) == ((0, 0, 50, 10), (0, 30, 50, 40))


def test_a_sloped_side_bounds_a_part() -> None:
    wedge = strip(Polygon([(0, 0), (100, 0), (0, 100)]))
    assert wedge.boxes(50, 100, 0) == ((50, 0, 100, 50),)
    assert wedge.boxes(50, 100, 10**6) == ()


@given(
    corners=st.lists(st.tuples(st.integers(0, 60), st.integers(0, 60)), min_size=3, max_size=7, unique=True),
    hole=st.tuples(st.integers(5, 25), st.integers(5, 25)),
    ends=st.tuples(st.integers(0, 60), st.integers(0, 60)),
)
def test_parts_are_those_of_clipping(
    corners: list[tuple[int, int]], hole: tuple[int, int], ends: tuple[int, int]
) -> None:
    u, v = hole
    area = shapely.convex_hull(Polygon(corners)).difference(box(u, v, u + 9, v + 7))
    start, end = sorted(ends)
    clipped = area.intersection(box(start, -1, end, 61)) if end > start else Polygon()
    # No area or edge of whole corners comes near these limits by chance, so rounding cannot tell them apart.
    parts = [part for part in shapely.get_parts(clipped) if shapely.area(part) >= 0.3717]
    expected = [part.bounds for part in parts]
    found = list(strip(area).boxes(start, end, 2 * 0.3717))
    assert len(found) == len(expected)
    for bounds in expected:
        alike = [one for one in found if all(abs(a - b) <= 0.5001 for a, b in zip(one, bounds, strict=True))]
        assert alike
        found.remove(alike[0])
