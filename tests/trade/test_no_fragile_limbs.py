"""A finger of board 9/16 x 20-3/4 in stood free beside a niche, where a seam ran on the stud next to it.

No part of a board is narrower than a limb may be: seams and joints keep clear of openings, jogs and their corners,
and what the room itself leaves too narrow is filled. The verifier asks it of every board.
"""

import json
from typing import Any

import pytest
import shapely
from shapely import Polygon

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: a niche beside a stud
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 121 in, B-C: 80 in, C-D: 121 in, D-A: 80 in}
    diagonals: {A-C: 145 1/16 in, B-D: 145 1/16 in}
    height: 96 in
    walls:
      - wall: A-B
        foot: floor
        framing: {spacing: 16 in, first: 15 1/4 in}
        openings:
          - {id: niche, kind: niche, left: 48 in, bottom: 40 in, width: 14 1/2 in, height: 20 in}
          - {id: window, kind: window, left: 80 in, bottom: 44 in, width: 30 in, height: 34 in}
          - {id: pipe, kind: pipe, left: 32 in, bottom: 20 in, diameter: 2 in}
"""
DRAIN = """
name: a drain in small boards
date: 2026-11-25
tape: inch
stock: [{id: board, size: [11 7/8 in, 5 7/8 in], thickness: 6 mm}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 2012 mm, B-C: 1748 mm, C-D: 1938 mm, D-A: 1741 mm}
    diagonals: {B-D: 2657 mm}
    floor:
      panel_joints: [{parallel_to: A-B, out: 1180 mm}]
      openings: [{id: drain, kind: drain, left: 400 mm, out: 350 mm, diameter: 110 mm}]
"""
MM = 1.0
LIMB = 50.8


@pytest.fixture(scope="module")
def plan() -> dict[str, Any]:
    return json.loads(plan_job(read_job_text(JOB), effort=0).document)


def narrow(board: dict[str, Any]) -> list[Polygon]:
    """Parts that no square as wide as a limb fits in, longer than it."""
    shape = Polygon(board["outline"], board["holes"])
    wide = shape.buffer(0.01 - LIMB / 2, join_style="mitre").buffer(LIMB / 2 + 0.01, join_style="mitre")
    parts = shapely.get_parts(shape.difference(wide))
    return [
        p for p in parts if max(p.bounds[2] - p.bounds[0], p.bounds[3] - p.bounds[1]) > LIMB and p.area > 50 * MM
    ]


def test_no_limb_is_narrower_than_the_rule(plan: dict[str, Any]) -> None:
    (wall,) = plan["surfaces"]
    assert wall["boards"]
    assert not [(board["id"], narrow(board)) for board in wall["boards"] if narrow(board)]
    assert "BRD-205" not in {finding["code"] for finding in plan["findings"]}


def test_seams_keep_clear_of_the_corners_of_openings(plan: dict[str, Any]) -> None:
    (wall,) = plan["surfaces"]
    for opening in wall["openings"]:
        if opening["kind"] in ("niche", "window"):
            for corner in opening["outline"]:
                for seam in wall["seams"]:
                    assert shapely.LineString(seam["line"]).distance(shapely.Point(corner)) > 50.8


def test_the_verifier_objects_to_a_limb(plan: dict[str, Any]) -> None:
    (wall,) = plan["surfaces"]
    board = next(b for b in wall["boards"] if not b["holes"])
    left = min(u for u, _ in board["outline"])
    low, high = (pick(v for _, v in board["outline"]) for pick in (min, max))
    middle = (low + high) / 2
    # A slot beside the left edge leaves a finger 20 mm wide.
    board["holes"] = [
        [
            [left + 20, middle - 100],
            [left + 20, middle + 100],
            [left + 80, middle + 100],
            [left + 80, middle - 100],
        ]
    ]
    assert "VER-308" in {objection.code for objection in verify(plan).objections}


def test_limbs_beside_a_round_hole_are_told_with_their_size() -> None:
    # Such a limb grows narrower along the arc: how long it is depends on how its width is measured.
    drained = json.loads(plan_job(read_job_text(DRAIN), effort=0).document)
    told = [finding for finding in drained["findings"] if finding["code"] == "BRD-205"]
    boards = {board["id"]: board for board in drained["surfaces"][0]["boards"]}
    assert told
    for one in told:
        (board,) = one["at"]
        boxes = [part.bounds for part in narrow(boards[board])]
        size = one["values"]["wide"]["value"], one["values"]["high"]["value"]
        assert size in [
            (pytest.approx(u1 - u0, abs=0.25), pytest.approx(v1 - v0, abs=0.25)) for u0, v0, u1, v1 in boxes
        ]
