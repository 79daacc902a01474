"""Backer standards, their traps, and classes of tile: codes and standards as read in quotation; no tolerance.

IBC Table 2509.2 and 2509.3 (known = read, a city's public edition), IRC R702.4 (known = read, trade press),
TCNA Handbook B415 (known = read, explained by a trade foundation), ANSI A137.1 / ASTM C373 (known = read, a
supplier's page), ISO 13006 (known = read, a research reproduction), ANSI A108.11 (known = read, a trade
foundation's summary).
"""

import datetime
from dataclasses import replace

import pytest

from firstcourse.grounds import judge_exposure
from firstcourse.grounds.exposure import ExposedSurface, Zone, boards_for
from firstcourse.grounds.materials import tile_class
from firstcourse.rules import load_rules

DAY = datetime.date(2026, 11, 25)
RULES = load_rules(DAY)


def test_boards_of_wet_walls_are_those_of_the_code():
    """IBC Table 2509.2: ASTM C1178, ASTM C1288, ISO 8336 category C, ASTM C1325."""
    standards = {RULES.text(f"exposure.standard.{board}") for board in boards_for(RULES, Zone.WET)}
    assert standards == {"ASTM C1178", "ASTM C1288 or ISO 8336 category C", "ASTM C1325"}


@pytest.mark.parametrize("zone", [Zone.WET, Zone.STEAM])
def test_water_resistant_gypsum_is_refused_where_water_reaches_it(zone):
    """IBC 2509.3: not where directly exposed to water or to continuous high humidity."""
    wall = ExposedSurface(
        ref="bath/wall/A-B", zone=zone, board="greenboard", membrane_on_face=True, membrane="low_perm"
    )
    assert [finding.code for finding in judge_exposure(RULES, wall)] == ["SUI-501"]


def test_water_resistant_gypsum_is_refused_over_a_vapour_retarder():
    """IBC 2509.3: prohibited."""
    wall = ExposedSurface(ref="bath/wall/A-B", zone=Zone.DAMP, board="greenboard", retarder_behind=True)
    assert "SUI-508" in [finding.code for finding in judge_exposure(RULES, wall)]


def test_year_of_the_greenboard_rule():
    """IRC R702.4: 2006."""
    assert RULES.number("exposure.greenboard.last_year") == 2006


def test_exactly_one_barrier():
    """TCNA B415: a retarder behind or a membrane on the face, never both."""
    wall = ExposedSurface(ref="bath/wall/A-B", zone=Zone.WET, board="cement_board")
    by_barriers = {
        (face, behind): [
            finding.code
            for finding in judge_exposure(RULES, replace(wall, membrane_on_face=face, retarder_behind=behind))
        ]
        for face in (False, True)
        for behind in (False, True)
    }
    assert by_barriers == {
        (False, False): ["SUI-503"],
        (True, False): [],
        (False, True): [],
        (True, True): ["SUI-502"],
    }


def test_wood_moisture():
    """ANSI A108.11: 19 percent."""
    assert RULES.number("moisture.wood.max") == 19


@pytest.mark.parametrize(
    ("practice", "limits"),
    [("us", (0.5, 3.0, 7.0, 20.0)), ("uk", (0.5, 3.0, 6.0, 10.0)), ("au", (0.5, 3.0, 6.0, 10.0))],
)
def test_absorption_classes(practice, limits):
    """ANSI A137.1: 0.5, 3, 7, 20 percent. ISO 13006 groups BIa, BIb, BIIa, BIIb: 0.5, 3, 6, 10 percent."""
    rules = load_rules(DAY, practice)
    names = ("impervious", "vitreous", "semi_vitreous", "non_vitreous")
    assert tuple(rules.number(f"tile.absorption.{name}") for name in names) == limits
    assert tuple(tile_class(rules, limit) for limit in limits) == names


def test_wet_friction():
    """ANSI A137.1-2012, now A326.3: 0.42 for level interior floors walked on wet."""
    assert RULES.number("tile.slip.dcof") == 0.42


def test_steam_asks_low_permeance():
    """Membrane makers quoting the TCNA Handbook (known = read): at most 0.5 perm by ASTM E96 method E."""
    assert RULES.number("exposure.steam.perm_max") == 0.5
    steam = ExposedSurface(ref="bath/wall/A-B", zone=Zone.STEAM, board="cement_board", membrane_on_face=True)
    assert [finding.code for finding in judge_exposure(RULES, steam)] == ["SUI-509"]
    assert judge_exposure(RULES, replace(steam, membrane="low_perm")) == ()
