"""Every way of changing one value of a working, for tests that each of its values is proved."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from firstcourse.verify.shopping_fields import Working


def changes(working: Working) -> Iterator[tuple[str, Working]]:
    """What is changed, and the working with that change alone: each value, each of several, one input too many."""
    for name, value in working.inputs.items():
        for what, other in _others(value):
            yield f"{name} {what}", replace(working, inputs={**working.inputs, name: other})
    yield "input too many", replace(working, inputs={**working.inputs, "odd": 1})
    for what, other in _others(working.found):
        yield f"result {what}", replace(working, found=other)
    if working.limit is not None:
        for what, other in _others(working.limit):
            yield f"limit {what}", replace(working, limit=other)
    yield "rule", replace(working, rule="no.such" if working.rule else "tape.precision.mm")


def _others(value: Any) -> Iterator[tuple[str, Any]]:
    if isinstance(value, list):
        for place, one in enumerate(value):
            for what, other in _others(one):
                yield f"{place} {what}", [*value[:place], other, *value[place + 1 :]]
        if value:
            yield "one fewer", value[:-1]
    elif isinstance(value, bool):
        yield "not", not value
    elif isinstance(value, int):
        yield "one more", value + 1
    elif isinstance(value, Mapping) and "value" in value:
        yield "larger", {**value, "value": value["value"] + max(2.0, 0.01 * abs(value["value"]))}
        yield "unit", {**value, "unit": "furlong"}
        if "sense" in value:
            yield "sense", {**value, "sense": "is" if value["sense"] != "is" else "most"}
    elif isinstance(value, Mapping):
        yield "other", {key: f"{text} other" for key, text in value.items()}
