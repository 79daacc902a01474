"""The table of starts could tell any number of cuts and any smallest cut: nothing held it to the tiles drawn."""

import json
from functools import cache
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify_text

ROOM = """
name: Small floor
practice: us
date: 2026-11-25
stock: [{id: board, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}]
tiles: [{id: small, size: [7 7/8 in, 7 7/8 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 48 3/4 in, C-D: 60 in, D-A: 48 in}
    diagonals: {A-C: 77 5/16 in, B-D: 76 13/16 in}
    taped_to: studs
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 15 in}
      tiling: {tile: small}
"""
TICK = 1 / 640
"""What lengths of a plan are multiples of [mm]."""


@cache
def document() -> str:
    return plan_job(read_job_text(ROOM), effort=0).document


def test_what_is_told_holds() -> None:
    assert verify_text(document()).objections == ()


@pytest.mark.parametrize(
    ("field", "by"), [("smallest_cut", 25.4 / 16), ("smallest_cut", -25.4 / 16), ("cut_tiles", 1)]
)
def test_a_number_told_otherwise_is_noticed(field: str, by: float) -> None:
    plan: dict[str, Any] = json.loads(document())
    start = plan["surfaces"][0]["tiled"][0]["starts"][0]
    start[field] = round(start[field] + by, 7)
    assert {one.code for one in verify_text(json.dumps(plan)).objections} == {"VER-715", "VER-724"}


def _other(value: Any) -> Any:
    if isinstance(value, bool):
        return not value
    if isinstance(value, int | float):
        return value + 1
    return f"{value}x" if isinstance(value, str) else value


@pytest.mark.parametrize("field", ["why", "sliver", "under_half", "narrowest_at", "wanted", "on_joints"])
def test_what_is_said_of_the_start_is_noticed_when_it_is_not_so(field: str) -> None:
    plan: dict[str, Any] = json.loads(document())
    start = plan["surfaces"][0]["tiled"][0]["starts"][0]
    start[field] = "given" if field == "why" else _other(start[field])
    assert {one.code for one in verify_text(json.dumps(plan)).objections} & {"VER-715", "VER-723"}


@pytest.mark.parametrize("field", ["at", "width", "share", "weight"])
def test_a_cut_along_a_side_is_measured_again(field: str) -> None:
    plan: dict[str, Any] = json.loads(document())
    for edge in plan["surfaces"][0]["tiled"][0]["starts"][0]["edges"]:
        if edge["width"] is not None:
            edge[field] = _other(edge[field])
    assert {one.code for one in verify_text(json.dumps(plan)).objections} & {"VER-715", "VER-723"}


def test_another_start_is_told_once_and_as_another() -> None:
    plan: dict[str, Any] = json.loads(document())
    starts = plan["surfaces"][0]["tiled"][0]["starts"]
    starts[1]["origin"] = starts[0]["origin"]
    assert "VER-723" in {one.code for one in verify_text(json.dumps(plan)).objections}
    starts = json.loads(document())["surfaces"][0]["tiled"][0]["starts"]
    assert [start["why"] for start in starts] == ["best", *["other"] * (len(starts) - 1)]


@pytest.mark.parametrize(
    ("field", "by"),
    [("smallest_cut", TICK), ("sure_cut", TICK), ("slack", TICK), ("cut_tiles", 1), ("uneven", 1e-3)],
)
@pytest.mark.parametrize("number", [0, 1, 2])
def test_a_number_of_every_start_is_found_again_on_the_ground(number: int, field: str, by: float) -> None:
    plan: dict[str, Any] = json.loads(document())
    start = plan["surfaces"][0]["tiled"][0]["starts"][number]
    start[field] = round(start[field] + by, 7)
    assert {one.code for one in verify_text(json.dumps(plan)).objections} & {"VER-724", "VER-725"}


@pytest.mark.parametrize("field", ["sliver", "under_half", "may_sliver", "unsure", "narrowest_at", "on_joints"])
def test_what_is_said_of_another_start_is_noticed_when_it_is_not_so(field: str) -> None:
    plan: dict[str, Any] = json.loads(document())
    start = plan["surfaces"][0]["tiled"][0]["starts"][1]
    start[field] = _other(start[field])
    assert {one.code for one in verify_text(json.dumps(plan)).objections} & {"VER-723", "VER-724", "VER-725"}


def test_another_start_lies_where_it_brings_what_is_told() -> None:
    plan: dict[str, Any] = json.loads(document())
    plan["surfaces"][0]["tiled"][0]["starts"][1]["origin"][0] += 640 * TICK
    assert {one.code for one in verify_text(json.dumps(plan)).objections} & {"VER-724", "VER-725"}


def test_the_same_cuts_are_weighed_alike_for_every_start() -> None:
    plan: dict[str, Any] = json.loads(document())
    plan["surfaces"][0]["tiled"][0]["starts"][1]["edges"][0]["weight"] += 1
    assert {one.code for one in verify_text(json.dumps(plan)).objections} == {"VER-723"}
