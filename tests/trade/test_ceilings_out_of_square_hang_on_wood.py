"""A ceiling whose joists ran along a side a hair out of square was boarded as if nothing carried it.

Boards had no fastener and seams stood in the open bay; no flange on such a joist was told either. No room is
square, so joists run along an axis only nearly.
"""

import copy
import json
import math
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: one ceiling out of square
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in, for: [ceiling]}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 8' 0", B-C: 7' 0", C-D: 8' 0-3/8", D-A: 7' 0"}
    diagonals: {A-C: 10' 7-11/16", B-D: 10' 7-13/16"}
    taped_to: studs
    height: 8'
    ceiling:
      framing: {parallel_to: D-A, spacing: 16 in, first: 15 1/4 in}
"""


@pytest.fixture(scope="module")
def plan() -> dict[str, Any]:
    return json.loads(plan_job(read_job_text(JOB), effort=0).document)


def test_joists_run_along_an_axis_nearly(plan: dict[str, Any]) -> None:
    (ceiling,) = plan["surfaces"]
    assert any(a[0] != b[0] for s in ceiling["supports"] for a, b in [s["outline"][1:3]]), "no joist is askew"
    assert ceiling["framing_axis"] == "v"


def test_every_board_is_fastened_and_no_edge_hangs(plan: dict[str, Any]) -> None:
    (ceiling,) = plan["surfaces"]
    assert not [f for f in plan["findings"] if f["code"] in ("FST-104", "FST-105")]
    for board in ceiling["boards"]:
        for (au, av), (bu, bv) in zip(board["outline"], board["outline"][1:] + board["outline"][:1], strict=True):
            if abs(bv - av) < 60 or abs(bu - au) > abs(bv - av) / 10:
                continue
            for part in range(21):
                spot = (au + (bu - au) * part / 20, av + (bv - av) * part / 20)
                assert min(math.dist(spot, at) for at in board["fasteners"]) <= 106, board["id"]


def test_the_verifier_asks_what_the_members_run_along(plan: dict[str, Any]) -> None:
    assert verify(plan).objections == ()
    spoilt = copy.deepcopy(plan)
    spoilt["surfaces"][0]["framing_axis"] = ""
    assert "VER-306" in {o.code for o in verify(spoilt).objections}


def test_a_flange_on_a_joist_is_told_where_the_room_is_out_of_square() -> None:
    job = JOB.replace(
        "    ceiling:\n",
        """    floor:
      openings: [{id: flange, kind: flange, side: D-A, left: 40 in, out: 16 in, diameter: 4 in}]
      framing: {parallel_to: D-A, spacing: 16 in, first: 15 1/4 in}
    ceiling:
""",
    ).replace("stock: [", "stock: [{id: thin, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}, ")
    told = plan_job(read_job_text(job), effort=0).plan.findings
    assert [f.at[0] for f in told if f.code == "SUR-108"] == ["bath/floor/opening/flange"]
