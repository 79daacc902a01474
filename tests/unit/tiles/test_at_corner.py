"""A start told by the lower left of its area, also where its columns are shifted against each other."""

from fractions import Fraction

import pytest
import shapely

from firstcourse.plan import TileStock
from firstcourse.tiles.handedness import at_corner
from firstcourse.tiles.model import TileArea
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.units import mm

TILE = TileStock(id="t", size=(mm(300), mm(600)), thickness=mm(9), kind="porcelain", joint=mm(3))
AREA = TileArea(area=shapely.box(4.0, 385.0, 885.0, 2133.0), edges=(), wanted=(), uncertainty=0.0)


@pytest.mark.parametrize("offset", [Fraction(1, 2), Fraction(1, 3), Fraction(1, 5)])
@pytest.mark.parametrize("angle", [0, 90])
def test_a_course_s_height_is_kept_whatever_the_shift(offset: Fraction, angle: int) -> None:
    cell = repeat_cell("running", [TILE], 3.0, offset=offset, angle=angle)
    x, y = at_corner(cell, AREA, (-460.0, 42.0), 42.0)
    assert y == pytest.approx(42.0) and x >= 4.0 - 1e-6
    # Where it stands is one of the pattern's own places.
    a, b = cell.step_a, cell.step_b
    cross = a[0] * b[1] - a[1] * b[0]
    dx, dy = x + 460.0, y - 42.0
    for count in ((dx * b[1] - dy * b[0]) / cross, (a[0] * dy - a[1] * dx) / cross):
        assert count == pytest.approx(round(count), abs=1e-6)
