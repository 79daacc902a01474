"""A plan that judges a stronger floor than the job gives was called consistent: only its sums were proved."""

import json
from functools import cache
from typing import Any

import pytest
import yaml

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: Weak floor
date: 2026-11-25
tape: inch
stock:
  - {id: board, size: [36 in, 60 in], thickness: 1/4 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in}
    height: 90 in
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      joists: {span: 12 ft, size: 2x8, species: hf, grade: no2, bearing: 3 in}
      panels: {layers: [23/32 in]}
      tile: {kind: ceramic, thickness: 3/8 in, edge: 12 in}
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 8 in}
        studs: {size: 2x4, species: spf, grade: no2}
"""


def changed(part: str, **fields: Any) -> str:
    """The job with other entries in one part of its floor, or of its first wall's studs."""
    job = yaml.safe_load(JOB)
    room = job["rooms"][0]
    (room["walls"][0]["studs"] if part == "studs" else room["floor"][part]).update(fields)
    return yaml.safe_dump(job)


@cache
def planned(text: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(plan_job(read_job_text(text), effort=0).document)
    return found


def forged(text: str) -> dict[str, Any]:
    """The plan of the job with the judgement of another, whole and right in itself."""
    other, plan = planned(text), json.loads(json.dumps(planned(JOB)))
    own = {name: one for name, one in plan["workings"].items() if not name.startswith("frames-")}
    frames = {name: one for name, one in other["workings"].items() if name.startswith("frames-")}
    return plan | {
        "structures": other["structures"],
        "findings": other["findings"],
        "workings": {**own, **frames},
    }


@pytest.mark.parametrize(
    ("part", "fields"),
    [
        ("joists", {"species": "dfl"}),
        ("joists", {"size": "2x10"}),
        ("joists", {"span": "11 ft"}),
        ("joists", {"sistered": "full"}),
        ("joists", {"sistered": "part"}),
        ("joists", {"loads": [{"load_lb": 100, "at": "5 ft"}]}),
        ("joists", {"cuts": [{"kind": "hole", "size": "1 in", "at": "30 in", "edge": "3 in"}]}),
        ("panels", {"ratings": ["48/24"]}),
        ("panels", {"layers": ["23/32 in", "19/32 in"], "glued_and_screwed": True}),
        ("studs", {"species": "dfl"}),
    ],
)
def test_a_frame_is_judged_as_the_job_gives_it(part: str, fields: dict[str, Any]) -> None:
    assert verify(planned(JOB)).objections == ()
    assert "VER-004" in {said.code for said in verify(forged(changed(part, **fields))).objections}


def test_no_frame_is_left_out() -> None:
    plan = json.loads(json.dumps(planned(JOB)))
    (wall,) = [sheet for sheet in plan["structures"] if sheet["kind"] == "wall"]
    plan["structures"].remove(wall)
    keys = {line["working"] for line in wall["lines"]}
    plan["workings"] = {name: one for name, one in plan["workings"].items() if name not in keys}
    assert ("VER-004", "bath/wall/A-B") in {(said.code, said.where) for said in verify(plan).objections}
