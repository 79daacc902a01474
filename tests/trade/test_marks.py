"""On a wall notched round a tub's leg the level line was told as so far above the tub, and lay behind the tub.

Nothing held what was printed of lines and story poles: every mark now carries what it is measured from, what it
stands for and its length, and the verifier derives each of them again from drawn tiles and what can be touched.
"""

import json
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from firstcourse.job import read_job, read_job_text
from firstcourse.papers.mark_words import line_words
from firstcourse.papers.poles import plan_poles
from firstcourse.plan import Plan, Surface
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_INCH, Tape, inches
from firstcourse.verify.mark_fields import Mark
from firstcourse.verify.marks import check_marks
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document
from firstcourse.words import Speaker
from proving import verify

EXAMPLES = Path(__file__).parents[2] / "examples"
SIXTEENTH = TICKS_PER_INCH // 16
MARKED = {"VER-711", "VER-720"}

LEG = """
name: Tub leg
practice: us
date: 2026-11-25
tape: inch
stock:
  - {id: floor board, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}
  - {id: wall board, size: [36 in, 60 in], thickness: 0.42 in, for: [wall]}
tiles:
  - {id: wall tile, size: [11 7/8 in, 3 7/8 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: floor tile, size: [11 13/16 in, 11 13/16 in], thickness: 3/8 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5' 0", B-C: 8' 0", C-D: 5' 0", D-A: 8' 0"}
    diagonals: {A-C: 9' 5-1/4", B-D: 9' 5-1/4"}
    height: 8' 0"
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 15 1/4 in}
      tiling: {tile: floor tile}
      openings:
        - {id: tub, kind: tub, side: A-B, left: 0 in, out: 0 in, width: 60 in, depth: 30 in}
        - {id: island, kind: cabinet, side: C-D, left: 20 in, out: 0 in, width: 20 in, depth: 20 in}
    walls:
      - wall: D-A
        foot: floor
        tiling: {tile: wall tile, pattern: running, offset: 1/2}
        boards: {left: 40 in, top: 84 in}
        framing: {spacing: 16 in, first: 16 in}
        openings:
          - {id: tub, kind: tub, left: 66 1/4 in, bottom: 0 in, width: 29 1/2 in, height: 15 in}
          - {id: valve, kind: valve, left: 81 in, bottom: 33 in, diameter: 5 in}
"""

BENCH = """
name: Bench in mosaic
date: 2026-11-25
tape: inch
tiles:
  - {id: mosaic, size: [2 in, 2 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 96 in, B-C: 66 in, C-D: 96 in, D-A: 66 in}
    diagonals: {A-C: 116 1/2 in}
    height: 96 in
    floor: {}
    benches: [{id: bench, tile: mosaic, wall: C-D, left: 0 in, width: 36 in, depth: 15 in, height: 18 in}]
"""
TURNED = """
name: Turned tile
date: 2026-11-25
tape: inch
tiles:
  - {id: square, size: [6 in, 6 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
stock:
  - {id: wall board, size: [36 in, 60 in], thickness: 0.42 in, for: [wall]}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 96 in, B-C: 66 in, C-D: 96 in, D-A: 66 in}
    diagonals: {A-C: 116 1/2 in}
    height: 96 in
    floor: {tiling: {tile: square, angle: 45}}
    walls:
      - wall: B-C
        foot: floor
        framing: {spacing: 16 in, first: 16 in}
        openings: [{id: door, kind: door, left: 20 in, bottom: 0 in, width: 30 in, height: 80 in}]
"""
SMALL = {"leg": LEG, "bench": BENCH, "turned": TURNED}


@cache
def _text(name: str) -> str:
    job = read_job_text(SMALL[name]) if name in SMALL else read_job(EXAMPLES / name / "job.yaml")
    return plan_job(job, effort=0).document


@cache
def _plan(name: str) -> Plan:
    return Plan.model_validate_json(_text(name))


def _surface(name: str, surface_id: str) -> Surface:
    return next(surface for surface in _plan(name).surfaces if surface.id == surface_id)


def _shifted(point: tuple[int, int], axis: int) -> tuple[int, int]:
    return point[0] + SIXTEENTH * (axis == 0), point[1] + SIXTEENTH * (axis == 1)


def _moved(mark: Mark) -> Iterator[tuple[str, Mark]]:
    """A mark with one of its values moved by a sixteenth of an inch, or with another name."""
    across = 0 if mark.line[0][0] == mark.line[1][0] else 1
    a, b = mark.line
    yield "line", replace(mark, line=(_shifted(a, across), _shifted(b, across)))
    yield "end of its line", replace(mark, line=(a, _shifted(b, 1 - across)))
    if mark.measure is not None:
        start, end = mark.measure
        for axis in (0, 1):
            yield "start of its tape", replace(mark, measure=(_shifted(start, axis), end))
            yield "end of its tape", replace(mark, measure=(start, _shifted(end, axis)))
    yield "distance", replace(mark, distance=mark.distance + SIXTEENTH)
    yield "from", replace(mark, start=f"{mark.start}0")
    yield "to", replace(mark, to=f"{mark.to}0")


def _alone(plan: Document, index: int) -> Document:
    """A plan of which one surface is marked, so that looking at its marks again and again takes little time."""
    return replace(
        plan,
        surfaces=tuple(
            surface if number == index else replace(surface, tiles=(), marks=())
            for number, surface in enumerate(plan.surfaces)
        ),
    )


