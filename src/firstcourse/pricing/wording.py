"""The words of a proposal that are the firm's own: who it is, what it adds to the plan's scope, how it is paid."""

import re
from decimal import Decimal
from typing import Annotated, Any, Literal

from pydantic import Field, StringConstraints, field_validator, model_validator

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.files import utf8_text
from firstcourse.placed import read_placed
from firstcourse.plan import Frozen
from firstcourse.pricing.book import Percent, Price, Text
from firstcourse.units import printable

LARGEST_WORDS = 200_000
FIELDS = ("job", "client", "address", "business", "date", "valid_until", "price", "tax", "total", "currency")
"""What may stand in braces within a text."""
_FIELD = re.compile(r"\{([^{}]*)\}")
Long = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=1500)]
Stage = Literal["signing", "start", "boards", "waterproofing", "tile", "end"]
"""When a payment is due; each is reached when that work is done, and `start` when it begins."""


class Business(Frozen):
    """Who offers the work; the licence as local law asks for it."""

    name: Text
    address: Text
    phone: Text
    licence: Text | None = None


class Payment(Frozen):
    """A share of the total, due at a stage of the work."""

    at: Stage
    percent: Annotated[Percent, Field(gt=0)]


class Choice(Frozen):
    """Something that the client may add, with what it adds to the price before tax."""

    text: Long
    price: Price


def _customary() -> tuple[Payment, ...]:
    # Common practice, from memory; some places limit what may be asked before work begins.
    shares: tuple[tuple[Stage, int], ...] = (
        ("signing", 10), ("start", 30), ("boards", 25), ("tile", 25), ("end", 10),
    )  # fmt: skip
    return tuple(Payment(at=at, percent=Decimal(percent)) for at, percent in shares)


class Wording(Frozen):
    """What a firm says in every proposal.

    Attributes:
        invented: Names in it are made up, which every page then says.
        client: Who it is for; the job's own where not given.
        opening: Above the scope, with fields in braces.
        included: Beside what the plan includes; likewise excluded and assumed.
        price_by: Whether the price is told as one number or by sections too.
        valid_days: How long the offer stands.
    """

    invented: bool = False
    business: Business
    client: Text | None = None
    opening: Long | None = None
    included: tuple[Long, ...] = ()
    excluded: tuple[Long, ...] = ()
    assumed: tuple[Long, ...] = ()
    cautions: tuple[Long, ...] = ()
    closing: Long | None = None
    options: tuple[Choice, ...] = ()
    price_by: Literal["total", "section"] = "section"
    payments: tuple[Payment, ...] = Field(default_factory=_customary)
    valid_days: Annotated[int, Field(ge=1, le=366)] = 30

    @field_validator("opening", "included", "excluded", "assumed", "cautions", "closing")
    @classmethod
    def _fields_known(cls, value: Any) -> Any:
        for text in (value,) if isinstance(value, str) else value or ():
            for name in _FIELD.findall(text):
                if name not in FIELDS:
                    raise ValueError(f"{{{name[:40]}}} is no field; {', '.join(FIELDS)} are")
            if set(_FIELD.sub("", text)) & set("{}"):
                raise ValueError("has a brace that stands alone; a field is written {total}")
        return value

    @model_validator(mode="after")
    def _paid_once(self) -> "Wording":
        whole = sum((one.percent for one in self.payments), Decimal(0))
        if whole != 100:
            raise ValueError(f"payments come to {whole} %; they must come to 100 %")
        if len({one.at for one in self.payments}) < len(self.payments):
            raise ValueError("two payments are due at one stage; give one of them")
        return self

    def texts(self) -> tuple[str, ...]:
        """All texts with fields."""
        single = tuple(text for text in (self.opening, self.closing) if text)
        return (*single, *self.included, *self.excluded, *self.assumed, *self.cautions)


def read_wording(data: bytes, name: str, empty: frozenset[str] = frozenset()) -> Wording:
    """Read the words of a proposal.

    Args:
        data: YAML or JSON.
        name: What to call it in messages.
        empty: Fields that have nothing to say for this job, such as its client.

    Raises:
        JobError: It says what it cannot say, or asks for a field that has no value; with line and column.
    """
    found = read_placed(data, name, Wording, "the words of a proposal")
    own = empty - {"client"} if found.client else empty
    problems = []
    for number, line in enumerate(utf8_text(data).splitlines(), start=1):
        for asked in _FIELD.finditer(line.partition(" #")[0]):
            if asked[1] in own:
                said = f"{{{asked[1]}}} has no value: enter it under `site` of the job, or leave the field out"
                at = asked.start() + 1
                problems.append(InputProblem(file=name, line=number, column=at, field=asked[1], message=said))
    if problems:
        raise JobError(tuple(problems))
    return found


def filled(text: str, values: dict[str, str]) -> str:
    """A text with its fields filled in.

    Raises:
        InputValueError: A field has no value.
    """
    without = [name for name in _FIELD.findall(text) if not values.get(name)]
    if without:
        raise InputValueError(printable(f"{{{without[0]}}} has no value"))
    return _FIELD.sub(lambda found: values[found[1]], text)
