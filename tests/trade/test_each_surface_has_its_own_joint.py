"""The joint of a tile was kept once for a job: of a tile on floor and wall the last surface's stood for both.

A band laid stacked in a wall of running bond was held to the limit for shifted courses, which it has not.
"""

import json
from functools import cache
from typing import Any

from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import mm
from firstcourse.values import length
from proving import verify_text

ROOM = """
name: One tile on floor and wall
practice: uk
date: 2026-11-25
tape: mm
stock: [{id: board, size: [600 mm, 1200 mm], thickness: 12 mm, for: [floor, wall]}]
tiles:
  - {id: plain, size: [100 mm, 100 mm], thickness: 8 mm, size_spread: 0.1 mm}
  - {id: plank, size: [600 mm, 100 mm], thickness: 8 mm, size_spread: 0.1 mm}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 1500 mm, B-C: 1200 mm, C-D: 1500 mm, D-A: 1200 mm}
    diagonals: {A-C: 1921 mm, B-D: 1921 mm}
    height: 1300 mm
    taped_to: studs
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 400 mm}
      tiling: {tile: plain}
    walls:
      - wall: A-B
        boards: {bottom: 10 mm, top: 1200 mm}
        framing: {spacing: 400 mm, first: 400 mm}
        tiling: {tile: plain, pattern: running, bands: [{tile: plank, bottom: 600 mm}]}
"""


@cache
def planned() -> tuple[Plan, str]:
    done = plan_job(read_job_text(ROOM), effort=0)
    return done.plan, done.document


def test_floor_and_wall_have_each_their_own_joint() -> None:
    plan, _ = planned()
    joints = {
        name: plan.workings[f"tiles-joint@bath/{name}+tile_stock/plain"].result for name in ("floor", "wall/A-B")
    }
    assert joints == {"floor": length(mm(3)), "wall/A-B": length(mm(2))}


def test_a_band_is_judged_by_its_own_pattern() -> None:
    plan, document = planned()
    assert "tiles-offset@bath/wall/A-B+tile_stock/plain" in plan.workings
    assert "tiles-offset@bath/wall/A-B+tile_stock/plank" not in plan.workings
    assert not any(finding.code == "TIL-103" for finding in plan.findings)
    assert verify_text(document).objections == ()


def test_a_joint_of_another_surface_is_noticed() -> None:
    document: dict[str, Any] = json.loads(planned()[1])
    workings = document["workings"]
    wall, floor = (f"tiles-joint@bath/{name}+tile_stock/plain" for name in ("wall/A-B", "floor"))
    workings[wall]["result"] = workings[floor]["result"]
    assert "VER-903" in {one.code for one in verify_text(json.dumps(document)).objections}
