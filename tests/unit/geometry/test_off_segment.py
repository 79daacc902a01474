"""How far a point lies from a line that ends."""

import math

from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point

from firstcourse.geometry import off_segment

PLACE = st.tuples(st.integers(-(10**7), 10**7), st.integers(-(10**7), 10**7))


def test_beside_it_and_beyond_its_ends() -> None:
    assert off_segment((3, 4), (0, 0), (10, 0)) == 4
    assert off_segment((13, 4), (0, 0), (10, 0)) == 5
    assert off_segment((-3, -4), (0, 0), (10, 0)) == 5


@given(PLACE, PLACE, PLACE)
def test_as_a_library_measures_it(point: tuple[int, int], a: tuple[int, int], b: tuple[int, int]) -> None:
    known = math.dist(point, a) if a == b else LineString([a, b]).distance(Point(point))
    # Products of coordinates of 10^7 ticks (16 m) keep 10^-2 ticks in 53 bits.
    assert math.isclose(off_segment(point, a, b), known, abs_tol=0.01)
