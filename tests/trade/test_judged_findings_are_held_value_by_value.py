"""Findings on frames, panels, materials and surfaces could be dropped, softened or changed, and the plan verified.

Each of them is derived again from what the job gives and from the sheets that are proved: a plan with one of its
values changed, without the finding, with it told less sternly, or told of another place as well, is objected to.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.verify.judged import check_judged, showers
from firstcourse.verify.judged.check import held, judged_asked
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document, Said
from proving import verify_text

ROOM = """
name: judged
date: 2026-11-25
{head}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}}
    diagonals: {{A-C: 84 7/8 in}}
    height: 96 in
{room}
"""
FRAME = ROOM.format(
    head="stock: [{id: board, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}]",
    room="""
    floor:
      framing: {parallel_to: A-B, spacing: 24 in, first: 8 in}
      joists: {span: 14 ft, size: 2x8, species: hf, cuts: [{kind: hole, size: 4 in, at: 20 in, edge: 1 in}]}
      panels: {layers: [0.7 in]}
      planks: {thickness: 5/8 in}
      tile: {kind: stone, thickness: 1/2 in, edge: 12 in, absorption_percent: 12, wet_friction: 0.3}
      straightedge: [{reach: 10 ft, gap: 1/4 in}, {reach: 4 ft, gap: 0 in}]
      doorways: [{id: door, other_floor: 2 in, door_underside: 1 in}]
      openings: [{id: drain, kind: drain, side: A-B, left: 30 in, out: 30 in, diameter: 4 in, top: 1/4 in}]
      flange_top: 2 in
      trim: 1 in
      exposure: {zone: wet, mortar: organic_adhesive, fasteners: drywall_screw, over: painted}
""",
)
WALLS = ROOM.format(
    head="stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in, kind: greenboard}]\n"
    "tiles: [{id: chip, size: [4 in, 4 in], thickness: 3/8 in, kind: stone, joint: 1/8 in}]",
    room="""
    plumb: {A-B: 3/4 in, D-A: -1/2 in}
    levels: {A: 0 in, B: 1/2 in}
    walls:
      - wall: A-B
        framing: {spacing: 24 in, first: 8 in}
        studs: {steel: 2 1/2 in, thickness: 20 mil}
        tile: {kind: ceramic, thickness: 3/8 in, edge: 12 in}
        faces: [{at: 8 in, face: 0 in}, {at: 32 in, face: 1/2 in}, {at: 56 in, face: 0 in}]
        openings:
          - {id: valve, kind: valve, left: 20 in, bottom: 40 in, diameter: 5 in, depth: [1/2 in, 3/4 in]}
        exposure: {zone: steam, membrane: yes, retarder_behind: yes}
      - wall: B-C
        foot: tub
        boards: {bottom: 15 in}
        framing: {spacing: 16 in, first: 8 in}
        studs: {steel: 2 1/2 in}
    ceiling:
      framing: {parallel_to: A-B, spacing: 24 in, first: 8 in}
      joists: {span: 14 ft, stiffness: 2.0e7 lb in2}
      tiling: {tile: chip}
      exposure: {zone: damp}
""",
)
UK = ROOM.format(
    head="practice: uk\ntape: mm\nstock: [{id: board, size: [900 mm, 1500 mm], thickness: 6 mm}]",
    room="""
    floor:
      framing: {parallel_to: A-B, spacing: 600 mm, first: 200 mm}
      joists: {span: 3 m, size: 2x8}
      panels: {layers: [15 mm]}
      exposure: {zone: damp, slab_humidity_percent: 90}
""",
)
_TILE = "tiles: [{id: slab, size: [12 in, 24 in], thickness: 3/8 in, kind: porcelain, joint: 1/8 in}]"
WET_ROOM = ROOM.format(
    head=_TILE,
    room="""
    floor:
      doorways: [{id: door, other_floor: 1/2 in, door_underside: 2 in, wall: B-C, left: 3 in, width: 50 in}]
      openings: [{id: flange, kind: flange, side: A-B, left: 9 in, out: 9 in, diameter: 4 in, top: 1/2 in}]
      exposure: {zone: wet, membrane: yes}
      shower:
        {side: A-B, left: 0 in, out: 0 in, width: 60 in, depth: 60 in,
         drain: {left: 12 in, out: 50 in, diameter: 4 in},
         falls: square, membrane: sheet, recess: 1 in, tiling: {tile: slab}}
