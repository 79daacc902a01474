"""A floor of twenty boards was drawn at 1:25600: its running figures needed more room than the page has at any
scale, and the drawing was made smaller and smaller for them.
"""

from firstcourse.drawings import draw_surface
from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_MM

KITCHEN = """
name: kitchen
practice: uk
date: 2026-11-25
tape: mm
stock: [{id: board, size: [600 mm, 1200 mm], thickness: 6 mm, for: [floor]}]
rooms:
  - name: kitchen
    corners: [A, B, C, D]
    sides: {A-B: 3104 mm, B-C: 4201 mm, C-D: 3103 mm, D-A: 4195 mm}
    diagonals: {A-C: 5219 mm, B-D: 5223 mm}
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 400 mm, width: 47 mm}
      openings:
        - {id: units, kind: cabinet, side: B-C, left: 0 mm, out: 0 mm, width: 4201 mm, depth: 560 mm}
        - {id: hob units, kind: cabinet, side: A-B, left: 900 mm, out: 0 mm, width: 1644 mm, depth: 560 mm}
        - {id: island, kind: cabinet, side: D-A, left: 1200 mm, out: 1100 mm, width: 1500 mm, depth: 900 mm}
"""


def test_a_floor_of_many_boards_is_drawn_as_large_as_the_page_allows() -> None:
    plan = plan_job(read_job_text(KITCHEN, "job.yaml"), effort=0).plan
    floor = plan.surfaces[0]
    edges = {edge for board in floor.boards for edge in bounds(board.outline)[1::2]}
    assert len(edges) > 20  # more figures than stand one above the other
    for room in ((182.0, 130.0), (182.0, 160.0)):
        drawing = draw_surface(plan, floor, room=room)
        left, lower, right, upper = drawing.box
        assert right - left <= room[0] and upper - lower <= room[1]
        _, foot, _, top = bounds(floor.outline)
        assert (top - foot) / TICKS_PER_MM / drawing.scale > 0.4 * room[1]
        figures = {text.text for text in drawing.texts}
        assert {"0 mm", str(round((top - foot) / TICKS_PER_MM))} <= figures
