"""A wet UK floor got soft joints every 3 m, which is what walls are told: across a bathroom for nothing.

Floors go by what UK trade advice asks of floors; walls keep the closer end of theirs.
"""

import json

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: one wet floor of 4.6 m
practice: uk
date: 2026-11-25
tape: mm
tiles: [{id: slate, size: [300 mm, 600 mm], thickness: 10 mm}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 4600 mm, B-C: 2000 mm, C-D: 4600 mm, D-A: 2000 mm}
    diagonals: {A-C: 5016 mm, B-D: 5016 mm}
    height: 2400 mm
    floor:
      tiling: {tile: slate, pattern: stacked, exposure: moist}
"""


def test_a_wet_floor_of_4600_mm_needs_no_joint_across() -> None:
    plan = json.loads(plan_job(read_job_text(JOB), effort=0).document)
    (floor,) = plan["surfaces"]
    assert floor["tile_exposure"] == "moist" and floor["soft_joints"]
    assert {joint["place"] for joint in floor["soft_joints"]} == {"edge"}
    assert verify(plan).objections == ()
