"""Sealant joints against the design rules of the Construction Waterproofing Handbook, chapter 5 (known = read).

The width from movement is the worked example computed by hand: 6e-6 per K, 150 °F, a panel of 144 in, factor 4.
"""

import datetime

import pytest

from firstcourse.rules import load_rules
from firstcourse.tiles.movement import movement_width, sealant_depth
from firstcourse.units import inches, to_inches

RULES = load_rules(datetime.date(2026, 11, 25))


def test_width_from_movement() -> None:
    """Movement 0.072 in, four times that is 0.288 in."""
    assert to_inches(movement_width(inches(144), 150, RULES)) == pytest.approx(0.288, abs=0.0002)


def test_never_below_the_narrowest() -> None:
    assert movement_width(inches(12), 50, RULES) == inches(0.25)


@pytest.mark.parametrize(("width", "depth"), [(0.25, 0.25), (0.5, 0.5), (0.625, 0.3125), (1.0, 0.5)])
def test_depth(width: float, depth: float) -> None:
    """As deep as wide up to 1/2 in, half the width above, never over 1/2 in."""
    assert sealant_depth(inches(width), RULES) == inches(depth)


def test_factor_and_bounds() -> None:
    assert RULES.number("tile.sealant.movement_factor") == 4
    assert (RULES.ticks("tile.sealant.min_width"), RULES.ticks("tile.sealant.max_width")) == (
        inches(0.25),
        inches(1),
    )


def test_expansion_of_tile() -> None:
    """4e-6 to 8e-6 per K, typical results of EN ISO 10545-8 (known = memory)."""
    assert 4e-6 <= RULES.number("tile.movement.expansion") <= 8e-6
    assert RULES.entry("tile.movement.expansion").read == "memory"
