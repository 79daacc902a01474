"""Workings and lines of the shopping list as they must be, and what differs from them."""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import CODE, NEAR, key_of, limited, rests_on
from firstcourse.verify.shopping_fields import Given, Pack, Quantity, Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

LEAST = 1e-6
"""What is needed of something that is listed; less is dust of sums."""
_DUST = 1e-9


def measure(value: float, unit: str = "") -> dict[str, Given]:
    """A number with its unit, as it stands in the plan's JSON."""
    return {"value": value, "unit": unit}


def length(ticks: float) -> dict[str, Given]:
    """A length [ticks], as it stands in the plan's JSON."""
    return measure(ticks / TICKS_PER_MM, "mm")


def word(code: str) -> dict[str, str]:
    """A word of the trade, as it stands in the plan's JSON."""
    return {"word": code}


def alike(found: Given, wanted: Given) -> bool:
    """Whether a value of the plan's JSON is as it must be: numbers as near as nine figures keep them."""
    if isinstance(wanted, list):
        return (
            isinstance(found, list)
            and len(found) == len(wanted)
            and all(alike(one, other) for one, other in zip(found, wanted, strict=True))
        )
    if isinstance(wanted, Mapping):
        return (
            isinstance(found, Mapping)
            and found.keys() == wanted.keys()
            and all(alike(found[key], wanted[key]) for key in wanted)
        )
    if isinstance(wanted, float):
        is_number = isinstance(found, int | float) and not isinstance(found, bool)
        return is_number and abs(found - wanted) <= NEAR * max(1.0, abs(wanted))
    return type(found) is type(wanted) and bool(found == wanted)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """A working as it must be: its result, its inputs by name, the rule that it rests on."""

    formula: str
    at: tuple[str, ...]
    result: Given
    inputs: Mapping[str, Given] = field(default_factory=dict)
    rule: str = ""

    @property
    def key(self) -> str:
        """Its key in the plan."""
        return key_of(self.formula, *self.at)

    def objections(self, working: Working) -> Iterator[Objection]:
        """Object to every input that is missing, too many or other than it must be, to the result and the rule."""
        for name in sorted(working.inputs.keys() | self.inputs.keys()):
            found, wanted = working.inputs.get(name), self.inputs.get(name)
            if name not in self.inputs or name not in working.inputs or not alike(found, wanted):
                yield Objection(CODE, working.key, f"says {name} is {found}, not {wanted}")
        if not alike(working.found, self.result):
            yield Objection(CODE, working.key, f"comes to {working.found}, not to {self.result}")
        yield from rests_on(working, self.rule)
        yield from limited(working)


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """A line of the shopping list as it must be, with the working of its need.

    Attributes:
        exact: Exact need, in `unit`.
        kind: What one pack is.
        size: How much one pack holds, in `unit`.
        share: Allowance on top, share of the need.
        buy: Packs to buy, where they are not as many as hold the need and its allowance.
        sheets: Mounted sheets in a box of mosaic.
        width: Of the roll that it is cut off [ticks].
        packed: Whether the working says what is added and bought.
        always: Whether it is listed though nothing of it is needed.
        beyond: Inputs that say what else the packs hold.
    """

    item: str
    exact: float
    unit: str
    kind: str
    size: float
    formula: str
    inputs: Mapping[str, Given] = field(default_factory=dict)
    rule: str = ""
    share: float = 0.0
    buy: int | None = None
    sheets: int | None = None
    width: int | None = None
    packed: bool = True
    always: bool = False
    beyond: Mapping[str, Given] = field(default_factory=dict)

    @property
    def key(self) -> str:
        """Key of its working in the plan."""
        return key_of(self.formula, self.item)

    @property
    def must(self) -> bool:
        """Whether it has to be on the list."""
        return self.always or self.exact > LEAST

    def packs(self, quantity: Quantity) -> int:
        """Packs that hold what a line says is needed; less than none where no number of packs can."""
        if self.buy is not None:
            return self.buy
        needed = max(quantity.exact, 0.0) * (1 + self.share) / quantity.pack.size
        return math.ceil(needed - _DUST) if math.isfinite(needed) else -1

    def objections(self, quantity: Quantity) -> Iterator[Objection]:
        """Object to a line that is not so."""
        if abs(quantity.exact - self.exact) > NEAR * max(1.0, self.exact):
            yield Objection("VER-801", self.item, f"{quantity.exact:g} said, {self.exact:.9g} {self.unit} counted")
        pack = Pack(self.kind, quantity.pack.size, self.unit, self.sheets, self.width)
        wrong_size = abs(quantity.pack.size - self.size) > NEAR * self.size
        if quantity.unit != self.unit or quantity.pack != pack or wrong_size:
            yield Objection("VER-805", self.item, f"comes by the {self.kind} of {self.size:g} {self.unit}")
        elif quantity.buy != self.packs(quantity):
            yield Objection("VER-802", self.item, f"takes {self.packs(quantity)} packs, not {quantity.buy}")
        if quantity.working != self.key:
            yield Objection("VER-902", self.item, f"names '{quantity.working}' as its working, not '{self.key}'")

    def wanted(self, quantity: Quantity) -> Wanted:
        """Its working."""
        bought = {
            "exact": measure(self.exact, self.unit),
            "share": measure(100 * self.share, "%"),
            "spare": measure(self.exact * self.share, self.unit),
            "pack": measure(self.size, self.unit),
            "sold": word(self.kind),
            "packs": self.packs(quantity),
        }
        return Wanted(
            formula=self.formula,
            at=(self.item,),
            inputs={**self.inputs, **(bought if self.packed else {}), **self.beyond},
            result=measure(self.exact, self.unit),
            rule=self.rule,
        )


def by_mass(
    item: str, kg: float, *, bag_kg: float, share: float, formula: str, inputs: Mapping[str, Given], rule: str
) -> Listed:
    """Something bought by the bag.

    Args:
        item: What it is.
        kg: Exact need [kg].
        bag_kg: Mass in one bag [kg].
        share: Allowance on top, share of the need.
        formula: Of its working.
        inputs: Of its working.
        rule: That its working rests on.
    """
    return Listed(
        item=item,
        exact=kg,
        unit="kg",
        kind="bag",
        size=bag_kg,
        share=share,
        formula=formula,
        inputs=inputs,
        rule=rule,
    )


def once[T](derive: Callable[[Document], T]) -> Callable[[Document], T]:
    """Derives something of a plan once, though many of its workings ask for it; that of the last plan is kept."""
    last: list[tuple[Document, T]] = []

    def derived(plan: Document) -> T:
        held = last[0] if last else None
        if held is None or held[0] is not plan:
            held = (plan, derive(plan))
            last[:] = [held]
        return held[1]

    return derived
