"""Doors of the plan were held to the line of their wall alone: their names, heights and numbers proved nothing."""

import json
from functools import cache
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify_text

ROOM = """
name: Room with two doors
practice: us
date: 2026-11-25
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in, for: [floor, wall]}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 72 in, C-D: 60 in, D-A: 72 in}
    diagonals: {A-C: 93 11/16 in, B-D: 93 11/16 in}
    taped_to: studs
    height: 96 in
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 16 in}
      doorways: [{id: hall, other_floor: 0 in, wall: C-D, left: 6 in, width: 30 in, height: 80 in}]
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 16 in}
        openings: [{id: closet, kind: door, left: 24 in, bottom: 0 in, width: 24 in, height: 78 in}]
"""


@cache
def document() -> str:
    return plan_job(read_job_text(ROOM), effort=0).document


def test_doors_as_given_hold() -> None:
    assert verify_text(document()).objections == ()
    assert [door["id"] for door in json.loads(document())["doors"]] == ["hall", "closet"]


@pytest.mark.parametrize(
    ("door", "field", "value"),
    [(0, "height", 2000.0), (0, "id", "other"), (0, "room", "attic"), (1, "height", 1900.0), (1, "bottom", 25.4)],
)
def test_a_door_that_is_told_otherwise_is_noticed(door: int, field: str, value: object) -> None:
    plan: dict[str, Any] = json.loads(document())
    plan["doors"][door][field] = value
    assert "VER-112" in {one.code for one in verify_text(json.dumps(plan)).objections}


@pytest.mark.parametrize("doors", [slice(0, 1), slice(1, 2), slice(0, 0), slice(None, None, -1)])
def test_doors_left_out_or_in_another_order_are_noticed(doors: slice) -> None:
    plan: dict[str, Any] = json.loads(document())
    plan["doors"] = plan["doors"][doors]
    assert "VER-112" in {one.code for one in verify_text(json.dumps(plan)).objections}
