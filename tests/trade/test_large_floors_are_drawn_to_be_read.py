"""On a floor of 12 by 9 m, drawn at 1:100, crosses of fasteners covered the boards, so that marks stood round the
floor on a tangle of leaders, among the letters of the corners.
"""

from functools import cache

import pytest
from shapely import Point, Polygon, box

from firstcourse.drawings import Drawing, draw_surface, draw_tiling
from firstcourse.drawings.model import LEAST_TEXT_MM
from firstcourse.drawings.placing import placed_apart
from firstcourse.job import read_job_text
from firstcourse.papers.board_pages import board_blocks
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_MM

JOB = """
name: Large hall
practice: uk
date: 2026-11-25
tape: mm
stock:
  - {id: floor board, size: [800 mm, 1200 mm], thickness: 6 mm, for: [floor]}
tiles:
  - {id: floor tile, size: [597 mm, 597 mm], thickness: 9 mm, joint: 3 mm}
rooms:
  - name: hall
    corners: [A, B, C, D]
    sides: {A-B: 12000 mm, B-C: 9000 mm, C-D: 12000 mm, D-A: 9000 mm}
    diagonals: {A-C: 15000 mm, B-D: 15000 mm}
    taped_to: studs
    height: 2700 mm
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 375 mm, width: 45 mm}
      openings:
        - {id: closet flange, kind: flange, side: D-A, left: 700 mm, out: 320 mm, diameter: 110 mm}
      tiling: {tile: floor tile}
"""


@cache
def plan() -> Plan:
    return plan_job(read_job_text(JOB), effort=0).plan


@cache
def drawing(kind: str) -> Drawing:
    (surface,) = (surface for surface in plan().surfaces if surface.boarded)
    return (draw_surface if kind == "boards" else draw_tiling)(plan(), surface)


@pytest.mark.parametrize("kind", ["boards", "tile"])
def test_texts_are_apart_and_corners_are_named_outside(kind: str) -> None:
    drawn = drawing(kind)
    assert drawn.scale >= 48
    assert placed_apart(text.box for text in drawn.texts)
    assert min(text.size for text in drawn.texts) >= LEAST_TEXT_MM
    (surface,) = (surface for surface in plan().surfaces if surface.boarded)
    per = TICKS_PER_MM * drawn.scale
    left, lower = (min(point[axis] for point in surface.outline) for axis in (0, 1))
    room = Polygon([((u - left) / per, (v - lower) / per) for u, v in surface.outline])
    corners = [text for text in drawn.texts if text.text in surface.corners and text.bold]
    assert len(corners) == 4
    assert not any(box(*text.box).intersects(room) for text in corners)


def test_marks_stand_on_their_boards() -> None:
    drawn = drawing("boards")
    boards = {poly.name: Polygon(poly.points) for poly in drawn.polys if poly.layer == "board"}
    marks = {text.text: text for text in drawn.texts if text.text in boards}
    assert marks.keys() == boards.keys() and len(boards) > 80
    assert len({text.size for text in marks.values()}) == 1
    for name, text in marks.items():
        left, lower, right, upper = text.box
        x0, y0, x1, y1 = boards[name].bounds
        long, short = max(x1 - x0, y1 - y0), min(x1 - x0, y1 - y0)
        # Beside a board stands only what is larger than the board.
        fits = right - left < long - 1.5 and upper - lower < short - 1.5
        assert boards[name].contains(Point(text.at)) or not fits, name
    assert sum(boards[name].contains(Point(text.at)) for name, text in marks.items()) > 0.8 * len(boards)


def test_figures_end_with_the_floor() -> None:
    drawn = drawing("boards")
    wide = 12000 / drawn.scale
    assert all(line.b[0] <= wide + 0.1 for line in drawn.lines if line.layer == "dimension")


def test_the_page_says_that_marks_cover_fasteners() -> None:
    (block,) = board_blocks(plan())
    assert "marks cover some fasteners" in block.data["note"]
