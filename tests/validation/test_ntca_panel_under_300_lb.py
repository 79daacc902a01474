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
    """ntca-two-5-8-concentrated, between-joist-300lb-two-19-32-at-16; tcna-300-lb is the load."""
    assert RULES.number("panel.load.point") == 300
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
    """between-joist-ranking. Known = memory, computed; tolerance 1 on the ratio."""
    assert ratio(layers, spacing) == pytest.approx(expected, abs=1)
    even, point, _layer = check_panel(RULES, Panel(layers=layers), spacing, 50)
    assert point.holds is passes
    assert even.found > point.found


@pytest.mark.parametrize(
    ("layers", "spacing"),
    [(("23/32", "23/32"), 19.2), (("1-1/8",), 24)],
    ids=["ntca-equivalent-19p2", "ntca-equivalent-24"],
)
def test_stacks_said_to_be_as_stiff_pass_too(layers, spacing):
    """Known = read; no figure is printed. Two layers of 7/8 in at 24 in have no stiffness in the rule book."""
    assert ratio(layers, spacing) >= 360


@pytest.mark.parametrize("layer", ["19/32", "23/32"])
@pytest.mark.parametrize("spacing", [19.2, 24])
def test_one_layer_on_wide_joists_is_a_listed_cause_of_cracks(layer, spacing):
    """ntca-single-layer-cause: a single layer, and joists wider than 16 in apart."""
    assert ratio((layer,), spacing) < 360


def test_uniform_load_is_no_worse_than_the_source_says():
    """ntca-two-5-8-uniform: about L/1000 under 10 + 40 psf. Ours is stiffer; the limit of L/360 holds in both."""
    even, _point, _layer = check_panel(RULES, Panel(layers=("19/32", "19/32")), 16, 50)
    assert even.found >= 1000 and even.holds


@pytest.mark.parametrize(
    ("rule", "printed"),
    [("7_16", 78_000), ("15_32", 115_000), ("19_32", 225_000), ("23_32", 400_000)],
    ids=["apa-ei-24-16", "apa-ei-32-16", "apa-ei-40-20", "apa-ei-48-24"],
)
def test_panel_stiffness_by_span_rating(rule, printed):
    """Panel Design Specification D510, Table 4A, oriented strand; known = memory. By subfloor-span-rating."""
    assert RULES.number(f"panel.ei.{rule}") == printed
    assert RULES.entry(f"panel.ei.{rule}").known == "memory"
