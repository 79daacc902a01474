"""What one person may lift, computed again; and that every sheet heavier than that is told of."""

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
_TOLD = ("QTY-101", "QTY-102")
_CODE = "VER-806"
_SLACK = 1e-6
"""Nine figures are kept of a mass."""


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
        result=measure(_most_kg(plan), "kg"),
        rule=f"{_LIFT}.reach_best",
    ).objections(working)


def check_lifting(plan: Document) -> Iterator[Objection]:
    """Object to a heavy sheet of which too little is said, and to one of which too much is."""
    told = {(said.place, said.code): said for said in plan.findings if said.code in _TOLD}
    most = _most_kg(plan) if told or carried(plan) else 0.0
    heavy = {name: kg for name, kg in carried(plan).items() if kg > most}
    wanted = {(f"stock/{name}", _TOLD[kg > 2 * most]): kg for name, kg in heavy.items()}
    for where, code in sorted(wanted.keys() ^ told.keys()):
        is_told = (where, code) in told
        yield Objection(_CODE, where, f"{code} is told, and is not so" if is_told else f"{code} is not told")
    for key in wanted.keys() & told.keys():
        limit = most * (1 if key[1] == _TOLD[0] else 2)
        for told_kg, right in ((told[key].amount, wanted[key]), (told[key].allowed, limit)):
            if told_kg is None or abs(told_kg - right) > _SLACK * right:
                yield Objection(_CODE, key[0], f"{right:.4g} kg is right, told as {told_kg}")


def _most_kg(plan: Document) -> float:
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
