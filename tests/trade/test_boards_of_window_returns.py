"""Boards for a window's returns were told with sizes and not cut from the planned sheets, nor fastened."""

import json
from functools import cache
from math import ceil
from typing import Any

import pytest
import yaml

from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import inches
from firstcourse.values import length
from proving import verify_text
from said import all_said

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
FACES = ("sill", "head", "left", "right")
HALF = inches(0.5)


@cache
def planned(depth: str = "4 in", thickness: str = "1/2 in", *, tiled: bool = True) -> PlanResult:
    """The wall with its window set back."""
    job: dict[str, Any] = yaml.safe_load(JOB)
    job["stock"][0]["thickness"] = thickness
    job["rooms"][0]["walls"][0]["openings"][0]["returns"] = {"depth": depth, "tiled": tiled}
    return plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0)


def strip_of(face: str) -> str:
    return f"{WALL}/window/{face} board"


@pytest.mark.parametrize("depth", ["12 in", "26 in"])
def test_boards_of_deep_returns_count_towards_the_fewest_sheets(depth: str) -> None:
    # Sill and head lie level: the verifier took no wall board for them, and called the bound unproved.
    result = planned(depth)
    pieces = [piece.blank for piece in result.plan.pieces]
    area = sum(wide * high for wide, high in pieces) / (inches(36) * inches(60))
    (count,) = result.plan.counts.values()
    assert count.lower_bound >= ceil(area)


@pytest.mark.parametrize("tiled", [True, False])
def test_each_return_is_a_piece_of_the_plan_cut_from_its_sheets(tiled: bool) -> None:
    plan = planned(tiled=tiled).plan
    cut = {part.piece for sheet in plan.sheets for part in sheet.parts if part.piece}
    strips = {one.id: one for one in plan.surfaces if one.boarded and one.part_of == WALL}
    assert set(strips) == {strip_of(face) for face in FACES}
    for strip in strips.values():
        assert strip.boards and all(board.piece in cut and board.mark for board in strip.boards)
        assert all(len(board.fasteners) >= 6 for board in strip.boards)
    gap = inches(0.125)
    (sill,), (left,) = strips[strip_of("sill")].boards, strips[strip_of("left")].boards
    # The sill lies between the sides, which run from framing to framing; both end short of the window's frame.
    assert bounds(sill.outline) == (inches(18) + gap, 0, inches(42) - gap, inches(4) - gap)
    assert bounds(left.outline) == (0, inches(47.5) + gap, inches(4) - gap, inches(72.5) - gap)


def test_fasteners_go_into_framing_that_begins_behind_the_boards_of_the_wall() -> None:
    plan = planned().plan
    for face in ("left", "right"):
        strip = next(one for one in plan.surfaces if one.id == strip_of(face))
        for u, _ in strip.boards[0].fasteners:
            from_front = u if face == "left" else inches(4) - u
            assert HALF <= from_front <= inches(4) - inches(3 / 8)


def test_the_wall_stops_at_the_framing_of_the_opening() -> None:
    wall = next(one for one in planned().plan.surfaces if one.id == WALL)
    (window,) = wall.openings
    assert window.return_board == HALF and window.outline is not None
    left, low, right, top = bounds(window.outline)
    beside = HALF + inches(0.125)
    for board in wall.boards:
        for u, v in board.outline:
            assert not (left - beside < u < right + beside and low - beside < v < top + beside)
    # The members that carry its edges beside the window end where those boards begin.
    added = [bounds(support.outline) for support in wall.supports if support.added]
    assert {box[2] for box in added if box[2] < inches(30)} == {left - HALF}
    assert {box[0] for box in added if box[0] > inches(30)} == {right + HALF}


def test_the_framing_is_told_where_the_wall_is_not_tiled() -> None:
    """Such a wall was refused: what its returns ask of their framing was told of tiled walls alone."""
    job: dict[str, Any] = yaml.safe_load(JOB)
    wall = job["rooms"][0]["walls"][0]
    del wall["tiling"]
    wall["openings"][0]["returns"] = {"depth": "4 in"}
    plan = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan
    (told,) = (finding for finding in plan.findings if finding.code == "TIL-131")
    assert told.at == (f"{WALL}/opening/window",)
    assert told.values["wide"] == length(inches(25))


def test_the_framing_is_told_and_tape_counts_their_edges() -> None:
    plan = planned().plan
    (told,) = [one for one in all_said(plan.findings) if one.code == "TIL-131"]
    assert told.severity == "note" and told.measured == 'framing 25" x 25" apart'
    # Rims 2 x 24 + 2 x 25 in, and four corners 4 in deep.
    assert plan.workings["quantities-seam_tape@seam_tape"].inputs["returns"] == length(inches(9.5 * 12))


def test_returns_too_narrow_for_board_are_told() -> None:
    plan = planned("2 in").plan
    (told,) = [one for one in all_said(plan.findings) if one.code == "TIL-131"]
    assert told.severity == "fix" and told.measured == '1-7/8" wide'
    assert not any(one.boarded and one.part_of for one in plan.surfaces)


@pytest.mark.parametrize("thickness", ["1/4 in", "5/8 in"])
def test_thicker_and_thinner_boards_are_carried_too(thickness: str) -> None:
    plan = planned(thickness=thickness).plan
    strips = [one for one in all_said(plan.findings) if one.where.startswith("bath: wall A-B, window,")]
    assert not any(one.severity == "fix" for one in strips)


def spoil(document: dict[str, Any], change: str) -> None:
    wall = next(one for one in document["surfaces"] if one["id"] == WALL)
    strips = {one["id"]: one for one in document["surfaces"] if one["boarded"] and one["part_of"] == WALL}
    if change == "missing":
        document["surfaces"].remove(strips[strip_of("head")])
    elif change == "smaller":
        (*rest, (u, v), (w, _)) = strips[strip_of("left")]["outline"]
        strips[strip_of("left")]["outline"] = [*rest, [u, v + 25.4], [w, v + 25.4]]
    elif change == "thickness":
        wall["openings"][0]["return_board"] = 6.35
    elif change == "framing":
        strips[strip_of("sill")]["supports"].pop()
    elif change == "sides":
        strips[strip_of("sill")]["sides"][2]["kind"] = "free"
    elif change == "told":
        for one in document["findings"]:
            if one["code"] == "TIL-131":
                one["values"]["wide"]["value"] -= 25.4
    elif change == "no window":
        strips[strip_of("sill")]["id"] = f"{WALL}/hatch/sill board"


@pytest.mark.parametrize("change", ["missing", "smaller", "thickness", "framing", "sides", "told", "no window"])
def test_verify_covers_every_return_that_must_be_boarded(change: str) -> None:
    document = json.loads(planned().document)
    spoil(document, change)
    objected = "VER-910" if change == "told" else "VER-113"
    assert objected in {one.code for one in verify_text(json.dumps(document)).objections}


def test_framing_lies_as_deep_as_returns_deeper_than_their_window_is_wide() -> None:
    job: dict[str, Any] = yaml.safe_load(JOB)
    window = job["rooms"][0]["walls"][0]["openings"][0]
    window |= {"width": "6 in", "returns": {"depth": "8 in"}}
    plan = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan
    surfaces = {surface.id: surface for surface in plan.surfaces}
    for face, axis in zip(FACES, (1, 1, 0, 0), strict=True):
        boxes = [bounds(support.outline) for support in surfaces[strip_of(face)].supports]
        near, far = min(box[axis] for box in boxes), max(box[axis + 2] for box in boxes)
        assert far - near == inches(8) - HALF
