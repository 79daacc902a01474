"""Movement joints against TCNA Handbook EJ171 as quoted and explained by a trade association (known = read).

Interior widths are those of the 2005 edition. Widths are whole ticks, so comparisons are exact.
"""

import datetime
from typing import Any

import pytest

from firstcourse.plan import SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.tiles.movement import field_spacing
from firstcourse.units import TICKS_PER_FOOT, inches

RULES = load_rules(datetime.date(2026, 11, 25))
FLOOR, WALL = SurfaceKind.FLOOR, SurfaceKind.WALL


@pytest.mark.parametrize(("exposure", "feet"), [("dry", 25), ("moist", 12), ("exterior", 12)])
def test_spacing(exposure: Any, feet: int) -> None:
    """Interior 25 ft; direct sun or moisture 12 ft; exterior 8 to 12 ft."""
    assert field_spacing(FLOOR, RULES, exposure=exposure).limit == feet * TICKS_PER_FOOT


def test_spacing_on_slabs_and_outside_at_its_closest() -> None:
    """12 ft on above-ground slabs; the close end of the exterior range is 8 ft."""
    assert field_spacing(FLOOR, RULES, exposure="slab").limit == 12 * TICKS_PER_FOOT
    assert RULES.ticks("tile.movement.spacing_exterior_close") == 8 * TICKS_PER_FOOT


@pytest.mark.parametrize(
    ("range_f", "at_8_ft", "at_12_ft"), [(100, 0.375, 0.5), (115, 0.4375, 0.5625), (145, 0.5625, 0.6875)]
)
def test_exterior_width_by_yearly_range(range_f: float, at_8_ft: float, at_12_ft: float) -> None:
    """3/8 in at 8 ft, 1/2 in at 12 ft, and 1/16 in for each 15 °F over 100 °F; 115 °F is the printed example."""
    for feet, expected in ((8, at_8_ft), (12, at_12_ft)):
        found = field_spacing(
            FLOOR, RULES, exposure="exterior", yearly_range_f=range_f, wanted=feet * TICKS_PER_FOOT
        )
        assert found.width == inches(expected)


def test_interior_widths() -> None:
    """Floor as the grout joint and not below 1/4 in; glazed wall tile and mosaic not below 1/8 in."""
    assert field_spacing(FLOOR, RULES).width == inches(0.25)
    assert field_spacing(FLOOR, RULES, joint=inches(0.5)).width == inches(0.5)
    assert field_spacing(WALL, RULES).width == inches(0.125)


def test_they_are_required() -> None:
    """EJ171 on changes of plane; ANSI A108.02 4.4.1 and 4.4.2 on joints in the backing: no option."""
    assert RULES.text("tile.movement.change_of_plane") == "required"
    assert "not an option" in RULES.text("tile.movement.required")
    assert RULES.entry("tile.movement.required").locator == "4.4.1 and 4.4.2"
