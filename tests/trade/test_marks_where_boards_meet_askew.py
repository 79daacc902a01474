"""A wall a hair shorter by its own readings than its side left a sliver beside its boards.

The floor's lines to snap then ended by as much beside the next side, and the verifier refused the plan.
"""

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job


@pytest.mark.parametrize("out", [0, 12, 40])
def test_lines_end_at_the_side_beside_boards_that_meet_it_askew(out: int) -> None:
    job = f"""
name: askew
practice: us
date: 2026-11-25
tape: mm
stock: [{{id: b, size: [1200 mm, 2400 mm], thickness: 12 mm}}]
tiles: [{{id: t, size: [604.4 mm, 604.4 mm], thickness: 12 mm, kind: porcelain}}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 1981 mm, B-C: 1993 mm, C-D: {1978 + out} mm, D-A: 1993 mm}}
    diagonals: {{A-C: {2808 + out // 2} mm, B-D: {2810 + out // 2} mm}}
    height: 2669 mm
    floor: {{framing: {{parallel_to: D-A, spacing: 400 mm, first: 200 mm}}, tiling: {{tile: t, pattern: running}}}}
    walls:
      - wall: C-D
        foot: none
        framing: {{spacing: 300 mm, first: 239 mm}}
        openings: [{{id: door, kind: door, left: 1022 mm, bottom: 0 mm, width: 619 mm, height: 1994 mm}}]
"""
    plan = plan_job(read_job_text(job), effort=0).plan
    assert [mark for surface in plan.surfaces for mark in surface.marks if mark.kind == "snap"]
