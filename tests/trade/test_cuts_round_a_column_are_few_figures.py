"""A tile cut round a 20 in water heater had a figure at each of some twenty corners that stand for its curve.

The figures ran off their drawing and took four pages; a curve is told by its ends, its reach and a few places
between.
"""

from typing import Any

import pytest

from firstcourse.drawings.cut_tiles import cut_kinds, cut_scale, draw_cut
from firstcourse.drawings.pieces import corners_to_mark
from firstcourse.geometry import circle_ring
from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_MM

JOB = """
name: laundry with a round heater
date: 2026-11-25
tape: inch
tiles: [{id: big, size: [24 in, 12 in], thickness: 3/8 in, joint: 1/4 in}]
rooms:
  - name: laundry
    corners: [A, B, C, D]
    sides: {A-B: 6' 0", B-C: 5' 0", C-D: 6' 0", D-A: 5' 0"}
    diagonals: {A-C: 7' 9-3/4", B-D: 7' 9-3/4"}
    height: 8'
    floor:
      tiling: {tile: big}
      openings: [{id: heater, kind: column, side: A-B, left: 14 in, out: 14 in, diameter: 20 in}]
"""


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_job(read_job_text(JOB), effort=0).plan


def test_no_cut_tile_has_more_figures_than_a_setter_marks(plan: Plan) -> None:
    (floor,) = plan.surfaces
    drawn = [kind for kind in cut_kinds(floor, without={}) if not kind.is_fit]
    assert drawn, "nothing is cut round the heater"
    scale = cut_scale(plan, drawn)
    for kind in drawn:
        figures = [text for text in draw_cut(plan, kind, scale).texts if '"' in text.text]
        assert len(figures) <= 18, (kind.mark, len(figures))


@pytest.mark.parametrize("radius_mm", [20, 60, 260, 600])
def test_a_curve_is_marked_where_it_ends_and_a_few_times_between(radius_mm: int) -> None:
    radius = radius_mm * TICKS_PER_MM
    circle = circle_ring((0, 0), radius, excess=64)
    quarter: Any = tuple(point for point in circle if point[0] >= 0 and point[1] >= 0)
    ring = ((0, 0), *quarter)
    marked = corners_to_mark(ring, 9 * TICKS_PER_MM)
    assert {quarter[0], quarter[-1]} <= marked or {(0, 0)} <= marked
    assert len(marked) <= 8 + radius * 1.6 / (150 * TICKS_PER_MM)


def test_corners_of_straight_outlines_stay() -> None:
    notched = ((0, 0), (9000, 0), (9000, 3000), (6000, 3300), (6000, 6000), (0, 6000))
    assert corners_to_mark(notched, 100) == set(notched)
