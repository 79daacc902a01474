"""The drawing of a surface's readings: every one is there, off its plane and with what to do."""

import pytest

from example_plans import plan_of
from firstcourse.drawings import draw_heights, to_svg
from firstcourse.papers.papers import all_papers
from firstcourse.papers.site_pack import pack_data
from firstcourse.plan import Plan


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_of("out-of-true")


def test_every_reading_is_drawn_with_what_to_do(plan):
    floor, wall, plumbed = plan.surfaces
    assert [len(surface.heights) for surface in plan.surfaces] == [9, 3, 0]
    texts = [text.text for text in draw_heights(plan, floor).texts]
    assert '+1/4"' in texts and "leave" in texts and texts.count('fill 5/16"') == 5
    assert [text.text for text in draw_heights(plan, wall).texts].count('shim 1/8"') == 2
    assert plumbed.heights == ()


def test_readings_stand_where_they_were_taken(plan):
    floor = plan.surfaces[0]
    first = floor.heights[0]
    # 6 in from the left of the side along the top, 36 in down from it.
    top = max(v for _, v in floor.outline)
    assert first.at == (6 * 16_256, top - 36 * 16_256)
    assert first.do == "fill" and first.off < 0 < first.by


def test_the_papers_hold_the_drawing_and_its_page(plan):
    names = [paper.name for paper in all_papers(plan)]
    assert "drawings/back-bath-floor-heights.svg" in names
    assert "drawings/back-bath-wall-d-a-heights.svg" not in names
    titles = [block["title"] for row in pack_data(plan)["boards"] for block in row if block["kind"] == "heights"]
    assert titles == ["back bath: floor: highs and lows", "back bath: wall A-B: highs and lows"]
    assert "highs and lows" in to_svg(draw_heights(plan, plan.surfaces[0]))
