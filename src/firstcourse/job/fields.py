"""What all of the job document is made of: names, lengths with a unit, and models that refuse unknown keys."""

from collections.abc import Mapping
from typing import Annotated, Any, get_args

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, FiniteFloat, WithJsonSchema
from pydantic.fields import FieldInfo

from firstcourse.units import (
    EMISSION,
    INERTIA,
    LOAD,
    SHEET_STEEL,
    STIFFNESS,
    WARMTH,
    WEIGHT,
    LengthError,
    MeasureKind,
    parse_length,
)

LONGEST_SIDE_MM = 100_000
WIDEST_JOINT_MM = 25
LARGEST_UNEVENNESS_MM = 8
"""By size or warpage of one tile: joints are three times the spread at the least, and no wider than 25 mm."""
THICKEST_MM = 50.8
"""A sheet or tile of more than 2 in is a slip of the pen."""
HIGHEST_PRICE = 1e9
BOOK_STOCK = ("floor board", "wall board")
"""What the rule book's own sheets are called, where a job names none: for floors, for walls and ceilings."""
MOST_ROOMS = 500
MOST_CORNERS = 60
MOST_ITEMS = 400
MOST_BOARDS = 500
"""On one surface: of the usual sheets so many cover 600 m2 and more, and seams are searched for minutes."""
NAME_PATTERN = r"^[A-Za-z0-9][A-Za-z0-9 _.\-]{0,59}$"
PRINTED_PATTERN = "^[ -~\u00a0-\u017f\u2010-\u2015\u2018-\u201a\u201c-\u201e\u2026]*$"
"""Letters that the face of the papers has: those of European languages in Latin script."""
CORNER_PATTERN = r"^[A-Za-z][A-Za-z0-9]{0,3}$"
PAIR_PATTERN = r"^[A-Za-z][A-Za-z0-9]{0,3}-[A-Za-z][A-Za-z0-9]{0,3}$"


def _whole_cents(price: float) -> float:
    if round(price, 2) != price:
        raise ValueError(f"{price:g} has parts of a cent; give the price in whole cents")
    return price


def _length(value: Any) -> Any:
    if isinstance(value, str):
        try:
            return parse_length(value)
        except LengthError as error:
            raise ValueError(str(error)) from None
    if isinstance(value, float):
        raise ValueError("a bare number has no unit")
    if not isinstance(value, int):
        given = "nothing is given" if value is None else "a list or a group of settings stands"
        raise ValueError(f"{given} where a length with its unit belongs, such as 63 1/2 in or 1615 mm")
    return value


_LENGTH_SCHEMA = WithJsonSchema(
    {
        "type": "string",
        "description": "a length with its unit",
        "examples": ["5' 3-1/2\"", "63.5 in", "1615 mm"],
    }
)
_LONGEST = LONGEST_SIDE_MM * 640
Length = Annotated[int, BeforeValidator(_length), Field(gt=0, le=_LONGEST), _LENGTH_SCHEMA]
"""More than zero, at most 100 m [ticks]."""
Thickness = Annotated[int, BeforeValidator(_length), Field(gt=0, le=round(THICKEST_MM * 640)), _LENGTH_SCHEMA]
"""Of a sheet or a tile: more than zero, at most 2 in [ticks]."""
Unevenness = Annotated[int, BeforeValidator(_length), Field(gt=0, le=LARGEST_UNEVENNESS_MM * 640), _LENGTH_SCHEMA]
"""What tiles of one box differ by: more than zero, at most 8 mm [ticks]."""
Distance = Annotated[int, BeforeValidator(_length), Field(ge=0, le=_LONGEST), _LENGTH_SCHEMA]
"""Zero or more, at most 100 m [ticks]."""
Offset = Annotated[int, BeforeValidator(_length), Field(ge=-_LONGEST, le=_LONGEST), _LENGTH_SCHEMA]
"""Either sign [ticks]."""
Joint = Annotated[int, BeforeValidator(_length), Field(gt=0, le=WIDEST_JOINT_MM * 640), _LENGTH_SCHEMA]
"""A grout joint: more than zero, at most 25 mm [ticks]."""


def _reads_as(kind: MeasureKind) -> AfterValidator:
    """A text that reads as a measure; it stays as written, so that the document can be written back."""

    def check(text: str) -> str:
        kind.read(text)
        return text

    return AfterValidator(check)


def _schema_of(kind: MeasureKind) -> WithJsonSchema:
    return WithJsonSchema(
        {"type": "string", "description": f"a {kind.what} with its unit", "examples": list(kind.examples)}
    )


Weight = Annotated[str, _reads_as(WEIGHT), _schema_of(WEIGHT)]
Load = Annotated[str, _reads_as(LOAD), _schema_of(LOAD)]
Stiffness = Annotated[str, _reads_as(STIFFNESS), _schema_of(STIFFNESS)]
Inertia = Annotated[str, _reads_as(INERTIA), _schema_of(INERTIA)]
SheetSteel = Annotated[str, _reads_as(SHEET_STEEL), _schema_of(SHEET_STEEL)]
Emission = Annotated[str, _reads_as(EMISSION), _schema_of(EMISSION)]
Warmth = Annotated[str, _reads_as(WARMTH), _schema_of(WARMTH)]
Price = Annotated[FiniteFloat, Field(ge=0, le=HIGHEST_PRICE), AfterValidator(_whole_cents)]
"""Of one sheet or box, in the job's currency."""
Name = Annotated[str, Field(pattern=NAME_PATTERN)]
Printed = Annotated[str, Field(pattern=PRINTED_PATTERN)]
"""A line of text that stands on the papers."""
Reason = Annotated[Printed, Field(min_length=3, max_length=300)]
ShortReason = Annotated[Printed, Field(min_length=3, max_length=100)]
Corner = Annotated[str, Field(pattern=CORNER_PATTERN)]
Pair = Annotated[str, Field(pattern=PAIR_PATTERN)]
"""Two corners, such as `A-B`."""


class JobModel(BaseModel):
    """Base of everything in the job document: unknown keys are refused."""

    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True)


def is_length(field: FieldInfo) -> bool:
    """Whether the whole numbers of a field are lengths in ticks; else they are counts or angles."""
    return any(_reads_length(part) for part in field.metadata) or _holds_length(field.annotation)


def _holds_length(annotation: Any) -> bool:
    return any(_reads_length(part) or _holds_length(part) for part in get_args(annotation))


def _reads_length(part: Any) -> bool:
    return isinstance(part, BeforeValidator) and part.func is _length


def one_of(given: Mapping[str, object]) -> None:
    """Refuse a setting that is given under two names, the older of which stands for one unit.

    Raises:
        ValueError: More than one of them is given.
    """
    told = [name for name, value in given.items() if value is not None]
    if len(told) > 1:
        raise ValueError(f"{told[0]} and {told[1]} say the same; give {told[0]} alone, with its unit")


def measured(kind: MeasureKind, written: str | None, older: float | None) -> float | None:
    """A measure in the unit of its kind, from what is given under its name or under its older one."""
    return older if written is None else kind.read(written)
