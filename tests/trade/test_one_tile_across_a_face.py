"""A shower one tile deep has no joint along it, and its plan was refused for want of a line to find that joint by.

Where tiles of a face lie behind each other, a line for their first joint is still asked for.
"""

import json
from dataclasses import replace
from functools import cache

from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.verify.marks import check_marks
from firstcourse.verify.reading import read_document

JOB = """
name: One tile deep
date: 2026-11-25
tape: mm
tiles: [{id: large, size: [600 mm, 2400 mm], thickness: 10 mm, kind: porcelain, joint: 3 mm, edges: rectified}]
rooms:
  - name: wet
    corners: [A, B, C, D]
    sides: {A-B: 1782 mm, B-C: 1500 mm, C-D: 1800 mm, D-A: 1500 mm}
    diagonals: {A-C: 2343 mm}
    floor:
      tiling: {tile: large}
      doorways: [{id: door, other_floor: 20 mm, wall: C-D, left: 100 mm, width: 800 mm, height: 2000 mm}]
      shower:
        {width: 1800 mm, depth: 900 mm, left: 0 mm, out: 0 mm, drain: {along: A-B, width: 60 mm}, falls: single,
          recess: 40 mm, membrane: sheet, tiling: {tile: large}}
"""


@cache
def planned() -> tuple[Plan, str]:
    # The plan is refused by the verifier where a line is left out that is needed.
    result = plan_job(read_job_text(JOB), effort=0)
    return result.plan, result.document


def test_no_line_is_asked_for_where_there_is_no_joint() -> None:
    plan, _ = planned()
    shower = next(surface for surface in plan.surfaces if surface.id == "wet/floor/shower")
    assert {a[0] == b[0] for a, b in (mark.line for mark in shower.marks if mark.kind == "start")} == {True}
    assert "TIL-134" in [finding.code for finding in plan.findings if finding.at[0] == shower.id]


def test_a_line_is_asked_for_where_there_is_a_joint() -> None:
    _, document = planned()
    plan = read_document(json.loads(document))
    floor = next(surface for surface in plan.surfaces if surface.id == "wet/floor")
    for level in (True, False):
        kept = tuple(mark for mark in floor.marks if (mark.line[0][1] == mark.line[1][1]) == level)
        assert 0 < len(kept) < len(floor.marks)
        changed = replace(plan, surfaces=(replace(floor, marks=kept),))
        left_out = [found.message for found in check_marks(changed) if "first joint" in found.message]
        assert left_out == (["is tiled, and an upright line for its first joint is left out"] if level else [])
