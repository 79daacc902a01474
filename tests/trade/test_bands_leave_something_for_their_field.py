"""Bands that took up a whole wall were planned with starts and questions of a tile that is laid nowhere."""

import pytest

from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job

WALL = """
name: All band
practice: us
date: 2026-11-25
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
tiles:
  - {id: field, size: [12 in, 24 in], thickness: 3/8 in, edges: rectified, joint: 1/8 in}
  - {id: accent, size: [12 in, 12 in], thickness: 3/8 in, edges: rectified, joint: 1/8 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 48 in, C-D: 60 in, D-A: 48 in}
    diagonals: {A-C: 76 13/16 in, B-D: 76 13/16 in}
    height: 40 in
    walls:
      - wall: A-B
        foot: floor
        framing: {spacing: 16 in, first: 16 in}
        tiling:
          tile: field
          pattern: stacked
          start: {left: 0 in, up: 0 in}
          bands: [{tile: accent, pattern: stacked, bottom: 6 in, courses: 4}]
"""


def test_bands_that_leave_nothing_are_refused() -> None:
    with pytest.raises(JobError, match="bands take up all that is tiled, and nothing is left for 'field'"):
        plan_job(read_job_text(WALL), effort=0)


def test_bands_that_leave_a_course_are_planned() -> None:
    plan = plan_job(read_job_text(WALL.replace("courses: 4", "courses: 1")), effort=0).plan
    assert {area.role for area in plan.surfaces[0].tiled} == {"field", "band"}
