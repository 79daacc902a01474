"""Soft joints by what the job says of a place: its exposure, its doorways and the joints below."""

import copy
import json
from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.plan import Surface
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import mm
from proving import verify_text


def _result(
    *, room: dict[str, Any] | None = None, floor: dict[str, Any] | None = None, **tiling: Any
) -> PlanResult:
    """A hall of 6 x 2.4 m with its floor tiled."""
    return plan_job(
        read_job_text(
            yaml.safe_dump(
                {
                    "name": "hall",
                    "date": "2026-11-25",
                    "tape": "mm",
                    "tiles": [
                        {"id": "t", "size": ["300 mm", "300 mm"], "thickness": "8 mm", "joint": "4 mm"},
                    ],
                    "rooms": [
                        {
                            "name": "hall",
                            "corners": ["A", "B", "C", "D"],
                            "sides": {"A-B": "6000 mm", "B-C": "2400 mm", "C-D": "6000 mm", "D-A": "2400 mm"},
                            "diagonals": {"A-C": "6462.2 mm", "B-D": "6462.2 mm"},
                            "height": "2400 mm",
                            "floor": {"tiling": {"tile": "t", **tiling}, **(floor or {})},
                            **(room or {}),
                        }
                    ],
                },
                sort_keys=False,
            )
        ),
        effort=0,
    )


def _floor(result: PlanResult) -> Surface:
    return next(surface for surface in result.plan.surfaces if surface.tiles)


def _in_field(surface: Surface) -> list[int]:
    return [joint.line[0][0] for joint in surface.soft_joints if joint.why == "field"]


@pytest.mark.parametrize(
    ("room", "floor", "tiling", "exposure", "joints"),
    [
        ({}, {}, {}, "moist", 1),
        ({"tile_exposure": "interior"}, {}, {}, "interior", 0),
        ({"tile_exposure": "interior"}, {"exposure": {"zone": "wet"}}, {}, "moist", 1),
        ({}, {"exposure": {"zone": "dry"}}, {}, "interior", 0),
        ({}, {"exposure": {"zone": "dry"}}, {"exposure": "sun"}, "sun", 1),
        ({}, {}, {"exposure": "slab"}, "slab", 1),
        ({}, {}, {"exposure": "heat"}, "heat", 1),
    ],
)
def test_the_nearest_word_on_exposure_spaces_the_joints(
    room: dict[str, Any], floor: dict[str, Any], tiling: dict[str, Any], exposure: str, joints: int
):
    surface = _floor(_result(room=room, floor=floor, **tiling))
    assert surface.tile_exposure == exposure
    assert len(_in_field(surface)) == joints


def test_outside_the_yearly_range_widens_the_joints():
    mild = _floor(_result(room={"tile_exposure": "exterior"}))
    harsh = _floor(_result(room={"tile_exposure": "exterior", "yearly_range_f": 130}))
    width = {joint.width for joint in mild.soft_joints}
    assert width == {mm(12.7)}
    assert {joint.width for joint in harsh.soft_joints} == {mm(12.7) + 2 * mm(1.5875)}


def test_a_doorway_takes_a_grout_joint_and_a_joint_below_cuts_the_tiles():
    door = {"over": "doorway", "side": "A-B", "ends": [["1450 mm", "0 mm"], ["1450 mm", "2400 mm"]]}
    below = {"over": "structural joint", "side": "C-D", "ends": [["2000 mm", "0 mm"], ["2000 mm", "2400 mm"]]}
    surface = _floor(_result(room={"tile_exposure": "interior"}, soft_joints=[door, below]))
    by_why = {joint.why: joint for joint in surface.soft_joints}
    # The survey may move a corner by a tick.
    assert {at for at, _ in by_why["structural_joint"].line} <= {mm(4000) - 1, mm(4000), mm(4000) + 1}
    half = by_why["structural_joint"].width // 2
    for tile in surface.tiles:
        left, _, right, _ = bounds(tile.outline)
        assert right <= mm(4000) - half + 2 or left >= mm(4000) + half - 2
    (at, _), _ = by_why["doorway"].line
    assert abs(at - mm(1450)) < mm(304)
    assert all(not bounds(tile.outline)[0] < at < bounds(tile.outline)[2] for tile in surface.tiles)


def test_a_joint_that_misses_the_surface_is_refused_at_its_place():
    off = {"over": "control joint", "side": "A-B", "ends": [["1 m", "3 m"], ["2 m", "3 m"]]}
    with pytest.raises(JobError, match=r"rooms\[1\]\.floor\.tiling.*control joint.*misses the surface"):
        _result(soft_joints=[off])


@pytest.mark.parametrize(
    ("ends", "number", "words"),
    [
        # Measured from A-B: the room is 2400 mm deep and its doorway in C-D.
        ([["2 m", "0 mm"], ["2 m", "2700 mm"]], 2, r"[2000 mm, 2700 mm] lies 300 mm past the room"),
        ([["2 m", "2413 mm"], ["2 m", "0 mm"]], 1, r"end it at [2000 mm, 2400 mm]"),
        ([["6800 mm", "1 m"], ["0 mm", "1 m"]], 1, r"[6800 mm, 1000 mm] lies 800 mm past the room"),
        ([["7 m", "3 m"], ["5 m", "1 m"]], 1, r"end it at [6000 mm, 2000 mm], where it meets the edge"),
    ],
)
def test_a_doorway_joint_that_reaches_past_the_room_is_refused(ends: list[list[str]], number: int, words: str):
    door = {"over": "doorway", "side": "A-B", "ends": ends}
    with pytest.raises(JobError) as refused:
        _result(soft_joints=[door])
    (problem,) = refused.value.problems
    assert problem.field == f"rooms[1].floor.tiling.soft_joints[1].ends[{number}]"
    assert words in problem.message


def test_a_joint_taped_to_the_wall_may_read_a_little_past_it():
    door = {"over": "doorway", "side": "A-B", "ends": [["2 m", "0 mm"], ["2 m", "2412 mm"]]}
    assert any(joint.why == "doorway" for joint in _floor(_result(soft_joints=[door])).soft_joints)


@pytest.mark.parametrize(
    ("joint", "words"),
    [
        ({"over": "doorway", "ends": [["1 m", "1 m"], ["1 m", "1 m"]]}, "one point"),
        ({"over": "doorway", "side": "A-C", "ends": [["1 m", "1 m"], ["1 m", "2 m"]]}, "'A-C' is not a side"),
        ({"over": "threshold", "ends": [["1 m", "1 m"], ["1 m", "2 m"]]}, "doorway"),
    ],
)
def test_what_cannot_be_is_refused_in_words(joint: dict[str, Any], words: str):
    with pytest.raises(JobError, match=words):
        _result(soft_joints=[joint])


def test_verify_goes_by_the_exposure_and_objects_to_narrow_joints():
    document = json.loads(_result(room={"tile_exposure": "interior"}).document)
    assert verify_text(json.dumps(document)).objections == ()
    wetter = copy.deepcopy(document)
    wetter["surfaces"][0]["tile_exposure"] = "moist"
    assert "VER-707" in {objection.code for objection in verify_text(json.dumps(wetter)).objections}
    document["surfaces"][0]["soft_joints"][0]["width"] = 3.175
    assert "VER-709" in {objection.code for objection in verify_text(json.dumps(document)).objections}
