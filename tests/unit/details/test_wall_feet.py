"""The tile of walls begins on the finished floors before them: shower floor, kerb and the room's own."""

import copy
import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from firstcourse.details.wall_feet import _without_slivers
from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.plan import Surface
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import inches, mm
from proving import verify_text
from said import all_said

SHOWER = Path(__file__).parents[3] / "examples" / "tiled-shower" / "job.yaml"
IN = 25.4


@cache
def _planned(bottom: str = "0 in", levels: bool = False) -> PlanResult:
    """The tiled shower with boards that reach down to the given height."""
    job: dict[str, Any] = yaml.safe_load(SHOWER.read_text(encoding="utf-8"))
    for wall in job["rooms"][0]["walls"]:
        wall["boards"]["bottom"] = bottom
    if levels:
        job["rooms"][0]["levels"] = {"A": "0 in", "B": "1/4 in", "C": "1/4 in", "D": "0 in"}
    return plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0)


def test_a_shower_that_ends_a_hair_before_the_corner_leaves_no_strip_of_floor():
    """Each floor with the pieces of its top; the room's own is 256 ticks (0.4 mm) wide at either end."""
    end = mm(2000)
    groups = [
        ("floor", [((0.0, 9.0), (256.0, 9.0))]),
        ("shower", [((256.0, 5.0), (mm(900), 5.0)), ((mm(900), 5.0), (end - 256.0, 7.0))]),
        ("floor", [((end - 256.0, 7.0), (end - 256.0, 9.0)), ((end - 256.0, 9.0), (end, 9.0))]),
    ]
    assert list(_without_slivers(groups)) == [
        ("shower", [(0.0, 5.0), (256.0, 5.0), (mm(900), 5.0), (end - 256.0, 7.0), (end, 7.0)])
    ]
    wide = [groups[1], ("floor", [((end - 256.0, 9.0), (end + mm(50), 9.0))])]
    assert [on for on, _ in _without_slivers(wide)] == ["shower", "floor"]


def _wall(result: PlanResult, pair: str = "A-B") -> Surface:
    return next(surface for surface in result.plan.surfaces if surface.id == f"bath/wall/{pair}")


def _lowest(wall: Surface, left: float, right: float) -> int:
    """Lowest edge of tile between two places along a wall [ticks]."""
    found = [bounds(tile.outline) for tile in wall.tiles]
    return min(low for u, low, v, _ in found if u >= inches(left) and v <= inches(right))


def test_tile_begins_above_each_floor_by_its_joint():
    result = _planned()
    wall = _wall(result)
    (floor,) = [surface for surface in result.plan.surfaces if surface.fall is not None]
    fall = floor.fall
    assert fall is not None and fall.drain_height is not None and fall.room_floor is not None
    joint = next(j.width for j in wall.soft_joints if j.at == "bath/floor/shower")
    # Inside, 48 in along the wall, the shower floor's level edge lies at the rise over the drain.
    assert _lowest(wall, 0, 47) == pytest.approx(fall.drain_height + fall.rise + joint, abs=3)
    tops = {zone.why: bounds(zone.outline) for zone in wall.not_tiled}
    assert tops["bath/floor/shower"][3] == pytest.approx(fall.drain_height + fall.rise, abs=3)
    # The kerb, 5 in wide and 4 1/2 in over the drain, and beyond it an inch of the room's floor.
    left, _, right, top = tops["bath/floor/shower/kerb"]
    assert ((right - left) / inches(1), (top - fall.drain_height) / inches(1)) == pytest.approx((5, 4.5), abs=0.01)
    assert tops["bath/floor"][3] == pytest.approx(fall.room_floor, abs=3)


def test_each_floor_has_its_joint_along_the_wall():
    joints = {joint.at: joint for joint in _wall(_planned()).soft_joints}
    assert {"bath/floor/shower", "bath/floor/shower/kerb", "bath/floor"} <= joints.keys()
    assert joints["bath/floor/shower"].line[0][1] > 0


def test_boards_that_stop_above_the_floor_leave_it_bare_and_are_told_so():
    result = _planned("8 in")
    assert all(_wall(result, pair).not_tiled == () for pair in ("A-B", "D-A"))
    said = [finding for finding in all_said(result.plan.findings) if finding.code == "TIL-127"]
    assert [finding.where for finding in said] == ["bath: wall A-B", "bath: wall D-A"]
    # The shower floor lies 3-1/16 in over the panels at the walls.
    assert (said[0].severity, said[0].measured) == ("fix", '4-15/16" above the finished floor')
    assert not any(finding.code == "TIL-127" for finding in all_said(_planned().plan.findings))


def test_a_floor_out_of_level_is_left_to_the_setter():
    assert _wall(_planned(levels=True)).not_tiled == ()


def test_without_a_tiled_floor_walls_begin_at_their_boards():
    job: dict[str, Any] = yaml.safe_load(SHOWER.read_text(encoding="utf-8"))
    floor = job["rooms"][0]["floor"]
    del floor["tiling"], floor["shower"]["tiling"]
    job["tiles"] = [tile for tile in job["tiles"] if tile["id"] == "wall tile 6x12"]
    result = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0)
    assert all(_wall(result, pair).not_tiled == () for pair in ("A-B", "D-A"))


def _tick(length: float) -> float:
    return round(length * 640) / 640


def _raised(wall: dict[str, Any]) -> None:
    zone = next(zone for zone in wall["not_tiled"] if zone["why"] == "bath/floor/shower")
    zone["outline"] = [[u, _tick(v + IN) if v > 0 else v] for u, v in zone["outline"]]


def _gone(wall: dict[str, Any]) -> None:
    wall["not_tiled"] = []
    tile = min(wall["tiles"], key=lambda tile: min(v for _, v in tile["outline"]))
    tile["outline"] = [[u, _tick(v - 12.7)] for u, v in tile["outline"]]


@pytest.mark.parametrize("change", [_raised, _gone])
def test_verify_objects_where_a_wall_does_not_begin_on_its_floor(change: Any):
    plan = json.loads(_planned().document)
    assert verify_text(json.dumps(plan)).objections == ()
    spoilt = copy.deepcopy(plan)
    change(next(surface for surface in spoilt["surfaces"] if surface["id"] == "bath/wall/A-B"))
    assert "VER-767" in {objection.code for objection in verify_text(json.dumps(spoilt)).objections}


def test_a_wall_over_a_floor_that_falls_along_it_is_cut_to_the_fall():
    job: dict[str, Any] = yaml.safe_load(SHOWER.read_text(encoding="utf-8"))
    room = job["rooms"][0]
    room["floor"]["shower"] |= {"falls": "single", "drain": {"along": "D-A"}}
    for wall in room["walls"]:
        wall["boards"]["bottom"] = "0 in"
    wall = _wall(plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0))
    zone = next(zone for zone in wall.not_tiled if zone.why == "bath/floor/shower")
    tops = sorted(v for _, v in zone.outline if v > 0)
    assert tops[-1] - tops[0] > inches(0.9)
    # Away from D-A the floor rises: each tile of the lowest course is cut aslant.
    lowest = [tile for tile in wall.tiles if bounds(tile.outline)[1] < tops[-1] + mm(5)]
    assert any(len({v for _, v in tile.outline}) > 2 for tile in lowest)
