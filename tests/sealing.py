"""Plans as JSON values, changed in what they were given as a forger would: under a seal that fits."""

import datetime
from typing import Any

from firstcourse.plan import Given, RuleNote, sealed
from firstcourse.rules import Override, load_rules


def reseal(plan: dict[str, Any]) -> None:
    """Seal again what a test has changed in what the plan was given."""
    given = plan["given"]
    rules = [RuleNote.model_validate(row) for row in given["rules"]]
    plan["given"] = sealed(given["job"], rules).model_dump(mode="json")


def set_rule(plan: dict[str, Any], rule: str, value: float | str, unit: str = "", reason: str = "asked") -> None:
    """Let a plan's job set a rule otherwise."""
    change = {"rule": rule, "value": value, "unit": unit, "reason": reason}
    plan["given"]["job"].setdefault("rules", []).append(change)
    stamp = plan["job"]
    rules = load_rules(datetime.date.fromisoformat(stamp["date"]), stamp["practice"], (Override(**change),))
    stamp.setdefault("overrides", []).append(
        change | {"value": rules.entry(rule).value, "unit": rules.entry(rule).unit}
    )
    reseal(plan)


def bare(name: str, date: str, room: str = "bath", rules: tuple[RuleNote, ...] = ()) -> Given:
    """What a plan made by hand was given: a name, a date and a room that nothing is said of."""
    return sealed({"name": name, "date": date, "rooms": [{"name": room}]}, rules)
