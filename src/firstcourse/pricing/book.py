"""A price book: what a firm pays, charges and has measured of its own work, as frozen values.

Money and percentages are decimals from the text that was typed; a binary fraction never comes near them.
"""

import re
from datetime import date
from decimal import Decimal
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, PlainSerializer, StringConstraints, model_validator

from firstcourse.plan import Frozen
from firstcourse.plan.buying import Unit

_FIGURE = re.compile(r"\d{1,9}(?:\.\d{1,7})?")
MOST_DECIMALS = 4
"""Decimals of a price: a hundredth of a cent, as small things are sold by the thousand."""


def _figure(value: Any) -> Decimal:
    if isinstance(value, Decimal):
        return value
    text = value.strip() if isinstance(value, str) else ""
    if not _FIGURE.fullmatch(text):
        raise ValueError("must be a number in plain digits with a point, such as 17.25, without sign or unit")
    return Decimal(text)


def _price(value: Any) -> Decimal:
    found = _figure(value)
    if int(found.as_tuple().exponent) < -MOST_DECIMALS:
        raise ValueError(f"has more than {MOST_DECIMALS} decimals; give the price as it was quoted")
    return found


def _percent(value: Any) -> Decimal:
    return _price(value.strip().removesuffix("%").rstrip() if isinstance(value, str) else value)


def _plain(value: Decimal) -> str:
    return format(value, "f")


_AsText = PlainSerializer(_plain, return_type=str, when_used="json")
Figure = Annotated[Decimal, BeforeValidator(_figure), _AsText]
Price = Annotated[Decimal, BeforeValidator(_price), _AsText]
"""An amount in the book's currency, as it was quoted; not rounded to cents."""
Percent = Annotated[Decimal, BeforeValidator(_percent), Field(le=1000), _AsText]
Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=120)]
Whole = Annotated[int, Field(ge=1, le=1_000_000)]
Basis = Literal["yours", "common_practice", "published", "invented"]
"""Whence a rate of work comes; `invented` is for examples alone."""


class Material(Frozen):
    """What one pack of something costs at one supplier, from so many packs on.

    Attributes:
        item: As the plan's shopping list has it, such as `stock/wall board 3x5` or `grout`.
        holds: How much a pack holds, in `unit`; a length is in millimetres.
        from_packs: The price holds for all packs of an order of at least so many.
        kg: Mass of one pack as delivered [kg]; None where it was not given.
        valid_until: The last day of the price.
    """

    item: Text
    supplier: Text
    holds: Annotated[Figure, Field(gt=0)]
    unit: Unit
    price: Price
    from_packs: Whole = 1
    kg: Annotated[Figure, Field(gt=0)] | None = None
    quoted_by: Text
    quoted_on: date
    valid_until: date

    @model_validator(mode="after")
    def _in_order(self) -> "Material":
        if self.valid_until < self.quoted_on:
            raise ValueError(f"valid until {self.valid_until}, before it was quoted on {self.quoted_on}")
        return self


class Delivery(Frozen):
    """What a supplier takes for bringing an order."""

    supplier: Text
    price: Price


class Labour(Frozen):
    """What an hour costs; `task` is `any`, or the one task for which it is otherwise."""

    task: Text = "any"
    price: Price


class Rate(Frozen):
    """Hours that one unit of a task takes, before finished jobs say more.

    Attributes:
        task: Such as `set_tile_floor`; see docs/concepts/price.md.
        hours: For one unit of the task [h].
        spread: Of the rate from job to job, in percent of it (one standard deviation).
        worth: How many finished jobs it weighs as much as.
    """

    task: Text
    hours: Annotated[Figure, Field(gt=0)]
    spread: Annotated[Percent, Field(gt=0)]
    worth: Annotated[Figure, Field(gt=0)] = Decimal(1)
    basis: Basis
    source: Text


class Done(Frozen):
    """Hours kept on a finished job: how much of a task was done, and how long it took."""

    task: Text
    job: Text
    amount: Annotated[Figure, Field(gt=0)]
    hours: Annotated[Figure, Field(gt=0)]


class Hire(Frozen):
    """Something hired for the job, at a price for each of so many days."""

    item: Text
    days: Whole
    price: Price


class Disposal(Frozen):
    """How waste goes: a skip or a bag with what it holds at most, and what taking it away costs."""

    by: Literal["skip", "bag"]
    litres: Annotated[Figure, Field(gt=0)]
    most_kg: Annotated[Figure, Field(gt=0)]
    price: Price


class Overhead(Frozen):
    """Share of the direct cost and contingency that the firm itself costs."""

    percent: Percent


class Profit(Frozen):
    """Margin, a share of the price; or mark-up, a share of the cost. They are not the same number."""

    way: Literal["margin", "mark_up"]
    percent: Percent

    @model_validator(mode="after")
    def _below_all(self) -> "Profit":
        if self.way == "margin" and self.percent >= 100:
            raise ValueError("a margin is a share of the price and stays below 100; a mark-up may be more")
        return self


class Tax(Frozen):
    """A tax at the user's own rate.

    Attributes:
        on: The whole `price`, or what stands in it for `materials` or `labour` at cost, as local law has it.
    """

    name: Literal["sales_tax", "vat", "gst"]
    percent: Percent
    on: Literal["price", "materials", "labour"]


class Risk(Frozen):
    """What may happen, what it would cost, and how likely it is: money is set aside for it by name."""

    name: Text
    cost: Price
    percent: Annotated[Percent, Field(le=100)]


class Found(Frozen):
    """The price of a unit of work that strip-out may show to be needed, agreed before it is.

    Attributes:
        work: What is done.
        unit: As it is told to the client, such as `sheet`, `each` or `sq ft`.
    """

    work: Literal["replace_panel", "sister_joist", "add_stud", "level_floor", "straighten_wall"]
    unit: Literal["sheet", "each", "sq ft", "m2", "ft", "m"]
    price: Price


class Access(Frozen):
    """The way in: what is carried at once, steps, and the lowest door and narrowest turn.

    Attributes:
        trip_kg: What is carried in at once [kg].
        steps: Of the stairs on the way.
        door_high: Clear height of the lowest door or ceiling on the way [mm].
        turn_wide: Clear width of the stair at its turn, square to each flight [mm].
    """

    trip_kg: Annotated[Figure, Field(gt=0)]
    steps: Annotated[int, Field(ge=0, le=10_000)] = 0
    door_high: Annotated[Figure, Field(gt=0)] | None = None
    turn_wide: Annotated[Figure, Field(gt=0)] | None = None


class Heading(Frozen):
    """What the book is called, the currency of all its amounts, and whether they are made up for an example."""

    name: Text
    currency: Annotated[str, StringConstraints(pattern=r"^[A-Z]{3}$")]
    invented: bool = False


class PriceBook(Frozen):
    """All that a price needs beside the plan. Lists keep the order of the file."""

    book: Heading
    materials: tuple[Material, ...] = ()
    deliveries: tuple[Delivery, ...] = ()
    labour: tuple[Labour, ...] = ()
    rates: tuple[Rate, ...] = ()
    done: tuple[Done, ...] = ()
    hire: tuple[Hire, ...] = ()
    disposal: tuple[Disposal, ...] = ()
    overhead: Overhead | None = None
    profit: Profit | None = None
    taxes: tuple[Tax, ...] = ()
    risks: tuple[Risk, ...] = ()
    access: Access | None = None

    @property
    def is_invented(self) -> bool:
        """Whether its numbers are made up for an example: whatever prints them says so."""
        return self.book.invented or any(rate.basis == "invented" for rate in self.rates)

    found: tuple[Found, ...] = ()
