"""A tiled shower in a plan: its floor falls, is tiled and drawn, and takes no boards."""

from functools import cache
from pathlib import Path

import pytest
import yaml

from firstcourse.drawings.falls import draw_fall
from firstcourse.job import read_job_text
from firstcourse.papers.fall_pages import fall_pages
from firstcourse.papers.papers import all_papers
from firstcourse.plan import Plan, Surface
from firstcourse.steps import plan_job
from firstcourse.units import inches

SHOWER = Path(__file__).parents[3] / "examples" / "tiled-shower" / "job.yaml"


@cache
def _plan(tile: str = "shower mosaic") -> Plan:
    job = yaml.safe_load(SHOWER.read_text())
    job["rooms"][0]["floor"]["shower"]["tiling"]["tile"] = tile
    return plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan


def _floor(plan: Plan) -> Surface:
    return next(surface for surface in plan.surfaces if surface.fall is not None)


def test_the_shower_floor_is_tiled_and_not_boarded():
    floor = _floor(_plan())
    assert not floor.boarded
    assert not floor.boards
    assert floor.tiles
    assert {tile.stock for tile in floor.tiles} == {"shower mosaic"}


def test_the_perimeter_is_level_and_the_fall_within_the_code():
    fall = _floor(_plan()).fall
    assert fall is not None
    assert {point.height for point in fall.levels} == {fall.rise}
    assert fall.least_fall >= 0.25 / 12
    assert fall.greatest_fall <= 0.5 / 12


def test_tile_too_large_to_follow_the_planes_is_cut_along_the_valleys():
    plan = _plan("floor tile 12x12")
    floor = _floor(plan)
    assert floor.fall is not None and floor.fall.largest_tile is not None
    assert floor.fall.largest_tile < inches(11)
    assert any(finding.code == "FAL-301" for finding in plan.findings)
    # Four planes meet in valleys from the corners to the drain: no tile lies on two of them.
    assert len(floor.tiled[0].area) == 4


def test_its_page_has_levels_to_check_and_the_flood_test():
    (page,) = fall_pages(_plan())
    assert [row[0] for row in page["levels"]] == [str(number) for number in range(1, 10)]
    assert [row[1] for row in page["levels"]][4] == "top of the drain"
    assert all("from point 5 towards" in row[1] for row in page["levels"][5:])
    assert "24 hours" in page["flood"]
    assert page["record"][1].startswith('Water mark on the kerb, 2" over the membrane')
    assert len(page["record"]) == 9


def test_its_drawing_numbers_the_levels_as_the_table_does():
    plan = _plan()
    floor = _floor(plan)
    assert floor.fall is not None
    texts = [text.text for text in draw_fall(plan, floor, floor.fall).texts]
    assert [number for number, at, _ in (text.partition(":") for text in texts) if at] == list("123456789")


@pytest.mark.parametrize("name", ["drawings/bath-floor-shower-tile.svg", "drawings/bath-floor-shower-tile.dxf"])
def test_papers_show_its_tile_but_no_boards(name: str):
    names = {paper.name for paper in all_papers(_plan())}
    assert name in names
    assert "drawings/bath-floor-shower.svg" not in names
