"""An order and a price as values: what `price.json` holds, for anyone to compute again."""

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field, PlainSerializer

from firstcourse.findings import Finding
from firstcourse.plan import Frozen
from firstcourse.pricing.book import PriceBook
from firstcourse.values import kept


def _plain(value: Decimal) -> str:
    return format(value, "f")


Amount = Annotated[Decimal, PlainSerializer(_plain, return_type=str, when_used="json")]
"""An exact decimal, a text in JSON."""


def exact(value: float) -> Decimal:
    """A number of the plan as a decimal: its nine figures, or all the figures that it is written with."""
    return Decimal(repr(value))


def figures(value: float) -> Decimal:
    """A computed number to nine figures, as plans keep them."""
    return Decimal(repr(kept(value)))


class Packs(Frozen):
    """So many packs of one offer: whose, what one holds, how many, the price of each and of all."""

    supplier: str
    holds: Amount
    packs: int
    each: Amount
    cost: Amount


class Cut(Frozen):
    """One stock length and the pieces cut from it, in order [mm]; what is left is beyond the saw cuts."""

    pieces: tuple[Amount, ...]


class OrderLine(Frozen):
    """One thing to order.

    Attributes:
        exact: What the drawings take, in `unit`; a length is in millimetres.
        breakage: Allowance for breakage and loss.
        spares: What stays with the owner.
        need: Their sum.
        bought: Packs by supplier and size; none where nobody's price is in the book.
        cuts: Stock lengths with their pieces; `least` is a number below which none can do it.
        thumb: What a rule of thumb would have bought, straight and diagonal; None where none is known.
        kg: Mass of what is bought; None where it is not known.
        one_lot: It must come from one lot, so from one supplier and one delivery.
    """

    item: str
    unit: str
    exact: Amount
    breakage: Amount
    spares: Amount
    need: Amount
    bought: tuple[Packs, ...] = ()
    cost: Amount = Decimal(0)
    cuts: tuple[Cut, ...] = ()
    least: int | None = None
    thumb: tuple[int, int] | None = None
    kg: Amount | None = None
    one_lot: bool = False


class Task(Frozen):
    """Hours of one task.

    Attributes:
        amount: Of the work, in `unit`.
        rate: Hours for one unit, after finished jobs were heard [h].
        spread: What the rate of one more job may differ by, one standard deviation [h].
        jobs: Finished jobs behind the rate.
        hours: Amount times rate, to a hundredth of an hour.
        each: Price of an hour; cost is hours times that.
    """

    task: str
    amount: Amount
    unit: str
    rate: Amount
    spread: Amount
    jobs: int
    basis: str
    source: str
    hours: Amount
    each: Amount
    cost: Amount


class Step(Frozen):
    """One step of the total: formula id, what is put in by name, and the result in the book's currency."""

    formula: str
    of: str = ""
    inputs: dict[str, Amount] = Field(default={})
    result: Amount


class Load(Frozen):
    """What is carried in and what goes away again.

    Attributes:
        kg: Of all whose mass is known; `unknown` names the rest.
        trips: At what is carried at once; None where the book does not say.
        climbed: Steps climbed with a load.
        waste_kg: Solid offcuts and broken tile; likewise litres, not heaped.
        by: Skips or bags, and how many; empty where the book has none.
    """

    kg: Amount
    unknown: tuple[str, ...] = ()
    trips: int | None = None
    climbed: int | None = None
    waste_kg: Amount = Decimal(0)
    waste_litres: Amount = Decimal(0)
    by: Literal["", "skip", "bag"] = ""
    number: int = 0


class Offer(Frozen):
    """An order and a price for one plan by one price book.

    Attributes:
        plan: SHA-256 of plan.json as it was priced.
        on: The day for which prices must hold, the plan's own.
        digest: SHA-256 of `book` as JSON, keys sorted, without spaces.
        complete: Whether everything to buy and to do has its price.
        price: Before tax, rounded to cents; each tax is rounded once, half up; `total` is their sum.
    """

    format: Literal["firstcourse-price"] = "firstcourse-price"
    version: Literal[1] = 1
    plan: str
    on: str
    currency: str
    digest: str
    book: PriceBook
    order: tuple[OrderLine, ...]
    load: Load
    tasks: tuple[Task, ...]
    steps: tuple[Step, ...]
    findings: tuple[Finding, ...] = ()
    complete: bool
    price: Amount
    total: Amount
