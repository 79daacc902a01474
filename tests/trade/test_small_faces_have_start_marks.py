"""Faces of niches, benches, kerbs and window returns had tile and not one mark to begin it by.

Each has a first joint both ways, measured from an edge that stands when its tile is set, and the verifier derives
each again.
"""

import json
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.papers.tile_pages import tile_blocks
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_INCH, format_length
from firstcourse.verify.marks import check_marks
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document, Surface
from firstcourse.words import speaker_for
from proving import verify

SIXTEENTH = TICKS_PER_INCH // 16
JOB = """
name: Small faces
practice: us
date: 2026-11-25
tape: inch
stock: [{id: board 3x5, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}]
tiles:
  - {id: white, size: [8 in, 4 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: mosaic, size: [2 in, 2 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: hex, shape: hexagon, size: [2 in, 2.3 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 96 in, B-C: 66 in, C-D: 96 in, D-A: 66 in}
    diagonals: {A-C: 116 1/2 in}
    height: 96 in
    taped_to: studs
    floor:
      shower:
        {side: A-B, left: 0 in, out: 0 in, width: 48 in, depth: 36 in, drain: {left: 22 in, out: 17 in},
         kerb: {height: 4 1/2 in, width: 5 in, tile: mosaic}, membrane: liner, tiling: {tile: mosaic}}
    benches:
      - {id: seat, tile: white, wall: C-D, left: 0 in, width: 36 in, depth: 15 in, height: 18 in}
    walls:
      - wall: C-D
        foot: floor
        framing: {spacing: 16 in, first: 15 1/4 in}
        openings: [{id: window, kind: window, left: 50 in, bottom: 48 in, width: 20 in, height: 24 in,
                    returns: {depth: 4 in}}]
        tiling: {tile: white, pattern: running, offset: 1/2}
      - wall: D-A
        foot: floor
        framing: {spacing: 16 in, first: 15 1/4 in}
        openings: [{id: niche, kind: niche, left: 32 1/2 in, bottom: 48 in, width: 14 in, height: 12 in}]
        tiling:
          tile: white
          niches: [{niche: niche, depth: 3 1/2 in, tile: hex, pattern: hexagon, returns: white}]
"""


@cache
def _text() -> str:
    return plan_job(read_job_text(JOB), effort=0).document


@cache
def _document() -> Document:
    return read_document(json.loads(_text()))


def _small() -> list[Surface]:
    return [surface for surface in _document().surfaces if surface.tiles and surface.built_later]


def _only(surface: Surface) -> Document:
    """A plan of which this surface alone is looked at."""
    plan = _document()
    return replace(
        plan,
        surfaces=tuple(
            surface if one.id == surface.id else replace(one, tiles=(), marks=()) for one in plan.surfaces
        ),
    )


def _told(surface: Surface) -> set[tuple[str, str]]:
    return {(found.where, found.message) for found in check_marks(_only(surface))}


def test_every_small_face_has_its_first_joint_both_ways() -> None:
    faces = _small()
    parts = {surface.id.rpartition("/")[2] for surface in faces}
    assert parts == {"back", "sill", "head", "left", "right", "top", "front", "right end", "inner", "outer"}
    for surface in faces:
        lines = {mark.line for mark in surface.marks}
        assert {mark.kind for mark in surface.marks} == {"start"}
        level = [line for line in lines if line[0][1] == line[1][1]]
        upright = [line for line in lines if line[0][0] == line[1][0]]
        assert (len(level), len(upright)) == (1, 1), surface.id
        assert not _told(surface)


def test_the_verifier_misses_each_and_notices_each_that_is_moved() -> None:
    for surface in _small():
        for line in {mark.line for mark in surface.marks}:
            rest = tuple(mark for mark in surface.marks if mark.line != line)
            assert _told(replace(surface, marks=rest)), surface.id
        for place, mark in enumerate(surface.marks):
            assert mark.measure is not None
            (a, b), (start, end) = mark.line, mark.measure
            across = 0 if a[0] == b[0] else 1

            def moved(point: tuple[int, int], axis: int = across) -> tuple[int, int]:
                return point[0] + SIXTEENTH * (axis == 0), point[1] + SIXTEENTH * (axis == 1)

            side = int(mark.start.rpartition("/")[2])
            for other in (
                replace(mark, distance=mark.distance + SIXTEENTH),
                replace(mark, line=(moved(a), moved(b)), measure=(start, moved(end)), distance=mark.distance),
                replace(mark, measure=(moved(start), end), distance=mark.distance),
                replace(mark, start=f"{surface.id}/side/{(side + 1) % len(surface.sides)}"),
                replace(mark, start=f"{surface.id}/opening/ghost"),
                replace(mark, to=f"{mark.to}0"),
            ):
                marks = (*surface.marks[:place], other, *surface.marks[place + 1 :])
                assert _told(replace(surface, marks=marks)), (surface.id, other)


