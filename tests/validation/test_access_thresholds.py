"""Steps at doorways: ADA Standards 303 and 405.2, Approved Document M, ABCB Livable Housing 2.2; all known = read.

The first in public copies, the others as quoted by a supplier and a code tool. Values exact, no tolerance.
"""

import datetime

import pytest

from firstcourse.grounds import Doorway, judge_doorway
from firstcourse.layers import Layer
from firstcourse.rules import load_rules
from firstcourse.units import Tape
from said import worked

DAY = datetime.date(2026, 11, 25)


@pytest.mark.parametrize(
    ("practice", "step_in", "code", "profile"),
    [
        ("us", 0.25, None, "none, or a straight edge trim"),
        ("us", 0.26, "SUI-601", "bevelled reducer at least 14 mm long (1 in 2)"),
        ("us", 0.5, "SUI-601", "bevelled reducer at least 26 mm long (1 in 2)"),
        ("us", 0.51, "SUI-602", "ramped threshold at least 156 mm long (1 in 12)"),
        ("uk", 5 / 25.4, None, "none, or a straight edge trim"),
        ("uk", 15 / 25.4, "SUI-601", "bevelled reducer at least 30 mm long (1 in 2)"),
        ("uk", 16 / 25.4, "SUI-602", "ramped threshold at least 192 mm long (1 in 12)"),
        ("au", 0.0, None, "none, or a straight edge trim"),
        ("au", 5 / 25.4, "SUI-601", "bevelled reducer at least 10 mm long (1 in 2)"),
        ("au", 20 / 25.4, "SUI-602", "ramped threshold at least 160 mm long (1 in 8)"),
    ],
)
def test_what_a_step_asks_for(practice, step_in, code, profile):
    layer = (Layer(name="tile", thickness_in=step_in, density_kg_m3=2350),)
    findings, working = judge_doorway(
        load_rules(DAY, practice), layer, Doorway(ref="bath/floor/door/door", other_floor_in=0.0), Tape.MM
    )
    assert [finding.code for finding in findings] == ([] if code is None else [code])
    assert worked(working, Tape.MM).values["profile"] == profile
