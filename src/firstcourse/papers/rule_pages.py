"""What the site pack prints of rules: those that this plan rests on, by their source."""

from typing import Any

from firstcourse.papers.rule_values import shown_value
from firstcourse.plan import Plan, RuleNote

CAUTIONS = "safety.caution."
"""How rules begin whose text stands among the cautions."""
_HOUSE = "house_assumption"
NO_RULES: dict[str, Any] = {"overrides": [], "assumptions": [], "borrowed": [], "rules": []}
"""What `rule_pages` gives for a pack whose rules stand in another."""


def rule_pages(plan: Plan) -> dict[str, Any]:
    """The pages as plain values: a plan lists the rules it asked for, and those alone are printed."""
    shown = plan.rules
    by_source: dict[str, list[str]] = {}
    for rule in shown:
        if not rule.taken_from and rule.basis != _HOUSE and not rule.id.startswith(CAUTIONS):
            by_source.setdefault(rule.source, []).append(f"{rule.id} {_value(rule, plan)}")
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
        "borrowed": [[rule.id, _value(rule, plan), rule.source] for rule in shown if rule.taken_from],
        "rules": [[source, "; ".join(values)] for source, values in by_source.items()],
    }


def _value(rule: RuleNote, plan: Plan) -> str:
    return shown_value(rule.value, rule.unit, plan.job.tape)
