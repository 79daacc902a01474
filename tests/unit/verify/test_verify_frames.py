"""Sheets of judged frames: a plan that says other than its figures is refused."""

import copy
import json
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import firstcourse
from proving import verify

LIMBER = Path(__file__).parents[3] / "examples" / "limber-floor" / "job.yaml"
Plan = dict[str, Any]


@cache
def document() -> str:
    return firstcourse.open(LIMBER).plan(effort=0).document


def floor(plan: Plan) -> dict[str, Any]:
    return next(sheet for sheet in plan["structures"] if sheet["kind"] == "floor")


def line(plan: Plan, name: str) -> dict[str, Any]:
    return next(line for line in floor(plan)["lines"] if line["name"] == name)


def call_a_failing_check_good(plan: Plan) -> None:
    line(plan, "bending")["holds"] = True


def call_a_good_check_failing(plan: Plan) -> None:
    line(plan, "shear")["holds"] = False


def soften_a_limit(plan: Plan) -> None:
    line(plan, "total_deflection")["limit"]["value"] = 200.0


def take_a_finding_away(plan: Plan) -> None:
    plan["findings"] = [each for each in plan["findings"] if each["at"][0] != "upper bath/floor"]


def point_at_no_working(plan: Plan) -> None:
    line(plan, "bearing")["working"] = "nowhere"


def make_a_layer_lighter(plan: Plan) -> None:
    floor(plan)["layers"][-1]["mass"]["value"] = 2.4


def make_all_layers_lighter(plan: Plan) -> None:
    floor(plan)["mass"]["value"] = 9.0


def judge_a_surface_that_is_not_there(plan: Plan) -> None:
    floor(plan)["surface"] = "attic/floor"


def give_a_limit_without_its_sense(plan: Plan) -> None:
    del line(plan, "bearing")["limit"]["sense"]


def give_no_number(plan: Plan) -> None:
    line(plan, "bearing")["found"] = "plenty"


def name_another_kind(plan: Plan) -> None:
    floor(plan)["kind"] = "roof"


def test_the_plan_as_made_has_no_objection() -> None:
    assert verify(json.loads(document())).objections == ()


@pytest.mark.parametrize(
    ("spoil", "code"),
    [
        (call_a_failing_check_good, "VER-912"),
        (call_a_good_check_failing, "VER-912"),
        (soften_a_limit, "VER-915"),
        (take_a_finding_away, "VER-913"),
        (point_at_no_working, "VER-917"),
        (make_a_layer_lighter, "VER-914"),
        (make_all_layers_lighter, "VER-914"),
        (judge_a_surface_that_is_not_there, "VER-911"),
        (give_a_limit_without_its_sense, "VER-915"),
        (give_no_number, "VER-001"),
        (name_another_kind, "VER-001"),
    ],
    ids=lambda value: value.__name__ if callable(value) else "",
)
def test_a_spoilt_sheet_is_refused(spoil: Callable[[Plan], None], code: str) -> None:
    plan = copy.deepcopy(json.loads(document()))
    spoil(plan)
    assert code in {objection.code for objection in verify(plan).objections}
