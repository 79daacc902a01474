"""What one person may lift: the revised lifting equation with its multipliers, for the sheets of a job.

The equation speaks of one person's two-handed lift. It does not cover two who lift together; each is held against
it with half the sheet.
"""

from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.units import KG_PER_LB, TICKS_PER_INCH
from firstcourse.values import Word, length, length_in, measure, most
from firstcourse.workings import Working

_FREQUENCY = "safety.lift.frequency."


@dataclass(frozen=True, slots=True, kw_only=True)
class Lift:
    """One way of lifting.

    Attributes:
        reach_in: From between the ankles to the middle of the hands [in].
        low_in: Height of the hands where it is picked up [in].
        high_in: Height of the hands where it is set down [in].
        turn_deg: Turn of the body between the two [degrees].
        per_minute: Lifts a minute.
        grip: `good`, `fair` or `poor`.
    """

    reach_in: float
    low_in: float
    high_in: float
    turn_deg: float
    per_minute: float
    grip: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """What may be lifted so at one end of the lift: the load constant, each multiplier, their product [lb]."""

    constant_lb: float
    multipliers: dict[str, float]

    @property
    def lb(self) -> float:
        """The recommended weight limit [lb]."""
        product = self.constant_lb
        for multiplier in self.multipliers.values():
            product *= multiplier
        return product


def lift_of(rules: RuleSet) -> Lift:
    """How sheets are lifted, as the job says or the book assumes."""

    def inch(name: str) -> float:
        return rules.ticks(f"safety.lift.{name}") / TICKS_PER_INCH

    return Lift(
        reach_in=inch("reach"),
        low_in=inch("low"),
        high_in=inch("high"),
        turn_deg=rules.number("safety.lift.turn"),
        per_minute=rules.number("safety.lift.per_minute"),
        grip=rules.text("safety.lift.grip"),
    )


def weight_limits(rules: RuleSet, lift: Lift) -> tuple[Limit, Limit]:
    """What may be lifted where it is picked up and where it is set down; nothing where a bound is passed.

    References:
        NIOSH Publication 94-110, section 1.3: RWL = LC x HM x VM x DM x AM x FM x CM.
    """

    def inch(name: str) -> float:
        return rules.ticks(f"safety.lift.{name}") / TICKS_PER_INCH

    travel = max(abs(lift.high_in - lift.low_in), inch("travel_least"))

    def at(height_in: float) -> Limit:
        reach = max(lift.reach_in, inch("reach_best"))
        high = height_in >= inch("height_best")
        off = rules.number("safety.lift.height_share") * abs(height_in - inch("height_best"))
        turned = rules.number("safety.lift.turn_share") * lift.turn_deg
        return Limit(
            constant_lb=rules.kilograms("safety.lift.max") / KG_PER_LB,
            multipliers={
                "HM": inch("reach_best") / reach if reach <= inch("reach_most") else 0.0,
                "VM": max(0.0, 1 - off) if height_in <= inch("height_most") else 0.0,
                "DM": min(1.0, rules.number("safety.lift.travel_share") + inch("travel_part") / travel),
                "AM": max(0.0, 1 - turned) if lift.turn_deg <= rules.number("safety.lift.turn_most") else 0.0,
                "FM": _frequency(rules, lift.per_minute),
                "CM": 1.0 if lift.grip == "fair" and high else rules.number(f"safety.lift.grip.{lift.grip}"),
            },
        )

    return at(lift.low_in), at(lift.high_in)


def _frequency(rules: RuleSet, per_minute: float) -> float:
    """The multiplier of the next more frequent row of the table; nothing beyond its last."""
    rows = sorted((float(rule.removeprefix(_FREQUENCY).replace("_", ".")), rule) for rule in rules.ids(_FREQUENCY))
    row = next((rule for most, rule in rows if per_minute <= most), None)
    return 0.0 if row is None else rules.number(row)


def lifting(rules: RuleSet, sheet_kg: dict[str, float]) -> tuple[tuple[Finding, ...], tuple[Working, ...]]:
    """Sheets that one person may not lift as the job lifts them, and the working of what one may.

    Args:
        rules: Rules in force, with what the job says of lifting.
        sheet_kg: Mass of one sheet of each stock that is bought [kg].
    """
    if not sheet_kg:
        return (), ()
    lift = lift_of(rules)
    limit = min(weight_limits(rules, lift), key=lambda one: one.lb)
    most_kg = limit.lb * KG_PER_LB
    found = tuple(_too_heavy(name, kg, most_kg, rules) for name, kg in sheet_kg.items() if kg > most_kg)
    return found, (_working(lift, limit),)


def _too_heavy(name: str, kg: float, most_kg: float, rules: RuleSet) -> Finding:
    two = kg <= 2 * most_kg
    return rules.entry("safety.lift.max").found(
        "QTY-101" if two else "QTY-102",
        Severity.NOTE if two else Severity.FIX,
        f"stock/{name}",
        measured=measure(kg, "kg"),
        limit=most(measure(most_kg if two else 2 * most_kg, "kg")),
        remedies=("two",) if two else ("cart",),
        reach=length(rules.ticks("safety.lift.reach")),
        half=measure(kg / 2, "kg"),
    )


def _working(lift: Lift, limit: Limit) -> Working:
    return Working(
        formula="quantities-lifting",
        at=("job",),
        inputs={
            "reach": length_in(lift.reach_in),
            "low": length_in(lift.low_in),
            "high": length_in(lift.high_in),
            "turn": measure(lift.turn_deg, "deg"),
            "rate": measure(lift.per_minute),
            "grip": Word(word=lift.grip),
            "LC": measure(limit.constant_lb * KG_PER_LB, "kg"),
            **{name: measure(value) for name, value in limit.multipliers.items()},
        },
        result=measure(limit.lb * KG_PER_LB, "kg"),
        rule="safety.lift.reach_best",
    )
