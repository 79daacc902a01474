"""A shower floor that takes the whole room: its doorways, flanges and drains are judged by its falls."""

import copy
import json
from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps import PlanResult, plan_job
from firstcourse.steps.judging import judge_job
from firstcourse.survey import survey_job
from firstcourse.words import SaidFinding
from proving import verify_text
from said import all_said

IN = 25.4
FLANGE = {
    "id": "flange", "kind": "flange", "side": "C-D", "left": "14 in", "out": "12 in", "diameter": "4 1/2 in",
}  # fmt: skip


def _text(
    *, door: dict[str, Any] | None = None, flange: dict[str, Any] | None = None, floor: Any = None, **shower: Any
) -> str:
    """A room of 7 x 5 ft that is all shower and drains in its middle, 1 1/8 in below the edge."""
    asked: dict[str, Any] = {
        "left": "0 in",
        "out": "0 in",
        "width": "84 in",
        "depth": "60 in",
        "drain": {"left": "42 in", "out": "30 in"},
        "recess": "4 in",
        "tiling": {"tile": "chip"},
        **shower,
    }
    room: dict[str, Any] = {
        "name": "wet",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "84 in", "B-C": "60 in", "C-D": "84 in", "D-A": "60 in"},
        "diagonals": {"A-C": "103 1/4 in", "B-D": "103 1/4 in"},
        "floor": {"shower": {key: value for key, value in asked.items() if value is not None}, **(floor or {})},
    }
    if door is not None:
        room["floor"]["doorways"] = [{"id": "door", "other_floor": "2 3/4 in", **door}]
    if flange is not None:
        room["floor"]["openings"] = [{**FLANGE, **flange}]
    chip = {"id": "chip", "size": ["2 in", "2 in"], "thickness": "1/4 in", "joint": "1/8 in"}
    document = {"name": "wet", "date": "2026-11-25", "tape": "inch", "tiles": [chip], "rooms": [room]}
    return yaml.safe_dump(document, sort_keys=False)


def _said(text: str, code: str) -> SaidFinding | None:
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice)
    findings = all_said(judge_job(job, survey_job(job, rules), rules).findings)
    return next((finding for finding in findings if finding.code == code), None)


def _planned(text: str) -> tuple[PlanResult, dict[str, Any]]:
    result = plan_job(read_job_text(text), effort=0)
    return result, json.loads(result.document)


# Bed 1 1/4, mortar 3/32, tile 1/4 and a rise of 1 1/8 in: the edge lies 2 23/32 in over the panels.


def test_a_floor_beyond_that_lies_as_high_as_the_edge_holds_the_water():
    assert _said(_text(door={}), "FAL-205") is None
    found = _said(_text(door={"other_floor": "2 in"}), "FAL-205")
    assert found is not None and (found.severity, found.where) == ("stop", "wet: floor, door")
    assert found.measured == 'shower floor up to 2-3/4" over the panels'
    assert found.limit.startswith('at most 2"') and '3/4" deeper' in found.remedy


def test_a_kerb_in_the_doorway_holds_it_as_well():
    kerb = {"height": "3 in", "width": "4 in"}
    assert _said(_text(door={"other_floor": "2 in"}, recess=None, kerb=kerb), "FAL-205") is None


@pytest.mark.parametrize(("beyond", "code"), [("3 1/8 in", "SUI-601"), ("4 in", "SUI-602")])
def test_the_step_to_the_floor_beyond_is_taken_from_the_edge(beyond: str, code: str):
    assert _said(_text(door={}), code) is None
    found = _said(_text(door={"other_floor": beyond}), code)
    assert found is not None and "down here" in found.message


def test_a_door_must_clear_the_edge():
    assert _said(_text(door={"door_underside": "3 1/4 in"}), "SUI-603") is None
    assert _said(_text(door={"door_underside": "3 in"}), "SUI-603") is not None


def test_along_a_wall_where_the_floor_falls_the_doorway_is_not_level():
    linear: dict[str, Any] = {"drain": {"along": "A-B"}, "falls": "single"}
    door = {"wall": "B-C", "left": "10 in", "width": "30 in", "other_floor": "3 in"}
    found = _said(_text(door=door, **linear), "FAL-204")
    assert found is not None and found.where == "wet: floor, door"
    assert _said(_text(door={**door, "wall": "C-D"}, **linear), "FAL-204") is None
    # Beside the drain the floor lies lower than where it is highest: the same door clears it only there.
    low = {**door, "left": "0 in", "width": "6 in", "other_floor": "2 1/2 in"}
    assert _said(_text(door=low, **linear), "FAL-205") is None
    assert _said(_text(door={**low, "left": "50 in"}, **linear), "FAL-205") is not None


