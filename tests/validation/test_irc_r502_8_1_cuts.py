"""International Residential Code R502.8.1: notches and holes in sawn joists. Known = read, as quoted.

The worked case of a study guide for inspectors, a 2x10 of 9-1/4 in: notches to about 1-1/2 in (1.54), no longer
than 3.08 in, end notches to 2.31 in, holes to 3.08 in. The limits are fractions of the depth, so a hundredth of an
inch on either side decides.
"""

import datetime

import pytest

from firstcourse.frames.notches import Cut, cut_checks
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
SPAN = 144


def rules_broken(cut, *, width=1.5, depth=9.25):
    checks = cut_checks(RULES, width, depth, SPAN, cut, 1)
    return {check.rule.removeprefix("joist.") for check in checks if not check.holds}


@pytest.mark.parametrize(
    ("kind", "at", "limit", "rule"),
    [
        ("notch", 24, 1.54, "notch.depth_share"),
        ("end_notch", 1, 2.31, "notch.end_share"),
        ("hole", 72, 3.08, "hole.share"),
    ],
)
def test_a_2x10_at_its_limits(kind, at, limit, rule):
    assert rules_broken(Cut(kind=kind, size_in=limit, at_in=at, edge_in=2)) == set()
    assert rules_broken(Cut(kind=kind, size_in=limit + 0.01, at_in=at, edge_in=2)) == {rule}


def test_a_notch_is_no_longer_than_a_third_of_the_depth():
    assert rules_broken(Cut(kind="notch", size_in=1, at_in=24, length_in=3.08)) == set()
    assert rules_broken(Cut(kind="notch", size_in=1, at_in=24, length_in=3.1)) == {"notch.length_share"}


@pytest.mark.parametrize(("at", "broken"), [(46, False), (47, True), (72, True), (97, True), (98, False)])
def test_no_notch_reaches_into_the_middle_third(at, broken):
    cut = Cut(kind="notch", size_in=1, at_in=at, length_in=3)
    assert (rules_broken(cut) == {"notch.clear_share"}) is broken


def test_holes_are_allowed_in_the_middle_third_but_not_near_an_edge_or_a_notch():
    assert rules_broken(Cut(kind="hole", size_in=2, at_in=72, edge_in=2)) == set()
    assert rules_broken(Cut(kind="hole", size_in=2, at_in=72, edge_in=1.9)) == {"hole.edge"}


def test_thick_members_are_not_notched_where_they_are_stretched():
    cut = Cut(kind="notch", size_in=1, at_in=24, length_in=2, in_bottom=True)
    assert rules_broken(cut, width=1.5) == set()
    assert rules_broken(cut, width=3.5) == {"notch.thick"}


def test_an_end_notch_far_from_its_support_counts_as_any_other():
    assert rules_broken(Cut(kind="end_notch", size_in=2, at_in=9.25)) == set()
    assert rules_broken(Cut(kind="end_notch", size_in=2, at_in=72)) == {"notch.depth_share", "notch.clear_share"}
