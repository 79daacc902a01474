"""A scrap of board too small for a fastener was told, and yet the plan was refused as its edge is not held.

What is told of one board speaks for that board alone: before, one loose edge on a wall let any other edge pass.
"""

import json
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: an opening nearly as wide as its wall
date: 2026-11-25
tape: mm
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 145 mm, B-C: 1500 mm, C-D: 145 mm, D-A: 1500 mm}
    diagonals: {A-C: 1507 mm, B-D: 1507 mm}
    height: 2704 mm
    walls:
      - wall: A-B
        framing: {spacing: 400 mm, first: 140 mm}
        openings:
          - {id: other, kind: other, points: [[1 mm, 1540 mm], [71 mm, 1423 mm], [142 mm, 1598 mm]]}
      - wall: B-C
        framing: {spacing: 400 mm, first: 400 mm}
"""


@pytest.fixture(scope="module")
def plan() -> dict[str, Any]:
    return json.loads(plan_job(read_job_text(JOB), effort=0).document)


def board_of(plan: dict[str, Any], name: str) -> dict[str, Any]:
    return next(board for surface in plan["surfaces"] for board in surface["boards"] if board["id"] == name)


def test_a_board_that_no_fastener_fits_in_is_told(plan: dict[str, Any]) -> None:
    told = [at for finding in plan["findings"] if finding["code"] == "FST-104" for at in finding["at"]]
    assert told
    assert not any(board_of(plan, name)["fasteners"] for name in told)


@pytest.mark.parametrize("code", ["FST-104", "FST-105"])
def test_what_is_told_of_one_board_holds_no_edge_of_another(plan: dict[str, Any], code: str) -> None:
    found = json.loads(json.dumps(plan))
    wall = next(surface for surface in found["surfaces"] if surface["id"] == "bath/wall/B-C")
    first, second = wall["boards"][:2]
    said = next(finding for finding in found["findings"] if finding["code"] == "FST-104")
    found["findings"].append(said | {"code": code, "at": [first["id"]]})
    second["fasteners"] = []
    loose = [one.where for one in verify(found).objections if one.code == "VER-409"]
    assert second["id"] in loose
