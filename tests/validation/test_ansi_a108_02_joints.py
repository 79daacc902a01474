"""Joints, shift and step against ANSI A108.02 as quoted by trade associations (known = read).

Sections 4.3.7 (lippage), 4.3.8 (joints) and 4.3.8.2 (offset); the two worked examples are of the association's
article on the minimum joint. Lengths are whole ticks, so comparisons are exact.
"""

import datetime
from fractions import Fraction
from typing import Any

import pytest

from firstcourse.job.tile import ChosenTile, Tiling
from firstcourse.rules import load_rules
from firstcourse.tiles.joints import largest_offset, step_allowed, tile_joint
from firstcourse.units import inches

RULES = load_rules(datetime.date(2026, 11, 25))


def tile(width: float, height: float, **more: Any) -> ChosenTile:
    return ChosenTile.model_validate(
        {"id": "t", "size": (f"{width} in", f"{height} in"), "thickness": "3/8 in", **more}
    )


def test_three_times_the_size_spread() -> None:
    """4.3.8, printed example: a spread of 1/16 in asks for 3/16 in."""
    choice = tile_joint(tile(12, 12, size_spread="1/16 in"), Tiling(tile="t"), RULES)
    assert choice.least == inches(0.1875)
    assert RULES.number("tile.joint.spread_factor") == 3


def test_the_narrowest_in_any_case() -> None:
    assert RULES.ticks("tile.joint.min_floor") == RULES.ticks("tile.joint.min_wall") == inches(0.0625)


def test_a_rectified_plank_in_offset() -> None:
    """Worked example: 24 in rectified plank, spread 1/64 in, edge warpage 1/32 in: 1/8 + 1/32 = 5/32 in."""
    plank = tile(24, 6, edges="rectified", size_spread="1/64 in", warpage="1/32 in")
    choice = tile_joint(plank, Tiling(tile="t", pattern="running", offset=Fraction(1, 3)), RULES)
    assert choice.joint == choice.least == inches(0.15625)


def test_a_calibrated_plank_in_offset() -> None:
    """4.3.8: 3/16 in plus edge warpage."""
    plank = tile(24, 6, size_spread="1/64 in", warpage="1/32 in")
    choice = tile_joint(plank, Tiling(tile="t", pattern="running", offset=Fraction(1, 3)), RULES)
    assert choice.least == inches(0.1875 + 0.03125)


@pytest.mark.parametrize(("side", "percent"), [(15, 50), (16, 33)])
def test_a_third_at_most_over_fifteen_inches(side: float, percent: float) -> None:
    assert largest_offset(tile(side, 6), RULES) == percent


@pytest.mark.parametrize(
    ("joint", "kind", "expected"),
    [(0.1875, "ceramic", 0.03125), (0.25, "ceramic", 0.0625), (0.25, "stone", 0.03125)],
)
def test_step_allowed(joint: float, kind: str, expected: float) -> None:
    """4.3.7: 1/32 in below a 1/4 in joint, 1/16 in from there on; stone 1/32 in."""
    assert step_allowed(tile(12, 12, kind=kind), inches(joint), RULES)[0] == inches(expected)


def test_the_measured_warpage_is_added() -> None:
    """4.3.7: in addition to the tile's actual warpage, not the most that its standard would allow."""
    assert step_allowed(tile(12, 12, warpage="1/64 in"), inches(0.1875), RULES)[0] == inches(0.03125 + 0.015625)
