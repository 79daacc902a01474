"""A job's tile as planned: courses that run on round corners, bands, given starts, refusals in words."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import inches

TUB = Path(__file__).parents[3] / "examples" / "tub-bathroom" / "job.yaml"


def _plan(*, wall_tile: str = "11 7/8 in", **walls: Any) -> Plan:
    """The tub bathroom with the tiling of its walls changed, by wall, and its wall tile of another width."""
    job = yaml.safe_load(TUB.read_text())
    job["tiles"][0]["size"][0] = wall_tile
    for wall in job["rooms"][0]["walls"]:
        wall["tiling"] = walls.get(wall["wall"].replace("-", "_"), wall["tiling"])
    return plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False, default_flow_style=False)), effort=0).plan


@pytest.fixture(scope="module")
def tub() -> Plan:
    return plan_job(read_job_text(TUB.read_text()), effort=0).plan


def test_courses_run_on_round_the_corners_of_the_tub(tub: Plan):
    walls = [surface for surface in tub.surfaces if surface.kind == "wall"]
    assert len({surface.tiled[0].starts[0].origin[1] for surface in walls}) == 1
    assert all(surface.tiled[0].starts[0].why == "round_corners" for surface in walls)


def test_every_cut_piece_has_a_mark_and_a_source(tub: Plan):
    for surface in tub.surfaces:
        for tile in surface.tiles:
            assert bool(tile.mark) == (not tile.whole) == bool(tile.from_) == bool(tile.cut)


def test_no_two_tiles_bear_one_name(tub: Plan):
    names = [tile.id for surface in tub.surfaces for tile in surface.tiles]
    assert len(names) == len(set(names))


def test_a_given_start_is_kept():
    given = {"tile": "wall tile", "start": {"left": "12 in", "up": "15 1/2 in"}}
    wall = next(surface for surface in _plan(A_B=given).surfaces if surface.id.endswith("A-B"))
    (start,) = wall.tiled[0].starts
    assert start.origin == (inches(12), inches(15.5))
    assert start.why == "given"


def test_a_band_lies_between_courses_of_the_wall():
    banded = {"tile": "wall tile", "bands": [{"bottom": "4 ft", "tile": "floor tile"}]}
    wall = next(surface for surface in _plan(A_B=banded).surfaces if surface.id.endswith("A-B"))
    assert [area.tiles for area in wall.tiled] == [("wall tile",), ("floor tile",), ("wall tile",)]
    band = [bounds(tile.outline) for tile in wall.tiles if tile.stock == "floor tile"]
    lowest = min(box[1] for box in band)
    below = max(box[3] for tile in wall.tiles if (box := bounds(tile.outline))[1] < lowest)
    assert lowest - below == wall.tiled[0].joint


def test_a_pattern_the_tile_cannot_make_is_refused_at_its_place():
    with pytest.raises(JobError) as caught:
        _plan(wall_tile="11 in", A_B={"tile": "wall tile", "pattern": "basket_weave"})
    assert "rooms[1].walls[1].tiling" in str(caught.value)
