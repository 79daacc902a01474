"""What is bought, weighs, is lifted, sawn and paid: any other input or result of its working is objected to."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from example_plans import plan_of
from firstcourse.verify.formulas import EXPECTED, FORMULAS
from firstcourse.verify.reading import read_document
from proving import verify

MINE = "quantities-"


def others(value: Any) -> Iterator[Any]:
    """The same value with one thing changed, for each thing in it."""
    if isinstance(value, dict):
        for key, one in value.items():
            yield from ({**value, key: other} for other in others(one))
    elif isinstance(value, list):
        yield [*value, {"ref": "nowhere"}]
        for place, one in enumerate(value):
            yield [*value[:place], *value[place + 1 :]]
            yield from ([*value[:place], other, *value[place + 1 :]] for other in others(one))
    elif isinstance(value, bool):
        yield not value
    elif isinstance(value, str):
        yield f"{value}x"
    else:
        yield value * 1.01 + type(value)(1)


@pytest.mark.parametrize("example", ["tub-bathroom", "tiled-shower"])
def test_every_input_and_result_is_held(example: str) -> None:
    plan = read_document(plan_of(example).model_dump(mode="json", by_alias=True))
    mine = [one for one in plan.workings.values() if one.formula.startswith(MINE)]
    assert {one.formula for one in mine} >= {"quantities-grout", "quantities-cuts", "quantities-lifting"}
    asked = {key for expected in EXPECTED for key in expected(plan)}
    assert {one.key for one in mine} <= asked
    for working in mine:
        prove = FORMULAS[working.formula]
        assert not list(prove(plan, working))
        changed = [replace(working, found=other) for other in others(working.found)]
        changed += [
            replace(working, inputs={**working.inputs, name: other})
            for name, value in working.inputs.items()
            for other in others(value)
        ]
        changed += [replace(working, inputs={**working.inputs, "more": 1}), replace(working, rule="water.lap")]
        changed += [replace(working, limit={"value": 1.0, "unit": "kg", "sense": "most"})]
        for one in changed:
            assert list(prove(plan, one)), one


@pytest.mark.parametrize("field", ["item", "exact", "unit", "buy", "pack", "working"])
def test_every_field_of_a_line_is_held(plan: dict[str, Any], field: str) -> None:
    for line in plan["quantities"]:
        for other in others(line[field]):
            spoilt = {
                **plan,
                "quantities": [{**one, **({field: other} if one is line else {})} for one in plan["quantities"]],
            }
            assert verify(spoilt).objections, (line["item"], other)


def test_none_may_be_missing(plan: dict[str, Any]) -> None:
    for key in [key for key in plan["workings"] if key.startswith(MINE)]:
        left = {name: working for name, working in plan["workings"].items() if name != key}
        found = {(one.code, one.where) for one in verify({**plan, "workings": left}).objections}
        assert ("VER-907", key) in found


def test_a_heavy_sheet_is_told_of(plan: dict[str, Any]) -> None:
    plan["findings"] = [one for one in plan["findings"] if one["code"] != "QTY-101"]
    assert ("VER-910", "stock/3x5") in {(one.code, one.where) for one in verify(plan).objections}
