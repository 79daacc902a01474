"""What a rule finds names the rule, and how its source was read is printed with it."""

import datetime

import pytest

from firstcourse.findings import Severity
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 1))


@pytest.mark.parametrize(
    ("rule", "end"),
    [
        ("panel.rated_load", "uniform load (from memory, not seen)"),
        ("lumber.dfl.standard.e", ", Table 4A (from memory, not seen)"),
        ("surface.large_tile", " (as quoted in the trade press)"),
        ("boards.piece.min", "house assumption"),
    ],
)
def test_how_a_source_was_read_is_said_once(rule: str, end: str):
    cited = RULES.entry(rule).cited
    assert cited.endswith(end) and cited.count("memory") <= 1


def test_a_finding_names_its_rule_and_its_place():
    entry = RULES.entry("flange.above.max")
    found = entry.found("SUI-604", Severity.FIX, "bath")
    assert (found.rule, found.at) == (entry.id, ("bath",))
    assert (found.measured, found.limit) == (None, None)
