"""A board beside a wall askew took up a thin strip, became 1 mm wider by it, and its sheet was cut as before.

The plan did not verify, and the setter got none. A board keeps the sheet's edge only where its other side stays.
"""

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_MM

JOB = """
name: a floor askew
date: 2026-11-25
tape: mm
stock:
  - {id: board 1, size: [900 mm, 1500 mm], thickness: 12 mm, price: 15}
  - {id: board 2, size: [600 mm, 1200 mm], thickness: 12 mm, price: 41}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 1924 mm, B-C: 1658 mm, C-D: 1925 mm, D-A: 1656 mm}
    diagonals: {A-C: 2530 mm, B-D: 2549 mm}
    floor:
      framing:
        parallel_to: A-B
        members: [{at: 129 mm}, {at: 410 mm}, {at: 760 mm}, {at: 1176 mm}, {at: 1731 mm}]
      panel_joints: [{parallel_to: B-C, out: 1137 mm}, {parallel_to: A-B, out: 1076 mm}]
      openings:
        - {id: pipe, kind: drain, side: B-C, left: 462 mm, out: 1239 mm, diameter: 90 mm}
        - {id: drain, kind: drain, side: C-D, left: 981 mm, out: 127 mm, diameter: 115 mm}
        - {id: cabinet, kind: cabinet, side: B-C, left: 599 mm, out: 0 mm, width: 635 mm, depth: 481 mm}
    height: 2456 mm
    walls:
      - {wall: C-D, foot: none, framing: {spacing: 400 mm, first: 201 mm}, boards: {top: 2000 mm}}
      - wall: D-A
        foot: none
        framing: {members: [{at: 32 mm}, {at: 253 mm}, {at: 815 mm}, {at: 1218 mm}, {at: 1637 mm}]}
        boards: {top: 2134 mm}
        openings:
          - {id: door, kind: door, left: 608 mm, bottom: 0 mm, width: 852 mm, height: 1953 mm}
"""


def test_a_board_that_would_become_wider_too_keeps_its_cut() -> None:
    plan = plan_job(read_job_text(JOB), effort=0).plan
    blanks = {piece.id: piece.blank for piece in plan.pieces}
    placed = [part for sheet in plan.sheets for part in sheet.parts if part.piece]
    assert placed
    for part in placed:
        blank = blanks[part.piece][::-1] if part.turned else blanks[part.piece]
        assert all(0 <= have - want < TICKS_PER_MM for have, want in zip(part.size, blank, strict=True))
