"""A shower mosaic at an askew wall kept chips 1/16 in thin along the edge, which nobody can cut or set.

What is no wider than a soft joint may take more is not set: whole chips end there, the joint is told as wider, and
the verifier objects to a thinner piece as to a strip left out without a word.
"""

import json
import math
from dataclasses import replace
from functools import cache

from shapely import LineString, Point

from firstcourse.geometry.polygon import sides
from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_INCH, inches
from firstcourse.verify.reading import read_document
from firstcourse.verify.thin_pieces import check_thin_pieces, soft_edges
from firstcourse.verify.tiles import check_tiles

JOB = """
name: Askew
practice: us
date: 2026-11-25
tape: inch
tiles:
  - {id: mosaic, size: [2 in, 2 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 54 in, B-C: 48 1/16 in, C-D: 60 in, D-A: 48 1/8 in}
    diagonals: {A-C: 74 3/8 in}
    height: 96 in
    floor: {tiling: {tile: mosaic}}
"""
TAKES = TICKS_PER_INCH // 8


@cache
def _text() -> str:
    return plan_job(read_job_text(JOB), effort=0).document


def _thinness(plan: Plan) -> list[int]:
    """How far each cut piece reaches from the side it is cut along [ticks], of those no wider than an inch."""
    (floor,) = (surface for surface in plan.surfaces if surface.tiles)
    found = []
    for tile in floor.tiles:
        if tile.whole:
            continue
        for side in sides(floor.outline):
            line = LineString(side)
            near = [line.distance(corner) for corner in map(Point, tile.outline)]
            if min(near) < inches(3) / 8 and max(near) - min(near) < inches(1):
                found.append(round(max(near) - min(near)))
    return found


def test_no_piece_is_thinner_than_the_joint_may_take() -> None:
    plan = Plan.model_validate_json(_text())
    assert min(_thinness(plan)) > TAKES


def test_the_wider_joint_is_told() -> None:
    plan = Plan.model_validate_json(_text())
    (told,) = [finding for finding in plan.findings if finding.code == "TIL-133"]
    assert told.rule == "tiling.start.joint_takes" and told.values["number"] == 2


def test_the_verifier_objects_to_a_thin_piece_and_to_silence() -> None:
    plan = read_document(json.loads(_text()))
    assert not list(check_tiles(plan)) and not list(check_thin_pieces(plan))
    silent = replace(plan, findings=tuple(said for said in plan.findings if said.code != "TIL-133"))
    assert [found.code for found in check_thin_pieces(silent)] == ["VER-721"]
    (index,) = (number for number, surface in enumerate(plan.surfaces) if surface.tiles)
    floor = plan.surfaces[index]
    cut = next(tile for tile in floor.tiles if not tile.whole)
    # A chip half as thin as it may be, in the middle of the longest edge.
    a, b = max(soft_edges(floor, plan), key=lambda edge: math.dist(*edge))
    way = ((b[0] - a[0]) / math.dist(a, b), (b[1] - a[1]) / math.dist(a, b))
    places = ((0.5, 0), (0.51, 0), (0.51, TAKES // 2), (0.5, TAKES // 2))
    ring = tuple(
        (
            round(a[0] + (b[0] - a[0]) * share - way[1] * off),
            round(a[1] + (b[1] - a[1]) * share + way[0] * off),
        )
        for share, off in places
    )
    chip = replace(cut, id=f"{cut.id}x", outline=ring)
    spoilt = replace(plan, surfaces=(*plan.surfaces[:index], replace(floor, tiles=(*floor.tiles, chip)),
                                     *plan.surfaces[index + 1 :]))  # fmt: skip
    assert any(found.code == "VER-721" and found.where == chip.id for found in check_thin_pieces(spoilt))
