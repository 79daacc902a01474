"""The tile of a wall 300 mm wide and 2330 mm high was drawn at 1:100 in a corner of its page, since by its area it
counted as small as the sill of a niche.
"""

from firstcourse.job import read_job_text
from firstcourse.papers.tile_pages import tile_blocks
from firstcourse.steps import plan_job

NIB = """
name: nib
practice: uk
date: 2026-11-25
tape: mm
stock: [{id: board, size: [800 mm, 1200 mm], thickness: 12 mm, for: [wall]}]
tiles: [{id: tile, size: [597 mm, 297 mm], thickness: 9 mm, joint: 3 mm, size_spread: 0.5 mm}]
rooms:
  - name: room
    corners: [A, B, C, D]
    sides: {A-B: 300 mm, B-C: 2000 mm, C-D: 300 mm, D-A: 2000 mm}
    diagonals: {A-C: 2022 mm}
    height: 2400 mm
    walls:
      - {wall: A-B, framing: {spacing: 250 mm, first: 25 mm}, tiling: {tile: tile}}
"""


def test_a_narrow_wall_of_full_height_is_drawn_large_enough() -> None:
    plan = plan_job(read_job_text(NIB), effort=0).plan
    (block,) = tile_blocks(plan)
    assert int(block.data["scale"].removeprefix("1:")) <= 25
