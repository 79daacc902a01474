"""What one person may lift, computed again."""

import math
from collections.abc import Iterator

from firstcourse.units import TICKS_PER_INCH
from firstcourse.verify.formulas.masses import carried
from firstcourse.verify.formulas.proving import Prove, key_of
from firstcourse.verify.formulas.wanted import Wanted, length, measure, word
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_FORMULA = "quantities-lifting"
_LIFT = "safety.lift"


def expected(plan: Document) -> Iterator[str]:
    """What may be lifted, wherever sheets are carried."""
    if carried(plan):
        yield key_of(_FORMULA, "job")


def _lifting(plan: Document, working: Working) -> Iterator[Objection]:
    rules = plan.rules
    constant, multipliers = _lesser(plan)
    yield from Wanted(
        formula=_FORMULA,
        at=working.at,
        inputs={
            **{name: length(rules.ticks(f"{_LIFT}.{name}")) for name in ("reach", "low", "high")},
            "turn": measure(rules.number(f"{_LIFT}.turn"), "deg"),
            "rate": measure(rules.number(f"{_LIFT}.per_minute")),
            "grip": word(rules.text(f"{_LIFT}.grip")),
            "LC": measure(constant, "kg"),
            **{name: measure(value) for name, value in multipliers.items()},
        },
        result=measure(most_kg(plan), "kg"),
        rule=f"{_LIFT}.reach_best",
    ).objections(working)


def most_kg(plan: Document) -> float:
    """What one person may lift as the job's sheets are lifted [kg]."""
    constant, multipliers = _lesser(plan)
    for multiplier in multipliers.values():
        constant *= multiplier
    return constant


def _lesser(plan: Document) -> tuple[float, dict[str, float]]:
    """The load constant [kg] and the multipliers at that end of the lift where less may be lifted."""
    rules = plan.rules
    ends = [_at(plan, f"{_LIFT}.{end}") for end in ("low", "high")]
    return rules.kilograms(f"{_LIFT}.max"), min(ends, key=lambda one: math.prod(one.values()))


def _at(plan: Document, end: str) -> dict[str, float]:
    """Multipliers by rules and bounds of the publication; nothing may be lifted beyond a bound."""
    rules = plan.rules

    def inch(name: str) -> float:
        return rules.ticks(f"{_LIFT}.{name}") / TICKS_PER_INCH

    turn, grip = rules.number(f"{_LIFT}.turn"), rules.text(f"{_LIFT}.grip")
    height = rules.ticks(end) / TICKS_PER_INCH
    off = rules.number(f"{_LIFT}.height_share") * abs(height - inch("height_best"))
    way = max(abs(inch("high") - inch("low")), inch("travel_least"))
    firm = grip == "fair" and height >= inch("height_best")
    return {
        "HM": 0.0
        if inch("reach") > inch("reach_most")
        else inch("reach_best") / max(inch("reach"), inch("reach_best")),
        "VM": 0.0 if height > inch("height_most") else max(0.0, 1 - off),
        "DM": min(1.0, rules.number(f"{_LIFT}.travel_share") + inch("travel_part") / way),
        "AM": 0.0
        if turn > rules.number(f"{_LIFT}.turn_most")
        else max(0.0, 1 - rules.number(f"{_LIFT}.turn_share") * turn),
        "FM": _frequency(plan),
        "CM": 1.0 if firm else rules.number(f"{_LIFT}.grip.{grip}"),
    }


def _frequency(plan: Document) -> float:
    rows = {
        float(rule.rsplit(".", 1)[1].replace("_", ".")): rule for rule in plan.rules.ids(f"{_LIFT}.frequency.")
    }
    kept = [most for most in sorted(rows) if plan.rules.number(f"{_LIFT}.per_minute") <= most]
    return plan.rules.number(rows[kept[0]]) if kept else 0.0


FORMULAS: dict[str, Prove] = {_FORMULA: _lifting}
