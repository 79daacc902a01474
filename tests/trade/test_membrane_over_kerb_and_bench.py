"""Membrane on a kerb's outer face was as high as over the drain, and a bench in a shower began in the bed."""

import json
from functools import cache
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.plan import Fall, Surface
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import inches
from firstcourse.values import length
from proving import verify_text

JOB = """
name: Shower let into a bathroom
practice: us
date: 2026-11-25
tape: inch
stock:
  - {id: wall board 3x5, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}
  - {id: floor board 3x5, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}
tiles:
  - {id: slab, size: [12 in, 12 in], thickness: 3/8 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: small, size: [2 in, 2 in], thickness: 1/4 in, joint: 1/8 in, sheet: [6, 6]}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 96 in, B-C: 36 in, C-D: 96 in, D-A: 36 in}
    diagonals: {A-C: 102 1/2 in, B-D: 102 1/2 in}
    height: 96 in
    taped_to: studs
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      tiling: {tile: slab}
      shower:
        left: 0 in
        out: 0 in
        width: 48 in
        depth: 36 in
        drain: {left: 24 in, out: 18 in}
        membrane: MEMBRANE
        tiling: {tile: small}
        kerb: {height: 3 in, width: 5 in, tile: slab}
    walls:
      - wall: D-A
        foot: kerb
        framing: {spacing: 16 in, first: 8 in}
        exposure: {zone: wet, membrane: true}
        tiling: {tile: slab}
    benches: [{id: seat, wall: D-A, left: 0 in, width: 36 in, depth: 12 in, height: 19 in, tile: slab}]
"""
FLOOR = "bath/floor/shower"


@cache
def planned(membrane: str) -> PlanResult:
    return plan_job(read_job_text(JOB.replace("MEMBRANE", membrane)), effort=0)


def parts(membrane: str) -> tuple[dict[str, Surface], Fall]:
    surfaces = {surface.id: surface for surface in planned(membrane).plan.surfaces}
    fall = surfaces[FLOOR].fall
    assert fall is not None
    return surfaces, fall


def outer_face(membrane: str) -> int:
    """From the boards of the room's floor to the outer edge of the finished kerb [ticks]."""
    surfaces, fall = parts(membrane)
    under_tile = sum(one.thickness for one in surfaces["bath/floor"].layers if one.of in ("mortar", "tile"))
    assert fall.drain_height is not None and fall.kerb is not None and fall.room_floor is not None
    # A kerb 5 in wide falls 1/4 in a foot, up to half a mark: 1/8 in.
    return fall.drain_height + fall.kerb + inches(1 / 8) - (fall.room_floor - under_tile)


@pytest.mark.parametrize("membrane", ["liner", "liquid", "sheet"])
def test_the_outer_face_of_a_kerb_is_covered_down_to_the_floor_outside(membrane: str) -> None:
    _, fall = parts(membrane)
    outer = outer_face(membrane)
    assert fall.kerb is not None and outer > fall.kerb + inches(1)
    girth = fall.kerb - fall.rise + fall.membrane_below + inches(5) + outer
    inputs = planned(membrane).plan.workings[f"water-floor@{FLOOR}"].inputs
    assert inputs["kerb_long"].value == pytest.approx(36 * 25.4, abs=0.5)  # type: ignore[union-attr]
    assert (inputs["kerb_girth"], inputs["outer"]) == (length(girth), length(outer))


@pytest.mark.parametrize("membrane", ["liner", "sheet"])
def test_the_front_of_a_bench_is_covered_from_the_membrane_of_the_shower_floor(membrane: str) -> None:
    surfaces, fall = parts(membrane)
    front = surfaces["bath/bench/seat/front"]
    assert all(side.meets == "bath/floor/shower" for side in front.sides[:-3])
    # Its foot lies on the finished floor; the floor's membrane lies under tile, mortar and what they stand on.
    begins = min(v for _, v in front.outline) - fall.membrane_below
    assert begins > 0 or membrane == "liner"
    high = max(v for _, v in front.outline) - begins
    inputs = planned(membrane).plan.workings["water-bench@bath/bench/seat/front"].inputs
    assert inputs["across"].value == pytest.approx(36 * 25.4, abs=0.5)  # type: ignore[union-attr]
    assert inputs["high"] == length(high)


@pytest.mark.parametrize("what", ["sheet_membrane", "sealing_band"])
def test_verify_derives_the_same_membrane(what: str) -> None:
    document: dict[str, Any] = json.loads(planned("sheet").document)
    (line,) = [one for one in document["quantities"] if one["item"] == what]
    line["exact"] = round(line["exact"] * 0.98, 4)
    assert any(one.code.startswith("VER-8") for one in verify_text(json.dumps(document)).objections)
