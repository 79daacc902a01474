"""A floor of hexagons with a grain was refused by its own proof, and a square piece turned across it passed.

The proof asked which side is the long one: hexagons and squares have none. It asks now how the tile lies as laid.
"""

import json
import math
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

JOB = """
name: an entry with a grain
date: 2026-11-25
tape: mm
tiles: [{id: tile, SHAPE, thickness: 9 mm, joint: 3 mm, directional: true}]
rooms:
  - name: entry
    corners: [A, B, C, D]
    sides: {A-B: 1800 mm, B-C: 1500 mm, C-D: 1800 mm, D-A: 1500 mm}
    diagonals: {A-C: 2343 mm}
    floor: {tiling: {tile: tile, pattern: PATTERN}}
"""
HEXAGON = "shape: hexagon, size: [250 mm, 288.7 mm]"
SQUARE = "size: [250 mm, 250 mm]"


@pytest.mark.parametrize(
    ("shape", "pattern", "turns"),
    [(HEXAGON, "hexagon", (60, 120)), (SQUARE, "stacked", (90,)), (SQUARE, "diagonal", (90,))],
)
def test_no_piece_is_turned_across_the_grain(shape: str, pattern: str, turns: tuple[int, ...]) -> None:
    plan = json.loads(plan_job(read_job_text(JOB.replace("SHAPE", shape).replace("PATTERN", pattern))).document)
    (stock,) = plan["tile_stock"]
    pieces = [tile for tile in plan["surfaces"][0]["tiles"] if not tile["whole"]]
    assert len(pieces) > 10
    for turn in turns:
        piece = pieces[0]
        kept = piece["cut"]
        piece["cut"] = [turned(at, stock["size"], turn) for at in kept]
        assert "is cut across the grain" in said_of(plan, piece["id"])
        piece["cut"] = kept
    assert not verify(plan).objections


def turned(at: list[float], size: list[float], degrees: int) -> list[float]:
    """A place in a tile, turned about its middle."""
    u, v = at[0] - size[0] / 2, at[1] - size[1] / 2
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return [
        round((value + half) * 640) / 640
        for value, half in ((u * cos - v * sin, size[0] / 2), (u * sin + v * cos, size[1] / 2))
    ]


def said_of(plan: dict[str, Any], where: str) -> list[str]:
    return [objection.message for objection in verify(plan).objections if objection.where == where]
