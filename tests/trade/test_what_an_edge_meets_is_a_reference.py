"""What a side of a surface meets stood in the plan as an English label, which other parts of the program used as a
key: nothing held that a floor's side named the wall that stands there, and a Spanish paper parsed English."""

import json
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.verify.benches import check_benches
from firstcourse.verify.met_edges import check_met
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document, Surface
from firstcourse.words import speaker_for
from proving import verify

DETAILS = Path(__file__).parents[1] / "e2e" / "tile_details.yaml"
WINDOW = """
name: Window over a tray
practice: us
date: 2026-11-25
stock: [{id: board 3x5, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}]
tiles: [{id: white, size: [8 in, 4 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 96 in, C-D: 60 in, D-A: 96 in}
    diagonals: {A-C: 113 3/16 in, B-D: 113 3/16 in}
    height: 96 in
    taped_to: studs
    walls:
      - wall: A-B
        boards: {bottom: 6 in, right: 40 in}
        foot: tray
        framing: {spacing: 16 in, first: 15 1/4 in}
        openings:
          - id: light
            kind: window
            left: 9 in
            bottom: 48 in
            width: 24 in
            height: 24 in
            returns: {depth: 4 in}
        exposure: {zone: wet, membrane: true}
        tiling: {tile: white}
"""


@cache
def planned(name: str) -> Plan:
    return plan_job(read_job_text(WINDOW if name == "window" else DETAILS.read_text()), effort=0).plan


@cache
def read(name: str) -> Document:
    return read_document(_json(name))


def _json(name: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(planned(name).model_dump_json(by_alias=True))
    return found


def _with(plan: Document, surface: Surface, met: tuple[str, ...]) -> Document:
    surfaces = (replace(one, met=met) if one is surface else one for one in plan.surfaces)
    return replace(plan, surfaces=tuple(surfaces))


def _changed(surface: Surface) -> Iterator[tuple[str, ...]]:
    """Each side without its reference, and each with that of the next, where it is another."""
    for index, here in enumerate(surface.met):
        after = (index + 1) % len(surface.met)
        yield tuple("" if place == index else met for place, met in enumerate(surface.met))
        if here != surface.met[after]:
            swapped = {index: surface.met[after], after: here}
            yield tuple(swapped.get(place, met) for place, met in enumerate(surface.met))


def test_sides_refer_to_surfaces_corners_and_fixtures_and_stop_by_a_code() -> None:
    met = {surface.id: [side.meets for side in surface.sides] for surface in planned("window").surfaces}
    wall = "bath/wall/A-B"
    assert met[wall] == ["bath/fixture/tray", "stops_here", "bath/ceiling", "bath/corner/A"]
    front, frame = f"{wall}/opening/light", f"{wall}/opening/light/frame"
    assert met[f"{wall}/light/sill"] == [front, f"{wall}/light/right", frame, f"{wall}/light/left"]
    assert met[f"{wall}/light/left board"] == [f"{front}/framing", frame, f"{front}/framing", wall]
    details = {surface.id: [side.meets for side in surface.sides] for surface in planned("details").surfaces}
    assert details["bath/floor"] == [f"bath/wall/{pair}" for pair in ("C-D", "B-C", "A-B", "D-A")]
    assert details["bath/floor/shower/kerb 1/top"].count("bath/floor/shower/kerb 2") == 1
    assert details["bath/bench/bench/front"][0] == "bath/floor/shower"


@pytest.mark.parametrize("name", ["window", "details"])
def test_each_reference_is_proved(name: str) -> None:
    plan = read(name)
    assert not [*check_met(plan), *check_benches(plan)]
    tried = 0
    for surface in plan.surfaces:
        for met in _changed(surface):
            changed = _with(plan, surface, met)
            assert [*check_met(changed), *check_benches(changed)], (surface.id, met)
            tried += 1
    assert tried > (40 if name == "window" else 100)


def test_a_side_without_its_reference_cannot_be_read_and_one_swapped_is_an_objection() -> None:
    plan = _json("window")
    wall = next(surface for surface in plan["surfaces"] if surface["id"] == "bath/wall/A-B")
    one, other = wall["sides"][0], wall["sides"][2]
    one["meets"], other["meets"] = other["meets"], one["meets"]
    assert {"VER-114"} <= {objection.code for objection in verify(plan).objections}
    del one["meets"]
    assert [objection.code for objection in verify(plan).objections] == ["VER-001"]


def test_a_bench_s_foot_names_the_floor_that_lies_under_it() -> None:
    plan = read("details")
    front = next(surface for surface in plan.surfaces if surface.id == "bath/bench/bench/front")
    for wrong in ("bath/floor", "bath/floor/shower/kerb", "own_height"):
        changed = _with(plan, front, (wrong, *front.met[1:]))
        assert [*check_met(changed), *check_benches(changed)], wrong


def test_edges_are_said_in_the_reader_s_tongue() -> None:
    plan = planned("window")
    said = {tongue: speaker_for(plan, tongue=tongue) for tongue in ("en", "es")}
    by_id = {surface.id: surface for surface in plan.surfaces}

    def edges(ref: str, tongue: str) -> list[str]:
        return [said[tongue].edge(side) for side in by_id[ref].sides]

    assert edges("bath/wall/A-B", "en") == ["tray flange", "stops here", "ceiling", "corner A"]
    assert edges("bath/wall/A-B", "es") == ["ceja del plato", "termina aquí", "techo", "esquina A"]
    assert edges("bath/wall/A-B/light/sill", "en") == ["light front", "light side", "window frame", "light side"]
    assert edges("bath/wall/A-B/light/head board", "es")[2] == "cara de los paneles de la pared"
    for surface in planned("details").surfaces:
        for tongue in ("en", "es"):
            for side in surface.sides:
                assert "/" not in said[tongue].edge(side) and "_" not in said[tongue].edge(side)


def test_an_outline_s_first_side_may_be_any_wall_s() -> None:
    """A floor whose sides all name the wall after their own is noticed."""
    plan = read("details")
    floor = next(surface for surface in plan.surfaces if surface.id == "bath/floor")
    turned = (*floor.met[1:], floor.met[0])
    assert len(list(check_met(_with(plan, floor, turned)))) == len(turned)


def test_the_job_is_written_as_it_was() -> None:
    job = yaml.safe_load(WINDOW)
    job["rooms"][0]["walls"][0]["foot"] = "floor"
    job["rooms"][0]["walls"][0]["boards"] = {}
    (wall, *_) = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan.surfaces
    assert [side.meets for side in wall.sides] == ["bath/floor", "bath/corner/B", "bath/ceiling", "bath/corner/A"]
