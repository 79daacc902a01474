"""The mortar under one tile had 0.108 in in the floor's height, 0.194 in in the order and 0.094 in at the drain.

Each layer of a surface has one thickness now, by the trowel its tile is set with or as the job gives it, and
height, mass, order, drain, doors and joints all take that one.
"""

import json

import pytest

from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.layers import combed_mortar
from firstcourse.plan import Plan, Surface
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, inches
from firstcourse.values import length
from proving import verify_text

JOB = """
name: small shower room
date: 2026-11-25
tape: inch
stock:
- {id: thin, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}
- {id: thick, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}
tiles:
- {id: large, size: [12 in, 24 in], thickness: 3/8 in, kind: porcelain, joint: 3/16 in, edges: rectified}
- {id: chips, size: [2 in, 2 in], thickness: 1/4 in, kind: porcelain, joint: 1/8 in, sheet: [6, 6]}
rooms:
- name: bath
  corners: [A, B, C, D]
  sides: {A-B: 8', B-C: 6', C-D: 8', D-A: 6'}
  diagonals: {A-C: 10', B-D: 10'}
  height: 8'
  floor:
    framing: {parallel_to: A-B, spacing: 16 in, first: 15 1/4 in}
    tiling: {tile: large}
    TILE
    doorways: [{id: door, other_floor: 3/4 in, door_underside: 1 1/2 in}]
    shower:
      left: 0 in
      out: 0 in
      width: 36 in
      depth: 36 in
      drain: {left: 18 in, out: 18 in}
      kerb: {height: 4 in, width: 4 in, tile: large}
      tiling: {tile: chips}
"""


def planned(tile: str = "") -> tuple[Plan, str]:
    done = plan_job(read_job_text(JOB.replace("    TILE\n", f"    {tile}\n" if tile else "")), effort=0)
    return done.plan, done.document


@pytest.fixture(scope="module")
def combed() -> tuple[Plan, str]:
    return planned()


def surface(plan: Plan, name: str) -> Surface:
    return next(one for one in plan.surfaces if one.id == name)


def layers(one: Surface) -> dict[str, int]:
    return {layer.of: layer.thickness for layer in one.layers}


def worked(plan: Plan, working: str, layer: str) -> float:
    inputs = plan.workings[working].inputs
    (thick,) = [thick for of, thick in zip(inputs["layer"], inputs["thick"], strict=True) if of.word == layer]
    return thick.value / 25.4


def test_height_mass_door_order_and_joints_use_the_mortar_that_the_trowel_leaves(combed: tuple[Plan, str]) -> None:
    plan, _ = combed
    floor = surface(plan, "bath/floor")
    mortar = combed_mortar(inches(24), load_rules(read_job_text(JOB.replace("    TILE\n", "")).date)).thickness
    assert layers(floor)["mortar"] == floor.tiled[0].mortar == mortar
    assert floor.tiled[0].trowel == "large"
    inch = mortar / TICKS_PER_INCH
    for name in ("build_up", "mass"):
        assert worked(plan, f"height-{name}@bath/floor", "mortar") == pytest.approx(inch, abs=0.0006)
    high = sum(layers(floor).values())
    door = plan.workings["height-doorway_step@bath/floor/door/door"]
    assert door.inputs["this_floor"].value == pytest.approx(high / TICKS_PER_MM, abs=0.001)
    assert plan.workings["tiles-mortar@bath/floor+tile_stock/large"].result == length(mortar)
    fall = surface(plan, "bath/floor/shower").fall
    assert fall is not None and fall.room_floor == high


def test_the_drain_stands_on_the_mortar_that_is_ordered_for_its_tile(combed: tuple[Plan, str]) -> None:
    plan, _ = combed
    shower = surface(plan, "bath/floor/shower")
    fall = shower.fall
    assert fall is not None and fall.drain_height is not None
    assert layers(shower) == {"mortar": shower.tiled[0].mortar, "tile": inches(0.25)}
    assert fall.drain_height == fall.bed + fall.pre_slope + sum(layers(shower).values())
    working = plan.workings["tiles-mortar@bath/floor/shower+tile_stock/chips"]
    assert working.result == length(layers(shower)["mortar"])


def test_a_kerb_is_as_thick_as_its_own_tile_and_mortar(combed: tuple[Plan, str]) -> None:
    plan, _ = combed
    top = surface(plan, "bath/floor/shower/kerb 1/top")
    assert layers(top) == {"mortar": top.tiled[0].mortar, "tile": inches(0.375)}


def test_a_thickness_that_the_job_gives_holds_for_the_order_too() -> None:
    plan, document = planned("tile: {kind: ceramic, thickness: 3/8 in, bond_coat: 3/16 in}")
    floor = surface(plan, "bath/floor")
    assert layers(floor)["mortar"] == floor.tiled[0].mortar == inches(0.1875)
    assert floor.tiled[0].trowel == ""
    assert plan.workings["tiles-mortar@bath/floor+tile_stock/large"].result == length(inches(0.1875))
    listed = plan.workings["quantities-tile_mortar@large_tile_mortar"].inputs
    thick = {place.ref: one for place, one in zip(listed["surface"], listed["thick"], strict=True)}
    assert thick["bath/floor"] == length(inches(0.1875))
    assert not verify_text(document).objections


@pytest.mark.parametrize("of", ["mortar", "tile", "board", "board_mortar"])
def test_no_layer_can_be_moved_by_a_64th_unseen(combed: tuple[Plan, str], of: str) -> None:
    document = json.loads(combed[1])
    floor = next(one for one in document["surfaces"] if one["id"] == "bath/floor")
    layer = next(one for one in floor["layers"] if one["of"] == of)
    layer["thickness"] = round(layer["thickness"] + 25.4 / 64, 6)
    assert "VER-768" in {said.code for said in verify_text(json.dumps(document)).objections}


def test_mortar_and_what_is_printed_of_it_cannot_differ(combed: tuple[Plan, str]) -> None:
    document = json.loads(combed[1])
    floor = next(one for one in document["surfaces"] if one["id"] == "bath/floor")
    floor["tiled"][0]["mortar"] = round(floor["tiled"][0]["mortar"] + 25.4 / 64, 6)
    assert "VER-768" in {said.code for said in verify_text(json.dumps(document)).objections}
    document = json.loads(combed[1])
    document["workings"]["height-build_up@bath/floor"]["inputs"]["thick"][-2]["value"] = 2.7432
    assert "VER-903" in {said.code for said in verify_text(json.dumps(document)).objections}


def test_boards_of_two_thicknesses_for_one_surface_are_asked_about() -> None:
    text = JOB.replace("    TILE\n", "").replace(", for: [floor]", "").replace(", for: [wall]", "")
    with pytest.raises(JobError) as refused:
        read_job_text(text)
    assert "needs one thickness" in str(refused.value)


def test_a_tile_entered_and_another_chosen_are_asked_about() -> None:
    with pytest.raises(JobError) as refused:
        planned("tile: {kind: ceramic, thickness: 5/16 in}")
    assert "rooms[1].floor.tile.thickness" in str(refused.value)
