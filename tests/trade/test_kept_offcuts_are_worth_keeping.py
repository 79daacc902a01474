"""Offcuts narrower than those the rule counts as worth keeping were marked "keep" on the sheet all the same."""

import pytest

from example_plans import EXAMPLES, plan_of
from firstcourse.job import read_job
from firstcourse.plan import Plan
from firstcourse.rules import load_rules


def left_over(plan: Plan) -> list[tuple[bool, int]]:
    parts = [part for sheet in plan.sheets for part in sheet.parts if part.piece is None]
    return [(part.keep, min(part.size)) for part in parts]


@pytest.mark.parametrize("name", ["tub-bathroom", "metric-column"])
def test_an_offcut_is_kept_where_both_its_sides_reach_the_rule(name: str) -> None:
    job = read_job(EXAMPLES / name / "job.yaml")
    least = load_rules(job.date, job.practice).ticks("choice.offcut.least_side")
    found = left_over(plan_of(name))
    assert found and all(keep == (side >= least) for keep, side in found)
    assert {keep for keep, _side in found} >= {False}
