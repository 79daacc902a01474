"""What the site pack prints of rules: those that this plan rests on, by their source."""

from collections.abc import Iterator
from typing import Any

from firstcourse.documents.rule_values import shown_value
from firstcourse.plan import Plan, RuleNote

CAUTIONS = "safety.caution."
"""How rules begin whose text stands among the cautions."""
_HOUSE = "house_assumption"


def rule_pages(plan: Plan) -> dict[str, Any]:
    """The pages as plain values.

    Rules of what was not judged are left out: plan.json lists all that were at hand.
    """
    shown = list(_of_this_plan(plan))
    by_source: dict[str, list[str]] = {}
    for rule in shown:
        if not rule.taken_from and rule.basis != _HOUSE and not rule.id.startswith(CAUTIONS):
            by_source.setdefault(_source(rule), []).append(f"{rule.id} {_value(rule, plan)}")
    return {
        "overrides": [
            [change.rule, shown_value(str(change.value), change.unit, plan.job.tape), change.reason]
            for change in plan.job.overrides
        ],
        "assumptions": [
            [rule.id, _value(rule, plan)]
            for rule in shown
            if rule.basis == _HOUSE and not rule.id.startswith(CAUTIONS)
        ],
        # All of them: a finding says how many there are.
        "borrowed": [[rule.id, _value(rule, plan), _source(rule)] for rule in plan.rules if rule.taken_from],
        "rules": [[source, "; ".join(values)] for source, values in by_source.items()],
    }


def _of_this_plan(plan: Plan) -> Iterator[RuleNote]:
    kinds = {sheet.kind for sheet in plan.structures}
    ends = {name.rpartition(".")[2] for name in plan.workings}
    unused = {
        "remedy.": "remedies" not in ends,
        "exposure.": "materials" not in ends,
        "ceiling.": "ceiling" not in kinds,
        **dict.fromkeys(("floor.", "joist.", "panel."), "floor" not in kinds),
        **dict.fromkeys(("wall.deflection.", "wall.load.", "wall.steel."), "wall" not in kinds),
    }
    left_out = tuple(start for start, unneeded in unused.items() if unneeded)
    named = {finding.rule for finding in plan.findings} | {change.rule for change in plan.job.overrides}
    for rule in plan.rules:
        if rule.id in named or not rule.id.startswith(left_out):
            yield rule


def _value(rule: RuleNote, plan: Plan) -> str:
    return shown_value(rule.value, rule.unit, plan.job.tape)


def _source(rule: RuleNote) -> str:
    return ", ".join(part for part in (rule.source, rule.locator) if part)
