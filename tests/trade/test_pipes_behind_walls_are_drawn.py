"""A zone where nothing may be driven ("gas pipe behind here") was printed nowhere outside showers.

It is hatched and named on the pages of boards and of tile, and is the first thing found.
"""

import pytest

from firstcourse.drawings import draw_surface, draw_tiling
from firstcourse.findings import Severity
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from said import said_of

JOB = """
name: laundry
date: 2026-11-25
tape: mm
stock: [{id: board, size: [900 mm, 1500 mm], thickness: 12 mm}]
tiles: [{id: white, size: [198 mm, 198 mm], thickness: 8 mm, joint: 3 mm}]
rooms:
  - name: laundry
    corners: [A, B, C, D]
    sides: {A-B: 2400 mm, B-C: 1800 mm, C-D: 2400 mm, D-A: 1800 mm}
    diagonals: {A-C: 3000 mm, B-D: 3000 mm}
    height: 2400 mm
    walls:
      - wall: A-B
        framing: {spacing: 400 mm, first: 20 mm}
        boards: {top: 1500 mm}
        tiling: {tile: white}
        no_fasteners: [{left: 900 mm, right: 1100 mm, bottom: 0 mm, top: 1500 mm, why: gas pipe behind here}]
"""


@pytest.fixture(scope="module")
def plan():
    return plan_job(read_job_text(JOB), effort=0).plan


@pytest.mark.parametrize("draw", [draw_surface, draw_tiling])
def test_the_zone_is_hatched_and_named_on_the_page(plan, draw):
    (wall,) = [surface for surface in plan.surfaces if surface.boards]
    drawing = draw(plan, wall)
    (zone,) = [poly for poly in drawing.polys if poly.layer == "keepout"]
    across = [x for x, _ in zone.points]
    assert (max(across) - min(across)) * drawing.scale == pytest.approx(200)
    assert any("NO FASTENERS" in text.text for text in drawing.texts)


def test_it_is_the_first_thing_found(plan):
    first = next(finding for finding in said_of(plan) if finding.severity is not Severity.STOP)
    assert first.code == "SUR-112"
    assert "gas pipe behind here" in first.message
    assert first.measured == "from 900 mm to 1100 mm along the wall, from 0 mm to 1500 mm up"


def test_no_fastener_is_in_it(plan):
    (wall,) = [surface for surface in plan.surfaces if surface.boards]
    assert not [(u, v) for board in wall.boards for u, v in board.fasteners if 900 * 640 < u < 1100 * 640]
