"""In rooms out of level tile of walls began at their boards, not on the floor, and courses met at no corner."""

import json
from functools import cache
from typing import Any

import pytest
import yaml

from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.plan import Surface
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import inches
from firstcourse.values import length
from proving import verify_text
from said import said_of

JOB = """
name: Bathroom out of level
practice: us
date: 2026-11-25
tape: inch
stock:
  - {id: wall board 3x5, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}
  - {id: floor board 3x5, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}
tiles:
  - {id: slab, size: [12 in, 12 in], thickness: 3/8 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: white, size: [6 in, 6 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 48 in, C-D: 60 in, D-A: 48 in}
    diagonals: {A-C: 76 13/16 in, B-D: 76 13/16 in}
    height: 60 in
    levels: {A: 0 in, B: 3/4 in, C: 3/4 in, D: 0 in}
    taped_to: studs
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      tiling: {tile: slab}
    walls:
      - {wall: A-B, foot: floor, framing: {spacing: 16 in, first: 16 in}, tiling: {tile: white}}
      - {wall: B-C, foot: floor, framing: {spacing: 16 in, first: 16 in}, tiling: {tile: white}}
"""
RISE = inches(0.75)
NEAR = 4


@cache
def planned(*, shower: bool = False) -> PlanResult:
    job: dict[str, Any] = yaml.safe_load(JOB)
    if shower:
        job["rooms"][0]["floor"]["shower"] = {
            "left": "0 in",
            "out": "0 in",
            "width": "36 in",
            "depth": "30 in",
            "drain": {"left": "18 in", "out": "15 in"},
            "kerb": {"height": "3 in", "width": "5 in"},
            "tiling": {"tile": "white"},
        }
    return plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0)


def wall(pair: str) -> Surface:
    return next(one for one in planned().plan.surfaces if one.id == f"bath/wall/{pair}")


def finish() -> int:
    """Finished floor over the panels [ticks]."""
    floor = next(one for one in planned().plan.surfaces if one.id == "bath/floor")
    return sum(layer.thickness for layer in floor.layers)


def test_tile_begins_on_the_finished_floor_along_the_taped_foot() -> None:
    (zone,) = [zone for zone in wall("A-B").not_tiled if zone.why == "bath/floor"]
    tops = {u: max(v for w, v in zone.outline if w == u) for u, _ in zone.outline}
    left, right = min(tops), max(tops)
    assert tops[left] == pytest.approx(finish(), abs=NEAR)
    assert tops[right] == pytest.approx(finish() + RISE, abs=NEAR)
    joint = next(one for one in wall("A-B").soft_joints if one.at == "bath/floor")
    (_, low), (_, high) = joint.line[0], joint.line[-1]
    assert abs(high - low) == pytest.approx(RISE, rel=0.05)
    for tile in wall("A-B").tiles:
        for u, v in tile.outline:
            assert v >= finish() + RISE * u / right - NEAR


def test_a_wall_level_along_its_own_floor_lies_over_the_lowest_corner() -> None:
    assert wall("A-B").datum == 0 and wall("B-C").datum == RISE
    (zone,) = [zone for zone in wall("B-C").not_tiled if zone.why == "bath/floor"]
    assert bounds(zone.outline)[3] == pytest.approx(finish(), abs=NEAR)


def test_courses_run_on_level_round_the_corner() -> None:
    pitch = inches(6.125)
    (first,), (other,) = ({round((tile_top(t) + w.datum) % pitch / NEAR) for t in whole(w)} for w in both())
    assert abs(first - other) <= 1


def both() -> tuple[Surface, Surface]:
    return wall("A-B"), wall("B-C")


def whole(surface: Surface) -> list[Any]:
    return [tile for tile in surface.tiles if tile.whole]


def tile_top(tile: Any) -> int:
    return bounds(tile.outline)[3]


def test_a_shower_floor_planned_from_level_panels_is_told_at_each_wall() -> None:
    result = planned(shower=True)
    told = {one.where: one for one in said_of(result.plan) if one.code == "TIL-132"}
    assert set(told) == {"bath: wall A-B", "bath: wall B-C"}
    assert told["bath: wall A-B"].measured == '0" at corner A, 3/4" at corner B over the lowest corner'
    for key, spoilt in (("code", "TIL-000"), ("at", ["bath/wall/C-D"]), ("values", {"heights": "0 in"})):
        document = json.loads(result.document)
        for one in document["findings"]:
            one |= {key: spoilt} if one["code"] == "TIL-132" else {}
        assert "VER-910" in {one.code for one in verify_text(json.dumps(document)).objections}
    document = json.loads(result.document)
    next(one for one in document["findings"] if one["code"] == "TIL-132")["values"]["heights"][1]["value"] += 1
    assert "VER-910" in {one.code for one in verify_text(json.dumps(document)).objections}


def test_boards_in_a_corner_are_touched_where_the_wall_beside_stands_higher() -> None:
    """Marks were measured from boards as high as if both walls stood on one level; the plan was refused."""
    job: dict[str, Any] = yaml.safe_load(JOB)
    room = job["rooms"][0]
    room["levels"] = {"A": "1.5 in", "B": "0.125 in", "C": "0 in", "D": "0 in"}
    room["walls"][1] |= {"foot": "tub", "boards": {"bottom": "14 in"}}
    plan = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan
    first, other = (one for one in plan.surfaces if one.id in ("bath/wall/A-B", "bath/wall/B-C"))
    # Both are 60 in high at B, where A-B counts from 1/8 in over the lowest corner.
    assert (first.datum, other.datum) == (inches(0.125), 0)
    low = inches(14) - first.datum
    assert plan.workings["quantities-seam_tape@seam_tape"].inputs["corners"] == length(inches(60) - low)


def spoil(document: dict[str, Any], change: str) -> None:
    found = {one["id"]: one for one in document["surfaces"]}
    if change == "level":
        for zone in found["bath/wall/A-B"]["not_tiled"]:
            low = max(v for u, v in zone["outline"] if u < 100)
            zone["outline"] = [[u, min(v, low)] for u, v in zone["outline"]]
    elif change == "datum":
        found["bath/wall/B-C"]["datum"] = 0
    elif change == "none":
        for one in found.values():
            one["not_tiled"] = []


@pytest.mark.parametrize("change", ["level", "datum", "none"])
def test_verify_derives_the_foot_of_each_wall(change: str) -> None:
    document = json.loads(planned().document)
    spoil(document, change)
    assert "VER-767" in {one.code for one in verify_text(json.dumps(document)).objections}
