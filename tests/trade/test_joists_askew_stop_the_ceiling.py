"""A ceiling whose joists run well off square was boarded without asking what carries its edges, and said nothing.

Boards laid square to the room cross such joists slantwise: no edge runs along one, and the way from joist to joist
along an edge is longer than across them. That stops now, with the true ways told, until battens lie square.
"""

import copy
import json
import math
from itertools import pairwise
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.steps.judging import judge_job
from firstcourse.survey import survey_job
from proving import verify
from said import said_of

JOB = """
name: one ceiling with joists along a slanted wall
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in, for: [ceiling]}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 8', B-C: 5', C-D: 8' 6-1/2", D-A: 8'}
    diagonals: {A-C: 9' 5-1/4", B-D: 11' 3-3/4"}
    taped_to: studs
    height: 8'
    ceiling:
      framing: {parallel_to: C-D, spacing: 16 in, first: 15 1/4 in}
"""


@pytest.fixture(scope="module")
def plan() -> dict[str, Any]:
    return json.loads(plan_job(read_job_text(JOB), effort=0).document)


def test_the_plan_stops_and_says_how_far_it_is_from_joist_to_joist(plan: dict[str, Any]) -> None:
    (ceiling,) = plan["surfaces"]
    (told,) = (f for f in plan["findings"] if f["code"] == "SUI-115")
    assert told["severity"] == "stop"
    (au, av), (bu, bv) = max(
        ((a, b) for ring in [ceiling["supports"][0]["outline"]] for a, b in pairwise(ring)),
        key=lambda side: math.dist(*side),
    )
    turn = math.degrees(math.atan2(abs(bv - av), abs(bu - au)))
    assert 15 < turn < 25
    # With joists 16 in apart and 20.6 degrees off: 16 / sin is 45-1/2 in one way, 16 / cos 17-1/8 in the other.
    along, across = (16 / f(math.radians(turn)) for f in (math.sin, math.cos))
    ways = [told["values"][name]["value"] / 25.4 for name in ("longer_way", "shorter_way")]
    assert ways == pytest.approx([along, across], abs=0.05)
    assert told["measured"]["value"] == pytest.approx(turn, abs=0.05)
    (said,) = (f for f in said_of(plan) if f.code == "SUI-115")
    assert f"{turn:.0f}° off square; 1' 4\" apart, which is 1' 5-" in said.measured


def test_the_judgement_alone_says_it_too() -> None:
    job = read_job_text(JOB)
    rules = load_rules(job.date, job.practice, job.overrides())
    found = judge_job(job, survey_job(job, rules), rules).findings
    assert [f.code for f in found if f.severity == "stop"] == ["SUI-115"]


def test_the_verifier_asks_for_the_stop(plan: dict[str, Any]) -> None:
    assert verify(plan).objections == ()
    silent = copy.deepcopy(plan)
    silent["findings"] = [f for f in plan["findings"] if f["code"] != "SUI-115"]
    assert "VER-306" in {o.code for o in verify(silent).objections}


def test_battens_square_to_the_room_are_carried_on_with() -> None:
    battened = JOB.replace("parallel_to: C-D", "parallel_to: D-A")
    found = json.loads(plan_job(read_job_text(battened), effort=0).document)["findings"]
    assert not [f for f in found if f["code"] == "SUI-115"]
