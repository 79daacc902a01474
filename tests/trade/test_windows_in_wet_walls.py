"""A window in a wet wall was a hole in the tile: no sill that falls, no returns, membrane, trim or soft joints."""

import json
from functools import cache
from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import inches, to_mm
from firstcourse.values import Measure, measure
from proving import verify_text
from said import all_said, worked

JOB = """
name: Window in a tub wall
practice: us
date: 2026-11-25
stock: [{id: board 3x5, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}]
tiles:
  - {id: white, size: [8 in, 4 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 96 in, C-D: 60 in, D-A: 96 in}
    diagonals: {A-C: 113 3/16 in, B-D: 113 3/16 in}
    height: 96 in
    taped_to: studs
    walls:
      - wall: A-B
        boards: {bottom: 15 in, top: 84 in}
        foot: tub
        framing: {spacing: 16 in, first: 15 1/4 in}
        openings: [{id: window, kind: window, left: 18 in, bottom: 48 in, width: 24 in, height: 24 in}]
        exposure: {zone: wet, membrane: true}
        tiling: {tile: white}
"""
WALL = "bath/wall/A-B"


@cache
def planned(returns: str = "") -> PlanResult:
    """The wall with its window; `returns` as JSON."""
    job: dict[str, Any] = yaml.safe_load(JOB)
    if returns:
        job["rooms"][0]["walls"][0]["openings"][0]["returns"] = json.loads(returns)
    return plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0)


DEEP = '{"depth": "4 in"}'


def objections(document: dict[str, Any]) -> set[str]:
    return {one.code for one in verify_text(json.dumps(document)).objections}


def test_the_depth_is_asked_where_a_wet_wall_lacks_it() -> None:
    (asked,) = [one for one in all_said(planned().plan.findings) if one.code == "TIL-130"]
    assert asked.severity == "fix" and asked.where.endswith("window") and "depth" in asked.remedy
    assert not any(one.code == "TIL-130" for one in all_said(planned(DEEP).plan.findings))
    document = json.loads(planned().document)
    document["findings"] = [one for one in document["findings"] if one["code"] != "TIL-130"]
    assert objections(document) == {"VER-910"}


def test_sill_head_and_sides_are_tiled_and_fall_to_the_front() -> None:
    plan = planned(DEEP).plan
    faces = {one.id.rpartition("/")[2]: one for one in plan.surfaces if one.part_of == WALL and not one.boarded}
    assert set(faces) == {"sill", "head", "left", "right"}
    wall = next(one for one in plan.surfaces if one.id == WALL)
    assert set(wall.linings) == {one.id for one in faces.values()}
    on_wall = sum(layer.thickness for layer in wall.layers if layer.of != "board")
    deep = inches(4) + on_wall
    assert bounds(faces["head"].outline) == (inches(18), 0, inches(42), deep)
    # A quarter inch in a foot over 4 in is 1/12 in, up to the next thirty-second: 3/32 in.
    feet = sorted(v for _, v in faces["left"].outline)[:2]
    assert feet == [inches(48), inches(48) + inches(3 / 32)]
    for face in faces.values():
        assert face.tiles and all(tile.from_ for tile in face.tiles if not tile.whole)
        assert any(face.sides[int(j.at[-1])].meets == f"{WALL}/opening/window/frame" for j in face.soft_joints)


def test_the_heights_of_the_sill_are_told_and_derived_again() -> None:
    plan = planned(DEEP).plan
    sill = next(one for one in plan.surfaces if one.id == f"{WALL}/window/sill")
    on_sill = sum(layer.thickness for layer in sill.layers)
    key = f"tiles-sill@{WALL}/opening/window"
    working = plan.workings[key]
    assert worked(working).values["fall to the front"] == '3/32"'
    assert on_sill > 0 and working.result != working.inputs["at_frame"]
    document = json.loads(planned(DEEP).document)
    assert objections(document) == set()
    document["workings"][key]["result"]["value"] = 1244.6
    assert "VER-903" in objections(document)


def test_membrane_and_trim_run_into_the_opening() -> None:
    dry, lined = planned().plan, planned(DEEP).plan
    one, other = (plan.workings[f"water-face@{WALL}"] for plan in (dry, lined))
    rim = 4 * to_mm(inches(24))
    returns = rim * to_mm(inches(4)) / 1e6
    assert isinstance(one.result, Measure) and isinstance(other.result, Measure)
    assert other.result.value - one.result.value == pytest.approx(returns, abs=0.002)
    assert other.inputs["windows"] == measure(returns, "m2")
    assert (one.inputs.get("inside", 0), other.inputs["inside"]) == (0, 4)
    assert (one.inputs.get("outside", 0), other.inputs["outside"]) == (0, 4)
    trimmed = {plan.job.digest: sum(q.exact for q in plan.quantities if "trim" in q.item) for plan in (dry, lined)}
    assert trimmed[lined.job.digest] - trimmed[dry.job.digest] == pytest.approx(8 * 304.8)


def test_returns_without_tile_keep_boards_membrane_and_trim() -> None:
    plan = planned('{"depth": "4 in", "tiled": false}').plan
    returns = [one for one in plan.surfaces if one.part_of == WALL]
    assert len(returns) == 4 and all(one.boards and not one.tiles for one in returns)
    assert "windows" in plan.workings[f"water-face@{WALL}"].inputs
    assert verify_text(planned('{"depth": "4 in", "tiled": false}').document).objections == ()


def test_the_fall_that_is_told_is_the_sill_s() -> None:
    document = json.loads(planned(DEEP).document)
    next(one for one in document["findings"] if one["code"] == "TIL-124")["measured"]["value"] += 0.5
    assert objections(document) == {"VER-910"}


@pytest.mark.parametrize("change", ["missing", "flat"])
def test_verify_misses_nothing_of_a_window(change: str) -> None:
    document = json.loads(planned(DEEP).document)
    name = f"{WALL}/window/sill" if change == "missing" else f"{WALL}/window/left"
    surface = next(one for one in document["surfaces"] if one["id"] == name)
    if change == "missing":
        document["surfaces"].remove(surface)
    else:
        low = min(v for _, v in surface["outline"])
        surface["outline"] = [[u, low if v < low + 10 else v] for u, v in surface["outline"]]
    assert "VER-719" in objections(document)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(JobError, match="not one of the job's tiles"):
        planned('{"depth": "4 in", "tile": "blue"}')
    job: dict[str, Any] = yaml.safe_load(JOB)
    job["rooms"][0]["walls"][0]["openings"][0] |= {"kind": "door", "returns": {"depth": "4 in"}}
    with pytest.raises(JobError, match="returns belong to a window"):
        read_job_text(yaml.safe_dump(job, sort_keys=False))
