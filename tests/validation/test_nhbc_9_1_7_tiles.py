"""Joints and steps of NHBC Standards 2025, 9.1.7 (known = read), and of BS 5385-1:2018 from memory."""

import datetime

import pytest

from firstcourse.job.tile import ChosenTile, Tiling
from firstcourse.plan import SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.tiles.joints import step_allowed, tile_joint
from firstcourse.units import mm

RULES = load_rules(datetime.date(2026, 11, 25), "uk")


def tile(width: int, height: int, kind: str = "ceramic") -> ChosenTile:
    return ChosenTile.model_validate(
        {
            "id": "t",
            "size": (f"{width} mm", f"{height} mm"),
            "thickness": "8 mm",
            "kind": kind,
            "size_spread": "0.1 mm",
        }
    )


def test_narrowest_joints() -> None:
    """Wall 1.5 mm, smooth stone 2 mm, floor 3 mm."""
    assert RULES.ticks("tile.joint.min_wall") == mm(1.5)
    assert RULES.ticks("tile.joint.min_wall_stone") == mm(2)
    assert RULES.ticks("tile.joint.min_floor") == mm(3)
    assert RULES.entry("tile.joint.min_floor").read != "memory"


@pytest.mark.parametrize(("joint", "expected"), [(3, 1), (6, 1), (6.5, 2)])
def test_step_between_tiles(joint: float, expected: float) -> None:
    """1 mm at joints up to 6 mm, 2 mm above; the warpage is not added."""
    assert step_allowed(tile(300, 300), mm(joint), RULES)[0] == mm(expected)


@pytest.mark.parametrize(("size", "expected"), [((300, 300), 2), ((300, 600), 3), ((100, 650), 3)])
def test_wall_joints_by_size(size: tuple[int, int], expected: float) -> None:
    """BS 5385-1:2018 (memory): 2 mm below 0.1 m² with no side over 600 mm, else 3 mm."""
    choice = tile_joint(tile(*size), Tiling(tile="t"), RULES, kind=SurfaceKind.WALL)
    assert choice.least == mm(expected)
    assert RULES.entry("tile.joint.min_wall_small").read == "memory"
