"""A plan carries what it was given under a seal: a weaker rule or another reading slipped in later is noticed.

Before, a plan's rules stood in it unsealed and its job not at all, so that no rules, an override
smuggled into the stamp or another thickness of a sheet passed for given.
"""

import json
from collections.abc import Callable
from typing import Any

import pytest

from example_plans import plan_of
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify
from sealing import reseal

TEXT = plan_of("tub-bathroom").model_dump_json(by_alias=True)
Plan = dict[str, Any]


def no_rules(plan: Plan) -> None:
    plan["given"]["rules"] = []


def a_weaker_rule(plan: Plan) -> None:
    change = {"rule": "fastening.spacing.wall", "value": 20, "unit": "in", "reason": "found so"}
    plan["given"]["job"]["rules"] = [change]


def another_reading(plan: Plan) -> None:
    sides = plan["given"]["job"]["rooms"][0]["sides"]
    sides["A-B"] += 1


def another_name(plan: Plan) -> None:
    plan["given"]["job"]["name"] = "another"


BROKEN = (no_rules, a_weaker_rule, another_reading, another_name)


@pytest.mark.parametrize("change", BROKEN)
def test_a_change_of_what_was_given_breaks_the_seal(change: Callable[[Plan], None]) -> None:
    plan = json.loads(TEXT)
    assert verify(plan).objections == ()
    change(plan)
    assert "VER-002" in {objection.code for objection in verify(plan).objections}


def a_weaker_rule_in_the_stamp(plan: Plan) -> None:
    change = {"rule": "fastening.spacing.wall", "value": 20.0, "unit": "in", "reason": "found so"}
    plan["job"]["overrides"] = [change]


def a_stamp_of_another_day(plan: Plan) -> None:
    plan["job"]["date"] = "2020-01-01"


def another_site(plan: Plan) -> None:
    plan["job"]["site"]["client"] = "somebody else"


def a_thinner_sheet(plan: Plan) -> None:
    plan["given"]["job"]["stock"][0]["thickness"] += 1


def a_cheaper_tile(plan: Plan) -> None:
    plan["given"]["job"]["tiles"][0]["price"] = 1.5


def one_more_wall(plan: Plan) -> None:
    walls = plan["given"]["job"]["rooms"][0]["walls"]
    walls.append(walls[0] | {"wall": "B-Z"})


def one_more_opening(plan: Plan) -> None:
    plan["given"]["job"]["rooms"][0]["floor"].setdefault("openings", []).append({"id": "pipe 9", "kind": "pipe"})


def another_floor_beyond(plan: Plan) -> None:
    plan["given"]["job"]["rooms"][0]["floor"]["doorways"][0]["other_floor"] += 3


RESEALED = (
    (a_weaker_rule_in_the_stamp, "VER-003"),
    (a_stamp_of_another_day, "VER-003"),
    (another_site, "VER-003"),
    (a_thinner_sheet, "VER-004"),
    (a_cheaper_tile, "VER-004"),
    (one_more_wall, "VER-004"),
    (one_more_opening, "VER-004"),
    (another_floor_beyond, "VER-903"),
)


@pytest.mark.parametrize(("change", "code"), RESEALED)
def test_a_change_under_a_new_seal_does_not_fit_the_rest(change: Callable[[Plan], None], code: str) -> None:
    plan = json.loads(TEXT)
    change(plan)
    reseal(plan)
    assert code in {objection.code for objection in verify(plan).objections}


def test_what_was_given_may_be_read_wrong_without_a_crash() -> None:
    for wrong in (None, [], "x", {"rooms": 3}, {"rooms": [{"name": 1}]}, {"name": "a", "date": "never"}):
        plan = json.loads(TEXT)
        plan["given"]["job"] = wrong
        assert verify(plan).objections


WALL = """
name: boards above a tub
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in}
    height: 96 in
    walls:
      - wall: A-B
        foot: tub
        framing: {spacing: 16 in, first: 16 in}
        boards: {bottom: 20 in}
        openings:
          - {id: spout, kind: pipe, left: 24 in, bottom: 30 in, diameter: 2 in}
          - {id: waste, kind: pipe, left: 24 in, bottom: 15 in, diameter: 2 in}
"""


def test_an_opening_below_the_boards_is_none_of_the_wall_and_one_in_them_is() -> None:
    plan = json.loads(plan_job(read_job_text(WALL), effort=0).document)
    (wall,) = plan["surfaces"]
    assert [opening["id"] for opening in wall["openings"]] == ["spout"]
    plan["given"]["job"]["rooms"][0]["walls"][0]["openings"][1]["bottom"] += 254.0
    reseal(plan)
    assert "VER-004" in {objection.code for objection in verify(plan).objections}