def _with(plan: Document, index: int, marks: tuple[Mark, ...]) -> Document:
    surfaces = list(plan.surfaces)
    surfaces[index] = replace(surfaces[index], marks=marks)
    return replace(plan, surfaces=tuple(surfaces))


@pytest.mark.parametrize("name", ["tub-bathroom", "leg", "tiled-shower"])
def test_the_verifier_notices_every_mark_that_is_moved_by_a_sixteenth(name: str) -> None:
    whole = read_document(json.loads(_text(name)))
    assert list(check_marks(whole)) == []
    seen: set[str] = set()
    for index, surface in enumerate(whole.surfaces):
        plan = _alone(whole, index)
        quiet = {(found.where, found.message) for found in check_marks(plan)}
        for place, mark in enumerate(surface.marks):
            seen.add(mark.kind)
            # A pole has dozens of marks alike: every fifth is moved in every way, the others along the pole.
            changes = list(_moved(mark)) if mark.kind != "pole" or place % 5 == 0 else [next(_moved(mark))]
            others = (surface.marks[:place], surface.marks[place + 1 :])
            for what, other in [*changes, ("all of it", None)]:
                marks = (*others[0], *([] if other is None else [other]), *others[1])
                found = {(one.where, one.message) for one in check_marks(_with(plan, index, marks))}
                assert found - quiet, (surface.id, what, mark)
    assert seen == {"first_course", "plumb", "snap", "square", "pole"}


def test_a_moved_mark_is_noticed_in_the_document_itself() -> None:
    for kind, field in (("snap", "distance"), ("first_course", "distance"), ("pole", "distance")):
        plan: dict[str, Any] = json.loads(_text("leg"))
        mark = next(mark for surface in plan["surfaces"] for mark in surface["marks"] if mark["kind"] == kind)
        mark[field] = round(mark[field] + 25.4 / 16, 7)
        assert {found.code for found in verify(plan).objections} & MARKED


def test_the_level_line_of_a_notched_wall_runs_over_the_tub_and_is_measured_from_what_lies_below_it() -> None:
    wall = _surface("leg", "bath/wall/D-A")
    left, right = (mark for mark in wall.marks if mark.kind == "first_course")
    rim = inches(15)
    assert left.line[0][1] > rim and left.line[1][0] - left.line[0][0] > inches(50)
    # At the tub's end from its rim, not from the floor behind it; at the other from the floor's boards.
    assert right.from_ == "bath/wall/D-A/opening/tub" and right.distance == right.line[0][1] - rim
    floor = _surface("leg", "bath/floor")
    boards = sum(layer.thickness for layer in floor.layers if layer.of in ("board_mortar", "board"))
    assert (left.from_, left.distance) == ("bath/floor", left.line[0][1] - boards) and boards > inches(1) // 4
    assert any(row.line[0][1] < rim for row in wall.marks if row.kind == "pole" and row.to.endswith("/low"))


def test_nothing_is_measured_from_an_island_a_kerb_or_tile() -> None:
    for name in ("leg", "tiled-shower", "tub-bathroom"):
        for surface in _plan(name).surfaces:
            things = {mark.from_ for mark in surface.marks if mark.measure is not None and mark.kind != "square"}
            assert not any(thing.endswith(("/opening/island", "/opening/shower", "/kerb")) for thing in things)
            kerbs = {f"{surface.id}/side/{i}" for i, side in enumerate(surface.sides) if side.is_kerb}
            assert not things & kerbs


def test_the_papers_say_what_the_marks_hold() -> None:
    wall = _surface("leg", "bath/wall/D-A")
    level, plumb = line_words(wall, Speaker("us", Tape.INCH))
    assert "above the floor before its tile" in level and "above the tub" in level
    assert plumb.startswith("Plumb line") and "the boards' left edge" in plumb
    pole = next(
        pole for pole in plan_poles(_plan("leg")) if pole.surfaces == ("bath/wall/D-A",) and pole.way == "up"
    )
    assert pole.control == "level line" and pole.marks[0].at == 0
    assert [mark.at for mark in pole.marks] == sorted(mark.at for mark in pole.marks)


def test_walls_whose_courses_lie_alike_share_one_stick() -> None:
    poles = [pole for pole in plan_poles(_plan("tub-bathroom")) if pole.way == "up"]
    assert [pole.surfaces for pole in poles] == [
        ("hall bath/wall/A-B", "hall bath/wall/B-C", "hall bath/wall/D-A")
    ]
    assert any(mark.name == "wall D-A: valve, centre" for mark in poles[0].marks)


def test_what_is_built_after_the_day_of_marking_has_start_marks_alone() -> None:
    top = _surface("bench", "bath/bench/bench/top")
    assert len(top.tiles) > 100 and {mark.kind for mark in top.marks} == {"start"} and not top.part_of


def test_lines_of_a_turned_pattern_are_missed_where_walls_stand_all_round() -> None:
    whole = read_document(json.loads(_text("turned")))
    index = next(number for number, surface in enumerate(whole.surfaces) if surface.tiles)
    lines = [mark for mark in whole.surfaces[index].marks if mark.kind == "snap"]
    assert len(lines) == 4 and all(mark.line[0][0] != mark.line[1][0] for mark in lines)
    assert not list(check_marks(whole))
    assert [found.code for found in check_marks(_with(whole, index, ()))] == ["VER-711"]
