"""International Residential Code: loads (R301.5), deflection (R301.7), reach of the span tables (R502.3.2, R503).

Known = read in public copies, but for the lightest panel over joists at 16 in, which is remembered. Printed values
are whole numbers, so they must be equal.
"""

import datetime

import pytest

from firstcourse.frames.panels import Panel, check_panel
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))

PRINTED = {
    "irc-live-living": ("floor.load.live", 40),
    "irc-live-sleeping": ("floor.load.live_sleeping", 30),
    "irc-span-table-dead-limit": ("floor.load.dead_table_max", 20),
    "irc-defl-floor": ("floor.deflection.live_code", 360),
    "irc-defl-partition": ("wall.deflection.code", 180),
    "R301.7, ceilings with plaster": ("ceiling.deflection.live_brittle", 360),
    "R301.7, ceilings with gypsum board": ("ceiling.deflection.live_code", 240),
    "R802.5.1(2), live load": ("ceiling.load.live_storage", 20),
    "R802.5.1(2), dead load": ("ceiling.load.dead_storage", 10),
}


@pytest.mark.parametrize("printed", PRINTED.values(), ids=PRINTED.keys())
def test_rule_has_the_printed_value(printed):
    rule, value = printed
    assert RULES.number(rule) == value


@pytest.mark.parametrize(
    ("panel", "spacing"),
    [("23/32", 24), ("15/32", 16)],
    ids=["irc-single-floor-24", "irc-subfloor-16-lightest"],
)
def test_a_panel_the_code_allows_may_be_too_limber_for_tile(panel, spacing):
    """tcna-between-joists-basis: the code's limit is under uniform load, the handbook's under a point load.

    The code's own panels keep their rating and bending; the handbook's limit beside them is advice.
    """
    rating, bending, even, point, _thickest = check_panel(RULES, Panel(layers=(panel,)), spacing, 50)
    assert rating.holds and bending.holds and even.stands
    assert not point.holds and point.advised
