"""What boards and fasteners of a surface come to: any other input or result is objected to."""

from typing import Any

import pytest

from proving import verify


@pytest.mark.parametrize("formula", ["boards-area", "boards-fasteners"])
def test_every_input_and_the_result_are_held(plan: dict[str, Any], formula: str) -> None:
    key = f"{formula}@bath/wall/A-B"
    working = plan["workings"][key]
    for name, value in [*working["inputs"].items(), ("result", working["result"])]:
        holder = working if name == "result" else working["inputs"]
        for other in _others(value):
            holder[name] = other
            assert ("VER-903", key) in {(one.code, one.where) for one in verify(plan).objections}, (name, other)
        holder[name] = value
    for name, other in (("rule", "boards.piece.min"), ("limit", {"value": 1.0, "unit": "mm", "sense": "most"})):
        assert ("VER-903", key) in {
            (one.code, one.where)
            for one in verify({**plan, "workings": {**plan["workings"], key: {**working, name: other}}}).objections
        }


def _others(value: Any) -> list[Any]:
    if isinstance(value, int):
        return [value + 1]
    if isinstance(value, list):
        return [value[1:], [*value, value[0]]]
    return [{**value, "value": value["value"] * 1.01}, {**value, "unit": "in"}]


def test_none_may_be_missing(plan: dict[str, Any]) -> None:
    del plan["workings"]["boards-fasteners@bath/floor"]
    assert ("VER-907", "boards-fasteners@bath/floor") in {(one.code, one.where) for one in verify(plan).objections}
