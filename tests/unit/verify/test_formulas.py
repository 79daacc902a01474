"""Workings are proved by their formula; an unknown, absent or extra one, or one under another key, is told."""

import datetime
from dataclasses import replace

import pytest

from firstcourse.rules import load_rules
from firstcourse.units import Tape
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.shopping_fields import Shopping, Working
from firstcourse.verify.structure import Document

DOOR = {"id": "hall", "other_floor": 12.0}
ROOM = {"name": "bath", "floor": {"tile": {}, "doorways": [DOOR]}}
SOURCE = Node({"given": {"job": {"rooms": [ROOM]}}}, "plan")
STEP = Working(
    formula="height-doorway_step",
    at=("bath/floor/door/hall",),
    inputs={
        "this_floor": {"value": 20.0, "unit": "mm"},
        "other_floor": {"value": 12.0, "unit": "mm"},
        "profile": {"word": "bevelled_reducer"},
        "long": {"value": 16.0, "unit": "mm"},
        "slope": {"value": 2.0, "unit": ""},
    },
    found={"value": 8.0, "unit": "mm"},
)


def objections(**workings: Working) -> list[tuple[str, str]]:
    plan = Document(
        tape=Tape.MM, rules=load_rules(datetime.date(2026, 11, 1)), surfaces=(), pieces=(), sheets=(), stock={},
        tile_stock={}, counts=(), findings=(), shopping=Shopping(workings=workings), frames=(), bounds=(),
        source=SOURCE,
    )  # fmt: skip
    return [(one.code, one.where) for one in check_formulas(plan)]


def test_a_step_that_is_the_difference_of_its_floors_stands():
    assert objections(**{STEP.key: STEP}) == []


@pytest.mark.parametrize(
    ("code", "key", "changed"),
    [
        ("VER-903", STEP.key, {"inputs": {**STEP.inputs, "other_floor": {"value": 12.1, "unit": "mm"}}}),
        ("VER-903", STEP.key, {"inputs": {**STEP.inputs, "long": {"value": 15.0, "unit": "mm"}}}),
        ("VER-903", STEP.key, {"inputs": {**STEP.inputs, "slope": {"value": 2.0, "unit": "mm"}}}),
        ("VER-903", STEP.key, {"inputs": {**STEP.inputs, "profile": {"word": "straight_edge_trim"}}}),
        ("VER-903", STEP.key, {"inputs": {k: v for k, v in STEP.inputs.items() if k != "long"}}),
        ("VER-907", "height-doorway_step@bath/floor/door/yard", {"at": ("bath/floor/door/yard",)}),
        ("VER-903", STEP.key, {"found": {"value": 8.1, "unit": "mm"}}),
        ("VER-908", "height-doorway@bath/floor/door/hall", {"formula": "height-doorway"}),
        ("VER-908", "another key", {}),
    ],
)
def test_what_does_not_follow_is_objected_to(code: str, key: str, changed: dict[str, object]):
    assert (code, key) in objections(**{key: replace(STEP, **changed)})  # type: ignore[arg-type]


def test_a_step_that_is_not_worked_out_is_objected_to():
    assert objections() == [("VER-907", STEP.key)]
