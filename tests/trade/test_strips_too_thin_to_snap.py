"""A cut took 1/4 in off a sheet of 60 in, which no knife can snap off, and nothing said so.

Each sheet with such a cut has a finding with the width of the strip; the verifier replays the cuts and asks for
it.
"""

import copy
import json

from firstcourse.job import read_job_text
from firstcourse.planning import plan_job
from firstcourse.verify import verify

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
    assert len(told) == 1 and '1/4"' in told[0]["measured"]
    assert told[0]["where"] == f"sheet {plan['sheets'][0]['id']}"
    spoilt = copy.deepcopy(plan)
    spoilt["findings"] = [finding for finding in spoilt["findings"] if finding["code"] != "BRD-206"]
    assert "VER-510" in {objection.code for objection in verify(spoilt).objections}
