"""Steps between tiles of the NSW Guide to Standards and Tolerances, clause 12.9 (known = read)."""

import datetime

import pytest

from firstcourse.job.tile import ChosenTile
from firstcourse.rules import load_rules
from firstcourse.tiles.joints import step_allowed
from firstcourse.units import mm

RULES = load_rules(datetime.date(2026, 11, 25), "au")


@pytest.mark.parametrize(
    ("edges", "joint", "expected"),
    [("pressed", 5, 2), ("rectified", 5, 1.5), ("pressed", 3, 1), ("rectified", 3, 1)],
)
def test_step_between_tiles(edges: str, joint: float, expected: float) -> None:
    """2 mm; 1.5 mm for tiles ground flat; 1 mm for joints of 3 mm or less."""
    tile = ChosenTile.model_validate(
        {"id": "t", "size": ("300 mm", "300 mm"), "thickness": "8 mm", "edges": edges}
    )
    assert step_allowed(tile, mm(joint), RULES)[0] == mm(expected)
