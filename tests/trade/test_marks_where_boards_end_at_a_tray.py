"""A mark of a floor was measured from a corner of tray and wall that the end of the boards leaves no room for.

The boards of a wall begin at a tray that lies slanting to it, so that their end stands a hair before the tray's
corner; ground too narrow for a hand was closed past that end, and the tape was held to a place inside the boards.
"""

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job

JOB = """
name: Slanting tray
date: 2026-11-25
tape: inch
tiles: [{id: hexagon, size: [1.969 in, 2.273 in], thickness: 0.354 in, shape: hexagon}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 87 5/16 in, B-C: 106 5/8 in, C-D: 87 3/8 in, D-A: 118 in}
    diagonals: {A-C: 138 11/16 in, B-D: 145 5/8 in}
    heights: {A: 99 1/8 in, B: 99 1/4 in, C: 98 13/16 in, D: 99 3/16 in}
    floor:
      framing: {parallel_to: B-C, spacing: 24 in, first: 13 13/16 in}
      openings: [{id: tray, kind: tray, side: C-D, left: 0 in, out: 0 in, width: 87 7/16 in, depth: 30 15/16 in}]
      tiling: {tile: hexagon, angle: 0, pattern: hexagon}
    walls:
      - wall: B-C
        foot: floor
        framing: {spacing: 12 in, first: 8 11/16 in}
        boards: {top: 78 3/4 in}
      - wall: D-A
        foot: none
        framing: {spacing: 16 in, first: 15 1/4 in}
        boards: {top: 78 3/4 in}
        openings: [{id: door, kind: door, left: 31 3/16 in, bottom: 0 in, width: 34 9/16 in, height: 82 5/16 in}]
"""


def test_the_lines_are_measured_from_where_a_tape_can_be_held() -> None:
    # The plan is refused by the verifier where a mark is held to what cannot be touched.
    plan = plan_job(read_job_text(JOB), effort=0).plan
    floor = next(surface for surface in plan.surfaces if surface.id == "bath/floor")
    assert len({mark.line for mark in floor.marks if mark.kind == "snap"}) == 2
