"""One check of a frame: what was found, what is allowed, whether it holds, and what both come from."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from firstcourse.rules import RuleSet
from firstcourse.units import to_inches
from firstcourse.values import Limit, Measure, Value, least, length_in, measure, most
from firstcourse.workings import Working

RATIO = "L/x"
"""Unit of a span over its deflection."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A value against its limit.

    Attributes:
        name: What is checked, by its code, such as `bending`.
        found: The value found, in `unit`.
        limit: What is allowed, in `unit`.
        at_least: True where the value must reach the limit, False where it must not pass it.
        unit: Of both; `in` for a length, `L/x` for a span over its deflection.
        rule: Id of the rule that sets the limit, or of the design value that it rests on.
        inputs: What the value and its limit come from, as a working keeps it.
        formula: Its words, where several checks share them; else those of its name.
        also: What tells its working from others by one formula, by reference.
        advised: The limit is advice beside a published rating that allows what was found; it stops nothing.
    """

    name: str
    found: float
    limit: float
    at_least: bool
    unit: str
    rule: str
    inputs: Mapping[str, Value] = field(default_factory=dict)
    formula: str = ""
    also: tuple[str, ...] = ()
    advised: bool = False

    @property
    def stands(self) -> bool:
        """Whether the work may go on as far as this check goes: it holds, or its limit is advice."""
        return self.holds or self.advised

    @property
    def holds(self) -> bool:
        """Whether the value keeps the limit."""
        return self.found >= self.limit if self.at_least else self.found <= self.limit

    @property
    def margin(self) -> float:
        """How far the limit is kept: more is better."""
        return self.found - self.limit if self.at_least else self.limit - self.found

    @property
    def measured(self) -> Measure:
        """The value as a plan keeps it."""
        return self._kept(self.found)

    @property
    def allowed(self) -> Limit:
        """The limit as a plan keeps it."""
        limit = self._kept(self.limit)
        return least(limit) if self.at_least else most(limit)

    def working(self, ref: str) -> Working:
        """How the value came about.

        Args:
            ref: Reference to the floor, wall or ceiling.
        """
        return Working(
            formula=f"frames-{self.formula or self.name}",
            at=(ref, *self.also),
            inputs=dict(self.inputs),
            result=self.measured,
            limit=self.allowed,
            rule=self.rule,
        )

    def _kept(self, value: float) -> Measure:
        return length_in(value) if self.unit == "in" else measure(value, self.unit)


def as_found(
    rules: RuleSet, name: str, found: float, rule: str, *, at_least: bool = True, unit: str = "in"
) -> Check:
    """A value found on site held against a rule as it is, such as a spacing or a bearing.

    Args:
        rules: The rule book.
        name: What is checked, by its code.
        found: The value found, in `unit`.
        rule: Id of the rule that sets the limit; a length where the unit is `in`, else in `unit`.
        at_least: Whether the value must reach the limit.
        unit: Of the value, the limit and the rule.
    """
    allowed = to_inches(rules.ticks(rule)) if unit == "in" else rules.number(rule)
    return Check(name=name, found=found, limit=allowed, at_least=at_least, unit=unit, rule=rule)


def deflection_check(
    rules: RuleSet,
    *,
    name: str,
    rule: str,
    span_in: float,
    deflection_in: float,
    inputs: Mapping[str, Value],
    formula: str = "",
    also: tuple[str, ...] = (),
    advised: bool = False,
) -> Check:
    """A span over its deflection, which must reach what a rule asks.

    Args:
        rules: The rule book.
        name: What is checked, by its code.
        rule: Id of the rule that sets the limit, span over deflection.
        span_in: What deflects [in].
        deflection_in: By how much [in].
        inputs: What the deflection comes from.
        formula: See `Check`.
        also: See `Check`.
        advised: See `Check`.
    """
    return Check(
        name=name,
        found=span_in / deflection_in,
        limit=rules.number(rule),
        at_least=True,
        unit=RATIO,
        rule=rule,
        inputs={**inputs, "deflection": length_in(deflection_in)},
        formula=formula,
        also=also,
        advised=advised,
    )
