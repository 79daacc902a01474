"""What one person may lift, computed again; and that every sheet heavier than that is told of."""

from collections.abc import Iterator

from firstcourse.units import KG_PER_LB, TICKS_PER_INCH, Tape
from firstcourse.verify.printed import prints
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection
from firstcourse.verify.workings import sheet_masses

_NAME = "lift one person"
_TOLD = ("QTY-101", "QTY-102")
_SLACK = 1e-6
"""Nine figures are kept of a mass."""


def check_lifting(plan: Document) -> Iterator[Objection]:
    """Object to another limit than the equation gives, and to a heavy sheet of which too little is said."""
    masses = {name: kg for name, kg in sheet_masses(plan).items() if f"mass {name}" in plan.workings}
    told = {(said.place, said.code): said for said in plan.findings if said.code in _TOLD}
    working = plan.workings.get(_NAME)
    if working is None:
        if masses or told:
            yield Objection("VER-906", _NAME, "is missing: sheets are carried")
        return
    most = _most_lb(plan)
    per = 1.0 if plan.tape is Tape.MM else KG_PER_LB
    limit = most * KG_PER_LB / per
    if not prints(working.result, limit):
        yield Objection("VER-906", _NAME, f"says {working.result}, and the equation gives {limit:.4g}")
    wanted = {}
    for name, kg in masses.items():
        if kg > most * KG_PER_LB:
            wanted[f"stock/{name}", _TOLD[kg > 2 * most * KG_PER_LB]] = kg
    for where, code in sorted(wanted.keys() ^ told.keys()):
        is_told = (where, code) in told
        yield Objection("VER-906", where, f"{code} is told, and is not so" if is_told else f"{code} is not told")
    for key in wanted.keys() & told.keys():
        limits = most * KG_PER_LB * (1 if key[1] == _TOLD[0] else 2)
        for told_kg, right in ((told[key].amount, wanted[key]), (told[key].allowed, limits)):
            if told_kg is None or abs(told_kg - right) > _SLACK * right:
                yield Objection("VER-906", key[0], f"{right:.4g} kg is right, told as {told_kg}")


def _most_lb(plan: Document) -> float:
    """The lesser weight limit of both ends of the lift [lb], by rules and bounds of the publication."""
    rules = plan.rules

    def inch(name: str) -> float:
        return rules.ticks(f"safety.lift.{name}") / TICKS_PER_INCH

    turn, grip, rate = (rules.entry(f"safety.lift.{name}").value for name in ("turn", "grip", "per_minute"))
    rows = {float(rule.rsplit(".", 1)[1].replace("_", ".")): rule for rule in rules.ids("safety.lift.frequency.")}
    kept = [most for most in sorted(rows) if float(rate) <= most]
    if not kept or inch("reach") > inch("reach_most") or float(turn) > rules.number("safety.lift.turn_most"):
        return 0.0
    fixed = rules.kilograms("safety.lift.max") / KG_PER_LB * rules.number(rows[kept[0]])
    fixed *= inch("reach_best") / max(inch("reach"), inch("reach_best"))
    fixed *= 1 - rules.number("safety.lift.turn_share") * float(turn)
    way = max(abs(inch("high") - inch("low")), inch("travel_least"))
    fixed *= min(1.0, rules.number("safety.lift.travel_share") + inch("travel_part") / way)
    ends = []
    for height in (inch("low"), inch("high")):
        off = rules.number("safety.lift.height_share") * abs(height - inch("height_best"))
        firm = grip == "fair" and height >= inch("height_best")
        held = 1.0 if firm else rules.number(f"safety.lift.grip.{grip}")
        ends.append(0.0 if height > inch("height_most") else max(0.0, 1 - off) * held)
    return max(0.0, fixed * min(ends))
