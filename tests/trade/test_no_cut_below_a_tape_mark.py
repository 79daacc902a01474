"""A sheet of 914.4 mm was cut back to 914 mm, because a metric tape has no mark nearer to its edge.

What a sheet has beyond its last tape mark stays on; pieces at that edge keep it.
"""

import copy
import json

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: inch sheets and a metric tape
date: 2026-11-25
tape: mm
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 2100 mm, B-C: 1500 mm, C-D: 2100 mm, D-A: 1500 mm}
    diagonals: {A-C: 2581 mm, B-D: 2581 mm}
    height: 2440 mm
    floor: {framing: {parallel_to: A-B, spacing: 400 mm, first: 400 mm}, panels: {layers: [18 mm]}}
"""


def test_nothing_thinner_than_a_tape_mark_is_cut_off() -> None:
    plan = json.loads(plan_job(read_job_text(JOB), effort=0).document)
    sizes = {sheet["id"]: sheet["size"] for sheet in plan["sheets"]}
    kept = 0
    for sheet in plan["sheets"]:
        sides = {sheet["id"]: sheet["size"]}
        for cut in sheet["cuts"]:
            axis = 1 if cut["along"] == "x" else 0
            whole = sides[cut["of"]]
            parts = (cut["at"], whole[axis] - cut["at"])
            assert min(parts) > 1
            for name, part in zip(cut["gives"], parts, strict=True):
                sides[name] = [part if number == axis else side for number, side in enumerate(whole)]
    blanks = {piece["id"]: piece["blank"] for piece in plan["pieces"]}
    for sheet in plan["sheets"]:
        for part in sheet["parts"]:
            if part["piece"]:
                blank = blanks[part["piece"]][:: -1 if part["turned"] else 1]
                kept += any(0.3 < size - side < 0.5 for size, side in zip(part["size"], blank, strict=True))
    assert kept and all(size == [914.4, 1524.0] for size in sizes.values())
    assert not verify(plan).objections


def test_a_piece_may_keep_no_more_than_that() -> None:
    plan = json.loads(plan_job(read_job_text(JOB), effort=0).document)
    spoilt = copy.deepcopy(plan)
    for piece in spoilt["pieces"]:
        piece["blank"] = [side - 1 if side > 900 else side for side in piece["blank"]]
    assert "VER-504" in {objection.code for objection in verify(spoilt).objections}
