"""The one way in which results become JSON: fields in their order, under the names they have in plan.json."""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from pathlib import PurePath
from typing import Any

from pydantic import BaseModel


def json_value(value: object) -> Any:
    """A result as values that `json.dumps` takes; the same value always gives the same.

    Lengths of the plan's own values are millimetres, as in plan.json.

    Args:
        value: A model, a data class, or mappings, lists and plain values of such.

    Raises:
        TypeError: It holds what no result holds.
    """
    if isinstance(value, BaseModel):
        return value.model_dump(mode="json", by_alias=True)
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: json_value(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): json_value(item) for key, item in value.items()}
    if isinstance(value, tuple | list):
        return [json_value(item) for item in value]
    if isinstance(value, Enum):
        return value.value
    if value is None or isinstance(value, str | bool | int | float):
        return value
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, PurePath):
        return str(value)
    raise TypeError(f"a result holds no {type(value).__name__}")