""",
)
KERB = ROOM.format(
    head=_TILE,
    room="""
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      joists: {span: 10 ft, size: 2x8}
      panels: {layers: [23/32 in]}
      tile: {kind: ceramic, thickness: 3/8 in}
      shower:
        {side: A-B, left: 0 in, out: 0 in, width: 30 in, depth: 30 in,
         drain: {left: 15 in, out: 15 in, diameter: 4 in},
         kerb: {height: 1/4 in, width: 4 in, entry: 20 in}, tiling: {tile: slab},
         shelves: [{id: sill, depth: 6 in, drop: 1 in}]}
""",
)
JOBS = {"frame": FRAME, "walls": WALLS, "uk": UK, "wet_room": WET_ROOM, "kerb": KERB}


@cache
def planned(name: str) -> Document:
    """The plan of a job, which verifies."""
    document = plan_job(read_job_text(JOBS[name]), effort=0).document
    assert verify_text(document).verified
    return read_document(json.loads(document))


def judged(plan: Document) -> list[Said]:
    return [one for one in plan.findings if one.code.startswith("SUI-") or one.code in showers.CODES]


def changed(value: Any) -> Iterator[Any]:
    """A value otherwise, in each way that goes with its type."""
    if isinstance(value, bool):
        yield not value
    elif isinstance(value, int | float):
        yield value + 1
    elif isinstance(value, str):
        yield value + "x"
    elif isinstance(value, list):
        yield [*value, 1]
        yield from (
            [*value[:place], other, *value[place + 1 :]]
            for place, one in enumerate(value)
            for other in changed(one)
        )
    elif isinstance(value, Mapping):
        yield from (dict(value) | {key: other} for key, one in value.items() for other in changed(one))


def spoiled(said: Said) -> Iterator[Said | None]:
    """A finding left out, softened, or changed in one value."""
    yield None
    yield from (replace(said, severity=one) for one in ("stop", "fix", "note") if one != said.severity)
    yield replace(said, code="SUI-999")
    yield replace(said, rule="" if said.rule else "wall.plumb.max")
    yield replace(said, at=(f"{said.at[0]}x", *said.at[1:]))
    yield replace(said, at=(*said.at, "bath/floor"))
    yield replace(said, remedies=(*said.remedies, "fur"))
    yield replace(said, remedies=said.remedies[1:]) if said.remedies else None
    for key, given in (("measured", said.measured), ("limit", said.limit)):
        yield replace(said, **{key: None if given else {"value": 1.0, "unit": "mm", "sense": "most"}})
        yield from (replace(said, **{key: other}) for other in changed(given))
    yield replace(said, values={**said.values, "more": True})
    for name, value in said.values.items():
        yield replace(said, values={key: one for key, one in said.values.items() if key != name})
        yield from (replace(said, values={**said.values, name: other}) for other in changed(value))


@pytest.mark.parametrize("job", JOBS)
def test_each_value_of_each_finding_is_held(job: str) -> None:
    plan = planned(job)
    assert not [*check_judged(plan)]
    asked = judged_asked(plan)
    for said in judged(plan):
        others = tuple(one for one in plan.findings if one is not said)
        for other in spoiled(said):
            told = replace(plan, findings=others if other is None else (*others, other))
            # What a finding says is lacking is looked up as it is said.
            right = judged_asked(told) if said.code == "SUI-901" else asked
            assert [*held(told, right)], (said, other)


@pytest.mark.parametrize("job", JOBS)
def test_a_finding_that_nothing_asks_for_is_objected_to(job: str) -> None:
    plan = planned(job)
    asked = judged_asked(plan)
    for said in judged(plan):
        for place in ("bath/wall/C-D", "job"):
            extra = replace(said, at=(place, *said.at[1:]))
            if extra not in plan.findings:
                assert [*held(replace(plan, findings=(*plan.findings, extra)), asked)], extra


def test_the_jobs_here_show_most_codes() -> None:
    shown = {said.code for job in JOBS for said in judged(planned(job))}
    assert len(shown) >= 55, sorted(shown)
