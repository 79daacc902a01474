"""Steel studs: section tables of a producers' association's technical guide (2024), thickness designations.

Known = read, as copied in a public repository; effective second moments are those for 33 ksi steel. The
program takes a plain channel of the designated thickness, without lips: from 33 mil on it must never be stiffer
than the table, nor less by more than a sixth, which is what lips and the design thickness add.
"""

import datetime

import pytest

from firstcourse.frames.walls import SteelStud, Studs, channel_second_moment, check_studs, stud_stiffness
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
TABLE = [
    ("250S125-33", 2.5, 1.25, 33, 0.175),
    ("250S125-43", 2.5, 1.25, 43, 0.225),
    ("250S125-54", 2.5, 1.25, 54, 0.277),
    ("250S125-68", 2.5, 1.25, 68, 0.334),
    ("250S162-33", 2.5, 1.625, 33, 0.235),
    ("250S162-54", 2.5, 1.625, 54, 0.370),
    ("362S137-33", 3.625, 1.375, 33, 0.479),
    ("362S137-54", 3.625, 1.375, 54, 0.756),
    ("362S162-33", 3.625, 1.625, 33, 0.551),
    ("362S162-43", 3.625, 1.625, 43, 0.710),
    ("362S162-54", 3.625, 1.625, 54, 0.873),
    ("362S162-68", 3.625, 1.625, 68, 1.069),
    ("362S162-97", 3.625, 1.625, 97, 1.435),
]


@pytest.mark.parametrize("row", TABLE, ids=lambda row: row[0])
def test_the_plain_channel_is_never_stiffer_than_the_table(row):
    _name, depth, flange, mils, printed = row
    found = channel_second_moment(depth, flange, mils / 1000)
    assert printed * 5 / 6 <= found <= printed


def test_what_the_table_says_is_taken_as_it_is():
    studs = Studs(height_in=96, spacing_in=16, steel=SteelStud(depth_in=3.625, mils=33, second_moment_in4=0.551))
    assert stud_stiffness(RULES, studs) == pytest.approx(29_500_000 * 0.551)


@pytest.mark.parametrize(
    ("mils", "holds"),
    [(30, False), (33, True)],
    ids=["stud-20ga-drywall-mil", "stud-20ga-structural-mil"],
)
def test_twenty_gauge_is_two_thicknesses_of_which_one_will_do(mils, holds):
    """stud-steel-min, stud-20ga-market-range: the handbook asks 0.033 in, and 20 gauge may be less."""
    studs = Studs(height_in=96, spacing_in=16, steel=SteelStud(depth_in=3.625, mils=mils))
    (thickness,) = [check for check in check_studs(RULES, studs) if check.name == "steel_thickness"]
    assert thickness.holds is holds
    assert RULES.number("wall.steel.min") == 33
    told = RULES.text("wall.steel.gauge_20")
    assert "30 mil" in told and "33 mil" in told and "17 to 33 mil" in told


def test_the_limit_behind_tile():
    """stud-wall-360: the stud alone."""
    assert RULES.number("wall.deflection.tile") == 360
