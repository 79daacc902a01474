"""Whole workings as the verifier derives them, held against those of the plan."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import CODE, key_of
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.verdict import Objection

_NEAR, _NOUGHT = 1e-6, 1e-9
"""Numbers are kept to nine figures, and what they are derived from as well."""
_MM_PER_IN = 25.4
RATIO = "L/x"
"""Unit of a span over its deflection."""


class Number(NamedTuple):
    """A number with its unit."""

    value: float
    unit: str = ""


def inches(value: float) -> Number:
    """A length given in inches."""
    return Number(value * _MM_PER_IN, "mm")


Wanted = Any
"""What must stand in the plan: a `Number`, a list of such, or just this JSON."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Derived:
    """One line of a sheet, derived.

    Attributes:
        formula: Its id.
        also: What it is about beside the frame, by reference.
        name: Of the check; empty where nothing limits it.
        inputs: What goes in and comes out on the way.
        result: What it comes to.
        limit: What is allowed of it, and in which sense.
        rule: That it rests on.
        advised: The limit is advice.
    """

    formula: str
    result: Wanted
    inputs: Mapping[str, Wanted] = field(default_factory=dict)
    also: tuple[str, ...] = ()
    name: str = ""
    limit: Number | None = None
    at_least: bool = False
    rule: str = ""
    advised: bool = False

    def key(self, ref: str) -> str:
        """Its key in the plan, of the frame with this reference."""
        return key_of(self.formula, ref, *self.also)

    @property
    def holds(self) -> bool:
        """Whether it keeps its limit, as far as nine figures tell."""
        if self.limit is None:
            return True
        found, limit = self.result.value, self.limit.value
        return close(found, limit, _NOUGHT) or (found > limit) is self.at_least

    @property
    def stands(self) -> bool:
        """Whether it holds, or its limit is advice."""
        return self.holds or self.advised

    @property
    def allowed(self) -> Mapping[str, Wanted] | None:
        """The limit as it must stand in the plan."""
        if self.limit is None:
            return None
        return {"value": self.limit, "sense": "least" if self.at_least else "most"}

    def differs(self, working: Working) -> Iterator[Objection]:
        """Object to a working that says anything else."""
        if set(working.inputs) != set(self.inputs):
            odd = ", ".join(sorted(set(working.inputs) ^ set(self.inputs)))
            yield Objection(CODE, working.key, f"has inputs too many or too few: {odd}")
        for name, wanted in (*self.inputs.items(), ("result", self.result)):
            given = working.found if name == "result" else working.inputs.get(name)
            if not agrees(given, wanted):
                yield Objection(CODE, working.key, f"says {name} is {given}, which comes to {shown(wanted)}")
        if not same_limit(working.limit, self):
            yield Objection(CODE, working.key, f"is held to {working.limit}, not to {self.allowed}")
        if working.rule != self.rule:
            yield Objection(
                CODE, working.key, f"rests on {working.rule or 'no rule'}, not on {self.rule or 'none'}"
            )


def close(one: float, other: float, near: float = _NEAR) -> bool:
    """Whether two numbers are one, by proportion."""
    return abs(one - other) <= near * abs(other) + _NOUGHT


def agrees(given: Any, wanted: Wanted, slack: float = 0.0) -> bool:
    """Whether what stands in the plan is what is wanted; numbers may differ by `slack` beside their figures."""
    if isinstance(wanted, Number):
        if not isinstance(given, Mapping) or not given.keys() <= {"value", "unit"}:
            return False
        value = given.get("value")
        if isinstance(value, bool) or not isinstance(value, int | float):
            return False
        near = close(value, wanted.value) or abs(value - wanted.value) <= slack
        return given.get("unit", "") == wanted.unit and near
    if isinstance(wanted, list):
        both = zip(given, wanted, strict=False) if isinstance(given, list) else ()
        return isinstance(given, list) and len(given) == len(wanted) and all(agrees(*each, slack) for each in both)
    if isinstance(wanted, dict):
        return (
            isinstance(given, Mapping)
            and given.keys() == wanted.keys()
            and all(agrees(given[key], value, slack) for key, value in wanted.items())
        )
    return type(given) is type(wanted) and bool(given == wanted)


def same_limit(given: Any, derived: Derived) -> bool:
    """Whether a limit stands in the plan as it is derived."""
    if derived.limit is None:
        return given is None
    if not isinstance(given, Mapping) or given.get("sense") != ("least" if derived.at_least else "most"):
        return False
    return agrees({key: value for key, value in given.items() if key != "sense"}, derived.limit)


def shown(wanted: Wanted) -> str:
    """What is wanted, to be read."""
    if isinstance(wanted, Number):
        return f"{wanted.value:.6g} {wanted.unit}".rstrip()
    return f"[{', '.join(map(shown, wanted))}]" if isinstance(wanted, list) else str(wanted)


def word(code: str) -> dict[str, Wanted]:
    """A code as it must stand in the plan."""
    return {"word": code}


def ref(of: str) -> dict[str, Wanted]:
    """A reference as it must stand in the plan."""
    return {"ref": of}


def name(given: str) -> dict[str, Wanted]:
    """A name as it must stand in the plan."""
    return {"name": given}


def as_found(
    rules: RuleSet, name: str, found: float, rule: str, *, at_least: bool = False, unit: str = "mm"
) -> Derived:
    """A length [in], or a number in a unit, held against a rule as it is."""
    limit = Number(rules.ticks(rule) / TICKS_PER_MM, "mm") if unit == "mm" else Number(rules.number(rule), unit)
    return Derived(
        formula=f"frames-{name}",
        name=name,
        result=inches(found) if unit == "mm" else Number(found, unit),
        limit=limit,
        at_least=at_least,
        rule=rule,
    )


def ratio(
    rules: RuleSet,
    name: str,
    rule: str,
    span: float,
    bent: float,
    inputs: Mapping[str, Wanted],
    *,
    formula: str = "",
    also: tuple[str, ...] = (),
    advised: bool = False,
) -> Derived:
    """A span over its deflection [in] against what a rule asks."""
    return Derived(
        formula=formula or f"frames-{name}",
        also=also,
        name=name,
        inputs={**inputs, "deflection": inches(bent)},
        result=Number(span / bent, RATIO),
        limit=Number(rules.number(rule), RATIO),
        at_least=True,
        rule=rule,
        advised=advised,
    )
