"""Surface tolerances and background masses of UK and Australian practice; exact, no tolerance.

NHBC Standards 9.1.3 (2019) and 9.1.7 (2025) (known = read), NSW Guide to Standards and Tolerances 12.9 (known =
read, quoted), BS 5385-1 guidance (known = read, practitioners and trade press).
"""

import datetime

import pytest

from firstcourse.grounds import judge_exposure
from firstcourse.grounds.exposure import ExposedSurface, Zone
from firstcourse.grounds.flat_enough import ReadGround, judge_ground
from firstcourse.grounds.flatness import Spot, tolerance_for
from firstcourse.rules import load_rules
from firstcourse.units import Tape

DAY = datetime.date(2026, 11, 25)


def ground(hump_mm):
    spots = tuple(
        Spot(u_mm=u, v_mm=v, height_mm=hump_mm if (u, v) == (900, 600) else 0.0)
        for u in (0, 900, 1800)
        for v in (0, 600, 1200)
    )
    return ReadGround(ref="bath/wall/A-B", is_floor=True, tape=Tape.MM, spots=spots, tile_edge_mm=300, area_m2=2.0)


@pytest.mark.parametrize(("practice", "limit"), [("uk", 3), ("au", 4)])
def test_flatness_under_two_metres(practice, limit):
    """NHBC 9.1.7: 3 mm; NSW 12.9: 4 mm, under a 2 m straightedge."""
    rules = load_rules(DAY, practice)
    tolerance = tolerance_for(rules, 300)
    assert (tolerance.long_mm, tolerance.long_reach_mm) == (limit, 2000)
    assert not judge_ground(rules, ground(limit)).findings
    assert judge_ground(rules, ground(limit + 0.1)).findings


def test_a_wall_accepted_by_the_plasterer_is_not_flat_enough_for_tile():
    """NHBC 9.1.3 accepts 5 mm; NHBC 9.1.7 asks 3 mm of the tile: the hand-over trap."""
    rules = load_rules(DAY, "uk")
    accepted = rules.number("surface.accepted.wall")
    assert accepted == 5
    assert [f.code for f in judge_ground(rules, ground(accepted)).findings] == ["SUI-401", "SUI-403"]


def test_masses_that_backgrounds_carry():
    """BS 5385-1: plasterboard 32, skimmed plaster 20, plywood 30 kg/m²; solid bed above 70 percent."""
    rules = load_rules(DAY, "uk")
    assert [rules.number(f"wall.mass.{name}") for name in ("plasterboard", "plaster", "plywood")] == [32, 20, 30]
    assert rules.number("wall.mass.solid_bed_share") == 70


def test_plywood_walls_are_no_longer_tiled_directly():
    """BS 5385-1:2018; before that, and in other practices, a dry plywood wall was a ground of 30 kg/m²."""
    wall = ExposedSurface(ref="bath/wall/A-B", zone=Zone.DRY, board="plywood")
    for day, practice, codes in (
        (DAY, "uk", ["SUI-519"]),
        (datetime.date(2017, 6, 1), "uk", []),
        (DAY, "us", []),
    ):
        assert [finding.code for finding in judge_exposure(load_rules(day, practice), wall)] == codes
