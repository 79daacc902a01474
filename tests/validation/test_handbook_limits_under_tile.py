"""Trade handbooks on what tile asks of a frame: stone, engineered joists, dry studs. Known = read, as quoted.

Printed values are whole numbers, so they must be equal, and both the finish's limit and the code's are checked.
"""

import datetime

import pytest

from firstcourse.frames.floors import Finish, FloorInput, check_floor
from firstcourse.frames.panels import Panel
from firstcourse.layers import Layer
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
TILE = (Layer(name="tile", thickness_in=0.375, density_kg_m3=2350),)


def live_limits(**known):
    floor = FloorInput(
        ref="bath/floor",
        span_in=120,
        spacing_in=16,
        panel=Panel(layers=("23/32",)),
        layers=TILE,
        **known,
    )
    return {check.name: check.limit for check in check_floor(RULES, floor) if check.name.startswith("live")}


@pytest.mark.parametrize(
    ("known", "finish"),
    [
        ({"size": "2x10"}, 360),
        ({"stiffness": 2e8}, 480),
        ({"size": "2x10", "finish": Finish.STONE}, 720),
        ({"stiffness": 2e8, "finish": Finish.STONE}, 720),
    ],
    ids=["sawn", "ntca-ijoist-480", "nsi-stone-720", "nsi-stone-720 on engineered joists"],
)
def test_the_finish_and_the_code_are_both_checked(known, finish):
    assert live_limits(**known) == {"live_deflection_finish": finish, "live_deflection_code": 360}


def test_moisture_of_studs():
    """stud-moisture: ANSI A108.11, 4.1."""
    assert RULES.number("moisture.wood.max") == 19