def test_nothing_is_measured_from_the_wall_tile_before_a_niche_or_from_a_later_floor() -> None:
    for surface in _small():
        for mark in surface.marks:
            met = surface.met[int(mark.start.rpartition("/")[2])]
            assert met.split("/")[-2] != "opening" and not met.endswith(("/floor", "/floor/shower"))


def test_the_sides_of_a_niche_are_measured_from_the_tile_of_its_sill_or_head() -> None:
    left = next(surface for surface in _small() if surface.id.endswith("niche/left"))
    head = next(surface for surface in _small() if surface.id.endswith("niche/head"))
    thick = sum(thickness for _, thickness in head.layers)
    up = [mark for mark in left.marks if mark.line[0][1] == mark.line[1][1]]
    assert len(up) == 2 and thick > 0
    top, foot = max(v for _, v in left.outline), min(v for _, v in left.outline)
    for mark in up:
        assert mark.measure is not None and mark.distance > 0
        at = mark.measure[0][1]
        assert at == top - thick if mark.start.endswith("/side/2") else at >= foot + thick


def test_a_moved_start_mark_is_noticed_in_the_document_itself() -> None:
    plan: dict[str, Any] = json.loads(_text())
    mark = next(mark for surface in plan["surfaces"] for mark in surface["marks"] if mark["kind"] == "start")
    mark["distance"] = round(mark["distance"] + 25.4 / 16, 7)
    assert "VER-711" in {found.code for found in verify(plan).objections}


def _faces(data: dict[str, Any]) -> Iterator[tuple[str, str, str]]:
    """Each face of a block with its title, its name and the words under it."""
    for column in data["columns"]:
        for cell in column:
            yield data["title"], cell["name"], " ".join(cell["words"])


def test_the_table_of_a_face_says_what_its_marks_hold() -> None:
    plan = Plan.model_validate_json(_text())
    faces = [face for block in tile_blocks(plan) if block.kind == "faces" for face in _faces(block.data)]
    for surface in plan.surfaces:
        starts = [mark for mark in surface.marks if mark.kind == "start"]
        if not starts:
            continue
        title, _, name = speaker_for(plan).place(surface.id).rpartition(", ")
        told = next(words for of, names, words in faces if of == f"{title}: tile" and name in names)
        for mark in starts:
            assert format_length(mark.distance, plan.job.tape) in told, (surface.id, told)


SLOPED_FOOT = """
name: a kerb over a bed that falls both ways
date: 2026-11-25
tape: inch
stock: [{id: thin, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}]
tiles:
  - {id: chips, size: [6 in, 6 in], thickness: 1/4 in, joint: 1/8 in, sheet: ["2", "2"]}
  - {id: slab, size: [12 in, 24 in], thickness: 3/8 in, joint: 1/8 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 50 in, B-C: 42 in, C-D: 50 in, D-A: 42 in}
    diagonals: {A-C: 65 5/16 in}
    height: 96 in
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 15 1/4 in}
      shower:
        {side: A-B, left: 0 in, out: 0 in, width: 15 in, depth: 30 in, falls: level, membrane: liner,
         drain: {left: 15 in, out: 14 in, diameter: 4 in}, pre_slope: 1/2 in, bed: 1 1/2 in,
         kerb: {height: 4 1/2 in, width: 5 in, entry: 24 in, body: framed, tile: slab}, tiling: {tile: chips}}
"""
STRIP = """
name: a strip beside a shower
date: 2026-11-25
tape: mm
tiles: [{id: large, size: [600 mm, 600 mm], thickness: 10 mm, joint: 2.91 mm, edges: rectified}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 1800 mm, B-C: 1500 mm, C-D: 1854 mm, D-A: 1500 mm}
    diagonals: {A-C: 2343 mm}
    floor:
      tiling: {tile: large}
      doorways: [{id: door, other_floor: 20 mm, wall: C-D, left: 100 mm, width: 800 mm, height: 2000 mm}]
      shower: {width: 1800 mm, depth: 900 mm, left: 0 mm, out: 0 mm, drain: {along: A-B, width: 60 mm},
               falls: single, recess: 40 mm, membrane: sheet, tiling: {tile: large}}
"""


@pytest.mark.parametrize(
    ("job", "face"),
    [(SLOPED_FOOT, "bath/floor/shower/kerb 2/inner"), (STRIP, "bath/floor")],
    ids=["kerb", "strip"],
)
def test_a_first_joint_is_looked_for_where_its_tile_has_that_edge(job: str, face: str) -> None:
    """It was looked for beside the middle of the tile, where a slanting edge had cut the ground away."""
    plan = plan_job(read_job_text(job), effort=0).plan
    (surface,) = (one for one in plan.surfaces if one.id == face)
    starts = {mark.line for mark in surface.marks if mark.kind == "start"}
    assert {a[1] == b[1] for a, b in starts} == {True, False}
