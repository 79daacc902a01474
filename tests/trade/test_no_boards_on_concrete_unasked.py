"""A slab with no stock named got 36 sheets of backer board and 1,631 screws.

A slab is boarded only where the job says so and how; without that the tile goes on the concrete, and quantities,
heights and findings follow.
"""

import json
from typing import Any

import pytest

from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.plan import Plan, Surface
from firstcourse.steps import plan_job
from proving import verify_text
from said import all_said

JOB = """
name: kitchen on a slab
date: 2026-11-25
tape: inch
STOCK
tiles:
- {id: square, size: [12 in, 12 in], thickness: 3/8 in, kind: porcelain, joint: 1/8 in, edges: rectified}
rooms:
- name: kitchen
  corners: [A, B, C, D]
  sides: {A-B: 12', B-C: 9', C-D: 12', D-A: 9'}
  diagonals: {A-C: 15', B-D: 15'}
  floor:
    BOARDS
    exposure: {zone: damp, mortar: organic_adhesive, slab_humidity_percent: 90}
    tiling: {tile: square}
"""
STOCK = "stock: [{id: sheet, size: [36 in, 60 in], thickness: 1/4 in}]"


def planned(boards: str = "", stock: str = "") -> tuple[Plan, Surface, dict[str, Any]]:
    text = JOB.replace("STOCK\n", f"{stock}\n" if stock else "").replace(
        "    BOARDS\n", f"    {boards}\n" if boards else ""
    )
    done = plan_job(read_job_text(text), effort=0)
    return done.plan, done.plan.surfaces[0], json.loads(done.document)


@pytest.mark.parametrize("stock", ["", STOCK])
def test_a_slab_that_nothing_is_said_of_is_tiled_as_it_is(stock: str) -> None:
    plan, floor, document = planned(stock=stock)
    assert floor.slab == "tiled" and floor.boards == () and floor.tiles
    assert plan.sheets == () and plan.pieces == ()
    items = {quantity.item for quantity in plan.quantities}
    assert not items & {"fasteners", "bedding_mortar", "seam_tape"}
    assert not any(item.startswith("stock/") for item in items) and "tile_mortar" in items
    # The finished floor is mortar and tile over the slab, without boards.
    assert [layer.of for layer in floor.layers] == ["mortar", "tile"]
    layers = plan.workings["height-build_up@kitchen/floor"].inputs["layer"]
    assert [layer.word for layer in layers] == ["mortar", "tile"]
    said = {finding.code: finding for finding in all_said(plan.findings)}
    assert "tile goes on the concrete" in said["BRD-302"].message and "silica" in said["BRD-302"].remedy
    # What the slab itself is judged for is not lost with the boards.
    assert "SUI-520" in said or any("slab is damp" in finding.message for finding in all_said(plan.findings))
    board = {"id": "B1", "piece": "P1", "outline": document["surfaces"][0]["outline"], "fasteners": []}
    document["surfaces"][0]["boards"] = [board]
    assert "VER-106" in {objection.code for objection in verify_text(json.dumps(document)).objections}


def test_boards_bonded_to_a_slab_have_mortar_and_no_screws() -> None:
    plan, floor, document = planned("boards_on_slab: bonded", STOCK)
    assert floor.boards and not any(board.fasteners for board in floor.boards)
    items = {quantity.item for quantity in plan.quantities if quantity.buy}
    assert "fasteners" not in items and {"stock/sheet", "bedding_mortar"} <= items
    assert [layer.of for layer in floor.layers] == ["board_mortar", "board", "mortar", "tile"]
    document["surfaces"][0]["boards"][0]["fasteners"] = [[254.0, 254.0]]
    assert "VER-410" in {objection.code for objection in verify_text(json.dumps(document)).objections}


def test_boards_fastened_to_a_slab_ask_for_fasteners_that_hold_in_concrete() -> None:
    plan, floor, _ = planned("boards_on_slab: fastened", STOCK)
    assert all(board.fasteners for board in floor.boards)
    (said,) = [finding for finding in all_said(plan.findings) if finding.code == "FST-106"]
    assert "silica" in said.remedy and "heating pipes" in said.remedy


@pytest.mark.parametrize(
    ("boards", "message"),
    [
        ("stock: [sheet]", "boards_on_slab: bonded or fastened"),
        (
            "{framing: {parallel_to: A-B, spacing: 16 in, first: 15 in}, boards_on_slab: bonded}",
            "this floor has joists or panels",
        ),
    ],
)
def test_what_leaves_open_how_boards_are_held_is_asked_about(boards: str, message: str) -> None:
    text = JOB.replace("STOCK", STOCK)
    if boards.startswith("{"):
        floor = boards.strip("{}").replace("}, boards", "}\n    boards")
        text = text.replace("BOARDS", floor)
    else:
        text = text.replace("BOARDS", boards)
    with pytest.raises(JobError) as refused:
        read_job_text(text)
    assert message in str(refused.value)
