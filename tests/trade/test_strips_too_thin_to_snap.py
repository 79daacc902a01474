"""A cut took 1/4 in off a sheet of 60 in, which no knife can snap off, and nothing said so.

Each surface with such cuts has one finding, with the width of each strip, its board and its sheet; the verifier
replays the cuts and asks for it.
"""

import copy
import json

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify
from said import said_of

JOB = """
name: a wall shorter by a finger than a sheet
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 85 in, B-D: 85 in}
    height: 96 in
    walls:
      - {wall: A-B, foot: floor, framing: {spacing: 16 in, first: 15 1/4 in}, boards: {top: 36 3/8 in}}
"""


def test_a_strip_too_thin_to_snap_is_told_and_asked_for() -> None:
    plan = json.loads(plan_job(read_job_text(JOB), effort=0).document)
    told = [finding for finding in plan["findings"] if finding["code"] == "BRD-206"]
    assert len(told) == 1
    surface = next(surface for surface in plan["surfaces"] if surface["boards"])
    assert told[0]["at"] == [surface["id"]]
    (said,) = [finding for finding in said_of(plan) if finding.code == "BRD-206"]
    assert said.measured == ", ".join(
        f'1/4" off board {board["mark"]} (sheet {plan["sheets"][0]["id"]})' for board in surface["boards"]
    )
    assert "silica" in said.remedy
    spoilt = copy.deepcopy(plan)
    spoilt["findings"] = [finding for finding in spoilt["findings"] if finding["code"] != "BRD-206"]
    assert "VER-510" in {objection.code for objection in verify(spoilt).objections}
    of_other = copy.deepcopy(plan)
    for finding in of_other["findings"]:
        if finding["code"] == "BRD-206":
            finding["values"]["widths"][0]["value"] = 9.525
    assert "VER-510" in {objection.code for objection in verify(of_other).objections}
