"""Values as a plan keeps them: numbers with their units, references, names and codes; no sentence among them."""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from firstcourse.units import TICKS_PER_MM, to_mm

_MM_PER_IN = 25.4
_FIGURES = 9
"""Figures that are kept of a computed number: more than any tape, less than what two machines may differ in."""


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Measure(_Kept):
    """A number with its unit.

    Attributes:
        value: The number; a length is in millimetres.
        unit: Such as `mm`, `psf`, `kg/m2`; empty for a ratio.
    """

    value: float
    unit: str = ""


class Limit(Measure):
    """What is allowed: at least or at most so much.

    Attributes:
        sense: `least` or `most`; `is` where just so much is asked.
    """

    sense: Literal["least", "most", "is"]


class Ref(_Kept):
    """A thing of the job or the plan, by its reference, such as `bath/wall/A-B`."""

    ref: str


class Word(_Kept):
    """One of a few words of the trade, by its code, such as `cement_board`."""

    word: str


class Name(_Kept):
    """What somebody has named, as he wrote it: a product, a grade, a reason."""

    name: str


Single = Limit | Measure | Ref | Word | Name | bool | int
Value = Single | tuple[Single, ...]
"""A parameter of a finding or an input of a working."""
Values = Annotated[dict[str, Value], Field(default={})]


class Statement(_Kept):
    """Something to be said.

    Attributes:
        code: Of its words in the message files.
        values: What they need, by name.
    """

    code: str
    values: Values


def statement(code: str, **values: Value) -> Statement:
    """What is to be said by a code, with what its words need."""
    return Statement(code=code, values=values)


def kept(value: float) -> float:
    """A computed number as plans keep it: to nine figures, the same on every machine."""
    return float(f"{value:.{_FIGURES}g}") + 0.0


def measure(value: float, unit: str = "") -> Measure:
    """A computed number with its unit."""
    return Measure(value=kept(value), unit=unit)


def money(amount: float) -> Measure:
    """An amount in the job's currency."""
    return measure(amount, "money")


def currency_of(name: str) -> Name | Word:
    """A currency as the job names it; a word for it where it names none."""
    return Name(name=name) if name else Word(word="money")


def length(ticks: float) -> Measure:
    """A length [ticks]; whole ticks stay exact."""
    return Measure(value=to_mm(ticks) if isinstance(ticks, int) else kept(ticks / TICKS_PER_MM), unit="mm")


def length_in(value_in: float) -> Measure:
    """A computed length [in]."""
    return measure(value_in * _MM_PER_IN, "mm")


def least(found: Measure) -> Limit:
    """At least so much."""
    return Limit(value=found.value, unit=found.unit, sense="least")


def most(found: Measure) -> Limit:
    """At most so much."""
    return Limit(value=found.value, unit=found.unit, sense="most")


def just(found: Measure) -> Limit:
    """Just so much."""
    return Limit(value=found.value, unit=found.unit, sense="is")
