"""The tile that a surface's layers and judgement count with."""

from firstcourse.job import read_job_text
from firstcourse.layers import laid_tile
from firstcourse.units import mm

JOB = """
name: two tiles
date: 2026-11-25
tape: mm
tiles:
- {id: thin, size: [600 mm, 300 mm], thickness: 8 mm, kind: porcelain, edges: rectified, joint: 3 mm}
- {id: thick, size: [300 mm, 300 mm], thickness: 10 mm, kind: stone, edges: rectified, joint: 3 mm}
repeats:
- id: own
  across: 909 mm
  up: 303 mm
  pieces:
  - {tile: thin, at: [0 mm, 0 mm]}
  - {tile: thick, at: [603 mm, 0 mm]}
rooms:
- name: bath
  corners: [A, B, C, D]
  sides: {A-B: 2000 mm, B-C: 1500 mm, C-D: 2000 mm, D-A: 1500 mm}
  diagonals: {A-C: 2500 mm, B-D: 2500 mm}
  height: 2400 mm
  floor:
    framing: {parallel_to: A-B, spacing: 400 mm, first: 400 mm}
    tiling: TILING
"""


def test_a_repeat_is_counted_as_its_thickest_tile_with_the_longest_edge():
    job = read_job_text(JOB.replace("TILING", "{pattern: repeat, repeat: own}"))
    floor = job.rooms[0].floor
    assert floor is not None
    tile = laid_tile(job, floor)
    assert tile is not None
    assert (tile.thickness, tile.edge, tile.stone) == (mm(10), mm(600), True)


def test_a_pattern_of_one_tile_is_counted_as_that():
    job = read_job_text(JOB.replace("TILING", "{pattern: stacked, tile: thin}"))
    floor = job.rooms[0].floor
    assert floor is not None
    tile = laid_tile(job, floor)
    assert tile is not None
    assert (tile.thickness, tile.edge, tile.stone) == (mm(8), mm(600), False)
