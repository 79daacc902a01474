"""When work begins, who does it and on which days: what a calendar of the work is made from."""

import datetime
from typing import Annotated, Literal, Self

from pydantic import AfterValidator, Field, FiniteFloat, WithJsonSchema, model_validator

from firstcourse.job.fields import MOST_ITEMS, JobModel
from firstcourse.units import fahrenheit

COLDEST_F, HOTTEST_F = 20.0, 120.0
"""No room is colder or hotter while it is worked in: a slip of the pen, or the wrong unit."""
_Date = Annotated[datetime.date, Field(ge=datetime.date(2000, 1, 1), lt=datetime.date(2100, 1, 1))]
Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
WORKING_WEEK: tuple[Weekday, ...] = ("mon", "tue", "wed", "thu", "fri")


def _temperature(text: str) -> str:
    if not COLDEST_F <= fahrenheit(text) <= HOTTEST_F:
        raise ValueError(f"'{text}' is no temperature of a room that is worked in; check its unit, F or C")
    return text


Temperature = Annotated[
    str,
    AfterValidator(_temperature),
    WithJsonSchema({"type": "string", "description": "a temperature with its unit", "examples": ["68 F", "20 C"]}),
]


class WorkSchedule(JobModel):
    """What a calendar of the work is made from; without it none is made."""

    starts: _Date = Field(description="First day on site.")
    days: Annotated[tuple[Weekday, ...], Field(min_length=1, max_length=7)] = Field(
        default=WORKING_WEEK, description="Days of the week that are worked: mon, tue, wed, thu, fri, sat, sun."
    )
    holidays: Annotated[tuple[_Date, ...], Field(max_length=MOST_ITEMS)] = Field(
        default=(), description="Days that are not worked besides: public holidays and your own."
    )
    hands: Annotated[int, Field(ge=1, le=12)] = Field(
        default=1, description="How many work at one time; they work on one thing together."
    )
    hours_a_day: Annotated[FiniteFloat, Field(ge=1, le=14)] = Field(
        default=8.0, description="Hours that each of them works on a day, breaks left out."
    )
    temperature: Temperature = Field(
        default="70 F", description="How cold the rooms get while things set, such as 60 F or 16 C."
    )
    mortar: Literal["standard", "rapid"] = Field(
        default="standard", description="Mortar under tile, by how it sets."
    )
    grout: Literal["cement", "resin"] = Field(default="cement", description="Grout, by what binds it.")
    seal: bool = Field(default=False, description="Whether the grout is sealed at the end.")
    tile_arrives: _Date | None = Field(
        default=None, description="Day on which the tile is delivered; taken to be there in time where not given."
    )

    @model_validator(mode="after")
    def _each_once(self) -> Self:
        for name, given in (("days", self.days), ("holidays", self.holidays)):
            if len(set(given)) < len(given):
                raise ValueError(f"{name} names a day twice; keep one")
        return self
