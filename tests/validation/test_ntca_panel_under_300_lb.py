"""NTCA Reference Manual 2024/2025, chapter 2: two layers of 19/32 in plywood on joists at 16 in.

Known = read, published: about L/400 under one 300 lb load at mid-bay. The tolerance of 60 on the ratio is the
source's "approximately". Panel stiffness is from memory (APA D510), so the other floors are a ranking only.
The same source gives about L/1000 under uniform load; a simple span with these stiffnesses is stiffer, so
this program relies on the point load, which governs in every case below.
"""

import datetime

import pytest

from firstcourse.rules import load_rules
from firstcourse.suitability.panels import Panel, check_panel, panel_stiffness, point_deflection_in

RULES = load_rules(datetime.date(2026, 11, 25))


def ratio(layers, spacing):
    stiffness = panel_stiffness(RULES, Panel(layers=layers))
    return spacing / point_deflection_in(RULES, stiffness, spacing)


def test_published_floor():
    assert ratio(("19/32", "19/32"), 16) == pytest.approx(400, abs=60)
    assert ratio(("19/32", "19/32"), 16) == pytest.approx(391, abs=1)


@pytest.mark.parametrize(
    ("layers", "spacing", "expected", "passes"),
    [
        (("19/32", "19/32"), 16, 391, True),
        (("23/32", "23/32"), 19.2, 482, True),
        (("1-1/8",), 24, 424, True),
        (("23/32",), 16, 347, False),
        (("19/32",), 16, 195, False),
        (("23/32",), 24, 154, False),
    ],
)
def test_ranking_of_common_floors(layers, spacing, expected, passes):
    """Known = memory, computed; tolerance 1 on the ratio."""
    assert ratio(layers, spacing) == pytest.approx(expected, abs=1)
    even, point, _layer = check_panel(RULES, Panel(layers=layers), spacing, 50)
    assert point.holds is passes
    assert even.found > point.found