def test_a_flange_is_judged_by_the_floor_where_it_stands():
    # 14 of 42 in in from B-C the floor has fallen by a third of 1 1/8 in, to 2 11/32 in over the panels.
    assert _said(_text(flange={"top": "2 3/8 in"}), "SUI-604") is None
    low = _said(_text(flange={"top": "2 in"}), "SUI-604")
    assert low is not None and low.measured == '3/8" below'
    # One that is not placed is taken to stand near a wall.
    assert _said(_text(floor={"flange_top": "2 13/16 in"}), "SUI-604") is None
    unplaced = _said(_text(floor={"flange_top": "2 3/8 in"}), "SUI-604")
    assert unplaced is not None and unplaced.measured == '3/8" below'
    # One that is placed without a top lends its place to it.
    assert _said(_text(flange={}, floor={"flange_top": "2 3/8 in"}), "SUI-604") is None


def test_a_second_drain_must_lie_no_higher_than_the_floor():
    assert _said(_text(flange={"kind": "drain", "top": "2 5/16 in"}), "SUI-607") is None
    assert _said(_text(flange={"kind": "drain", "top": "2 5/8 in"}), "SUI-607") is not None


@pytest.mark.parametrize(("bottom", "told"), [(None, True), ("12 in", False)])
def test_a_bench_that_stands_on_the_drain_is_told_so(bottom: str | None, told: bool):
    document = yaml.safe_load(_text(drain={"left": "42 in", "out": "10 in"}, recess="6 in"))
    bench = {"id": "seat", "wall": "A-B", "left": "30 in", "width": "30 in", "depth": "15 in", "height": "18 in"}
    room = document["rooms"][0]
    room["benches"] = [{**bench, "tile": "chip", **({} if bottom is None else {"bottom": bottom})}]
    room["height"] = "96 in"
    room["walls"] = [
        {"wall": "A-B", "framing": {"spacing": "16 in", "first": "16 in"}, "tiling": {"tile": "chip"}}
    ]
    result, _ = _planned(yaml.safe_dump(document, sort_keys=False))
    assert any(finding.code == "TIL-128" for finding in all_said(result.plan.findings)) is told


def test_tile_is_cut_round_a_flange_that_stands_in_the_shower():
    _, plan = _planned(_text(flange={}))
    (floor,) = [surface for surface in plan["surfaces"] if surface["fall"]]
    assert [opening["id"] for opening in floor["openings"]] == ["drain", "flange"]


def test_a_liner_runs_up_from_the_floor_beyond_where_that_is_the_higher():
    result, plan = _planned(_text(door={"other_floor": "4 in"}, membrane="liner", recess="6 in"))
    (floor,) = [surface for surface in result.plan.surfaces if surface.fall is not None]
    fall = floor.fall
    assert fall is not None and fall.drain_height is not None and fall.threshold is not None
    # Slope 1/2, bed 1 1/2, mortar of a 1/4 in notch (0.108) and tile 1/4 in lie under the drain's top.
    assert fall.threshold / 640 / IN == pytest.approx(4 - (0.5 + 1.5 + 0.1083 + 0.25), abs=0.001)
    up = plan["workings"]["water-floor@wet/floor/shower"]["inputs"]["walls_high"]
    # 3 in over the threshold, from under the bed; the edge itself lies 1 1/8 in over the drain.
    high = (3 + 1.5 + 0.1083 + 0.25 + fall.threshold / 640 / IN - fall.rise / 640 / IN) * IN
    assert up[-1]["value"] == pytest.approx(high, abs=0.5)


def test_verify_holds_the_threshold_to_the_floors_beyond():
    _, plan = _planned(_text(door={"other_floor": "4 in"}))
    assert verify_text(json.dumps(plan)).objections == ()
    for threshold in (None, 76.2):
        spoilt = copy.deepcopy(plan)
        (floor,) = [surface for surface in spoilt["surfaces"] if surface["fall"]]
        floor["fall"]["threshold"] = threshold
        assert "VER-764" in {objection.code for objection in verify_text(json.dumps(spoilt)).objections}


@pytest.mark.parametrize(
    ("door", "words"),
    [
        ({"wall": "A-C"}, "'A-C' is not a side"),
        ({"wall": "B-C", "left": "40 in", "width": "30 in"}, "past the end of its wall"),
        ({"wall": "B-C", "left": "40 in"}, "left and width go together"),
        ({"left": "4 in", "width": "30 in"}, "name it"),
    ],
)
def test_a_doorway_that_is_nowhere_is_refused(door: dict[str, Any], words: str):
    with pytest.raises(JobError, match=words):
        read_job_text(_text(door=door))
