"""One check: what was found, what is allowed, and whether it holds."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from firstcourse.rules import RuleSet
from firstcourse.units import inch_text, inches_beside, to_inches
from firstcourse.values import Limit, Measure, least, length_in, measure, most
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A value against its limit, with the working that gave it.

    Attributes:
        name: What is checked, in words.
        found: The value found, in `unit`.
        limit: What is allowed, in `unit`.
        at_least: True where the value must reach the limit, False where it must not pass it.
        rule: Id of the rule that sets the limit, or of the design value that it rests on.
        source: Where the limit comes from.
        advised: The limit is advice beside a published rating that allows what was found; it stops nothing.
    """

    name: str
    found: float
    limit: float
    at_least: bool
    unit: str
    rule: str
    source: str
    working: Working
    advised: bool = False

    @property
    def stands(self) -> bool:
        """Whether the work may go on as far as this check goes: it holds, or its limit is advice."""
        return self.holds or self.advised

    def on_joist(self, number: int) -> "Check":
        """The same check, with the joist that it is worst for named in its working."""
        named = {"title": f"{self.working.title}, joist {number}"}
        return replace(self, working=self.working.model_copy(update=named))

    @property
    def holds(self) -> bool:
        """Whether the value keeps the limit."""
        return self.found >= self.limit if self.at_least else self.found <= self.limit

    @property
    def measured(self) -> Measure:
        """The value as a finding keeps it."""
        return self._kept(self.found)

    @property
    def allowed(self) -> Limit:
        """The limit as a finding keeps it."""
        limit = self._kept(self.limit)
        return least(limit) if self.at_least else most(limit)

    def _kept(self, value: float) -> Measure:
        return length_in(value) if self.unit == "in" else measure(value, self.unit)

    def found_text(self) -> str:
        """The value as printed."""
        return (
            f"{inches_beside(self.found, self.limit)} in" if self.unit == "in" else quantity(self.found, self.unit)
        )

    def limit_text(self) -> str:
        """The limit as printed, with its sense."""
        return f"{'at least' if self.at_least else 'at most'} {quantity(self.limit, self.unit)}"


def quantity(value: float, unit: str) -> str:
    """A value as a setter reads it; ratios of deflection as `L/360`, rounded to the unsafe side never."""
    if unit == "L/x":
        return f"L/{int(value)}" if value < 100_000 else "no deflection"
    if unit == "in" and "." not in (text := inch_text(value)):
        return f"{text} in"
    if unit == "psi" or abs(value) >= 1000:
        return f"{value:,.0f} {unit}".strip()
    return f"{value:.3g} {unit}".strip()


def length_check(
    rules: RuleSet, *, name: str, title: str, found: float, rule: str, at_least: bool = True, unit: str = "in"
) -> Check:
    """A value found on site held against a rule as it is, such as a spacing or a bearing.

    Args:
        rules: The rule book.
        name: What is checked, in words.
        title: The same as a line of the sheet.
        found: The value found, in `unit`.
        rule: Id of the rule that sets the limit; a length where the unit is `in`, else in `unit`.
        at_least: Whether the value must reach the limit.
        unit: Of the value, the limit and the rule.
    """
    limit = rules.entry(rule)
    allowed = to_inches(rules.ticks(rule)) if unit == "in" else rules.number(rule)
    return Check(
        name=name,
        found=found,
        limit=allowed,
        at_least=at_least,
        unit=unit,
        rule=rule,
        source=limit.cited,
        working=Working(
            title=title,
            formula="as found",
            result=inches_beside(found, allowed) if unit == "in" else f"{found:g}",
            unit=unit,
            source=limit.cited,
        ),
    )


def deflection_check(
    rules: RuleSet,
    *,
    name: str,
    title: str,
    formula: str,
    rule: str,
    span_in: float,
    deflection_in: float,
    values: Mapping[str, str],
    steps: tuple[str, ...],
    letter: str = "L",
    argument: tuple[str, ...] = (),
    advised: bool = False,
) -> Check:
    """A span over its deflection, which must reach what a rule asks.

    Args:
        rules: The rule book.
        name: What is checked, in words.
        title: The same as a line of the sheet.
        formula: The deflection's.
        rule: Id of the rule that sets the limit, span over deflection.
        span_in: What deflects [in].
        deflection_in: By how much [in].
        values: What goes into the formula, by its letters.
        steps: The calculation, the ratio last.
        letter: Of the span in the result.
        argument: What the sheet says beside it.
        advised: The limit is advice, see `Check`.
    """
    limit, found = rules.entry(rule), span_in / deflection_in
    return Check(
        name=name,
        found=found,
        limit=rules.number(rule),
        at_least=True,
        unit="L/x",
        rule=rule,
        source=limit.cited,
        working=Working(
            title=title,
            formula=formula,
            values=dict(values),
            steps=steps,
            result=f"{letter}/{int(found)}",
            unit="",
            source=limit.cited,
            argument=argument,
        ),
        advised=advised,
    )


def deflection_text(deflection_in: float, decimals: int = 4) -> str:
    """A deflection in so many decimals, and in four digits where those would be next to nothing.

    Example:
        >>> deflection_text(0.2714), deflection_text(0.0000123456)
        ('0.2714', '0.00001235')
    """
    if 0 < deflection_in < 0.001:
        decimals = max(decimals, 3 - math.floor(math.log10(deflection_in)))
    return f"{deflection_in:.{decimals}f}"


def stiffness_text(stiffness: float) -> str:
    """A bending stiffness EI [lb·in²] in millions, as one writes it by hand."""
    return f"{stiffness / 1e6:.3f}×10⁶"
