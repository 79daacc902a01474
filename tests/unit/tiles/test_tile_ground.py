"""Which surfaces are tiled, what stands before their sides, and which of them lists a corner's bead."""

from pathlib import Path

import pytest

from firstcourse.job import Job, read_job
from firstcourse.layers import combed_mortar
from firstcourse.plan import Surface, SurfaceKind
from firstcourse.rules import RuleSet, load_rules
from firstcourse.sheets.cut import job_stock
from firstcourse.survey import survey_job
from firstcourse.tiles.tile_ground import depth_before, joints_listed_elsewhere, surfaces_to_tile
from firstcourse.units import parse_length

TUB = Path(__file__).parents[3] / "examples" / "tub-bathroom" / "job.yaml"


@pytest.fixture(scope="module")
def job() -> Job:
    return read_job(TUB)


@pytest.fixture(scope="module")
def rules(job: Job) -> RuleSet:
    return load_rules(job.date, job.practice)


@pytest.fixture(scope="module")
def surfaces(job: Job, rules: RuleSet) -> dict[str, Surface]:
    return {surface.id.split("/")[-1]: surface for surface in survey_job(job, rules).surfaces}


def _before(surface: Surface, job: Job, rules: RuleSet) -> dict[str, int]:
    depths = depth_before(surface, job.rooms[0], job_stock(job, rules)[SurfaceKind.WALL], job, rules)
    return {side.wall or side.corner: depth for side, depth in zip(surface.sides, depths, strict=True) if depth}


def test_the_floor_and_each_tiled_wall_are_named_with_their_place_in_the_job(job: Job):
    assert [(item.surface_id, item.field) for item in surfaces_to_tile(job)] == [
        ("hall bath/floor", "rooms[1].floor.tiling"),
        ("hall bath/wall/A-B", "rooms[1].walls[1].tiling"),
        ("hall bath/wall/B-C", "rooms[1].walls[2].tiling"),
        ("hall bath/wall/D-A", "rooms[1].walls[3].tiling"),
    ]


def test_the_wide_wall_is_set_first_and_meets_boards_only(job: Job, rules: RuleSet, surfaces: dict[str, Surface]):
    board = parse_length("0.42 in")
    assert _before(surfaces["A-B"], job, rules) == {"A": board, "B": board}


def test_the_walls_at_its_ends_meet_its_tile(job: Job, rules: RuleSet, surfaces: dict[str, Surface]):
    tile = parse_length("0.42 in") + parse_length("5/16 in")
    tile += combed_mortar(parse_length("11 7/8 in"), rules).thickness
    assert _before(surfaces["B-C"], job, rules) == {"B": tile}
    assert _before(surfaces["D-A"], job, rules) == {"A": tile}


def test_boards_that_start_above_the_floor_leave_it_alone(job: Job, rules: RuleSet, surfaces: dict[str, Surface]):
    assert _before(surfaces["floor"], job, rules) == {}


def test_a_corner_is_listed_once(job: Job, surfaces: dict[str, Surface]):
    listed = {
        name: [
            s.corner
            for i, s in enumerate(surfaces[name].sides)
            if i in joints_listed_elsewhere(surfaces[name], job.rooms[0])
        ]
        for name in ("A-B", "B-C", "D-A", "floor")
    }
    assert listed == {"A-B": ["B", "A"], "B-C": [], "D-A": [], "floor": []}
