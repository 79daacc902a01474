"""A gas riser's zone covered a stud: its board had no fastener over 30 in, and no word of it.

A member behind a board that nothing may be driven into is told, and the verifier asks for it.
"""

import json
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: a gas riser beside a stud
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: laundry
    corners: [A, B, C, D]
    sides: {A-B: 64 in, B-C: 60 in, C-D: 64 in, D-A: 60 in}
    diagonals: {A-C: 87 3/4 in, B-D: 87 3/4 in}
    height: 90 in
    walls:
      - wall: A-B
        boards: {top: 36 in}
        framing: {spacing: 16 in, first: 16 in}
        no_fasteners: [{left: LEFT, right: RIGHT, bottom: 0 in, top: 90 in, why: gas riser}]
"""


def planned(left: str, right: str) -> dict[str, Any]:
    text = JOB.replace("LEFT", left).replace("RIGHT", right)
    return json.loads(plan_job(read_job_text(text), effort=0).document)


@pytest.mark.parametrize(("left", "right", "told"), [("28 in", "34 in", True), ("18 in", "24 in", False)])
def test_a_member_that_nothing_may_be_driven_into_is_told(left: str, right: str, told: bool) -> None:
    plan = planned(left, right)
    assert any(finding["code"] == "FST-107" for finding in plan["findings"]) == told
    plan["findings"] = [finding for finding in plan["findings"] if finding["code"] != "FST-107"]
    assert ("VER-411" in {objection.code for objection in verify(plan).objections}) == told
