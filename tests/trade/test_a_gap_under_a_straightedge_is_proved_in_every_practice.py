"""A floor in UK practice with a gap read under a straightedge had a plan that did not verify.

The proof asked from which edge on a tile is large; UK practice has one tolerance for all tiles and no such value.
"""

import json

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """\
name: Gap
practice: {practice}
date: 2026-11-25
tape: mm
stock:
  - {{id: cement board, size: [1200 mm, 800 mm], thickness: 12 mm}}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 1500 mm, B-C: 1600 mm, C-D: 1500 mm, D-A: 1600 mm}}
    diagonals: {{A-C: 2193 mm}}
    floor:
      framing: {{parallel_to: A-B, spacing: 400 mm, first: 400 mm}}
      tile: {{kind: ceramic, thickness: 9 mm, edge: 600 mm}}
      straightedge: [{{reach: 2 m, gap: 2 mm}}, {{reach: 600 mm, gap: 1 mm}}]
"""


@pytest.mark.parametrize("practice", ["us", "uk", "au"])
def test_the_gap_is_judged_and_proved(practice: str) -> None:
    document = json.loads(plan_job(read_job_text(JOB.format(practice=practice)), effort=0).document)
    assert verify(document).objections == ()
    assert "ground-gaps@bath/floor" in document["workings"]
