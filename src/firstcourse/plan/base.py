"""What every value of the plan is made of: ticks that are millimetres in JSON, points and rings of them."""

from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, PlainSerializer, ValidationInfo, WithJsonSchema
from pydantic.functional_validators import BeforeValidator

from firstcourse.units import ticks_from_mm, to_mm


def _ticks(value: Any, info: ValidationInfo) -> Any:
    if info.mode == "json" and isinstance(value, int | float) and not isinstance(value, bool):
        return ticks_from_mm(value)
    return value


Ticks = Annotated[
    int,
    BeforeValidator(_ticks),
    PlainSerializer(to_mm, return_type=float, when_used="json"),
    WithJsonSchema({"type": "number", "description": "millimetres, a multiple of 1/640"}),
]
"""A length: whole ticks in Python, millimetres in JSON."""

Point = tuple[Ticks, Ticks]
Ring = tuple[Point, ...]
Segment = tuple[Point, Point]


class Frozen(BaseModel):
    """Base of every plan value: immutable, and unknown fields are refused."""

    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True)
