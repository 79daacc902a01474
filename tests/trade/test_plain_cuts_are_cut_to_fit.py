"""Every plain cut was drawn to the sixteenth: a room one degree askew got pages of tapers of a millimetre."""

import json
from functools import cache
from typing import Any

import yaml

from firstcourse.drawings.cut_tiles import cut_kinds
from firstcourse.drawings.cut_words import size_words
from firstcourse.drawings.mosaic import mosaics
from firstcourse.job import read_job_text
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import Tape, to_mm
from firstcourse.words import Speaker
from proving import verify_text
from said import places_of

ROOM = """
name: Askew
practice: us
date: 2026-11-25
tape: mm
stock: [{id: board, size: [900 mm, 1500 mm], thickness: 6 mm, for: [floor]}]
rules: [{rule: boards.piece.min, value: 150 mm, reason: whole millimetres on a metric tape}]
tiles: [{id: small, size: [147 mm, 147 mm], thickness: 8 mm, joint: 3 mm, size_spread: 0.5 mm}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 2400 mm, B-C: 1842 mm, C-D: 2400 mm, D-A: 1800 mm}
    diagonals: {A-C: 3026 mm, B-D: 3000 mm}
    taped_to: studs
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 380 mm, width: 45 mm}
      tiling: {tile: small}
"""


@cache
def askew() -> PlanResult:
    """A floor whose far wall runs one degree off the others, in small tiles."""
    return plan_job(read_job_text(ROOM), effort=0)


def test_a_room_a_degree_askew_has_a_few_lines_and_no_drawing_of_a_taper() -> None:
    (floor,) = askew().plan.surfaces
    kinds = cut_kinds(floor, without={})
    cut = [tile for tile in floor.tiles if not tile.whole]
    assert len(cut) > 30 and sum(kind.count for kind in kinds) == len(cut)
    assert all(kind.is_fit for kind in kinds)
    # One line for each wall and corner; a wall whose pieces go from one end to the other of a tile has a few.
    assert len(kinds) <= 10


def test_a_line_tells_what_there_is_from_the_least_to_the_greatest() -> None:
    (floor,) = askew().plan.surfaces
    for kind in cut_kinds(floor, without={}):
        assert len(kind.places) == 1
        for axis in (0, 1):
            sizes = []
            for tile in kind.tiles:
                at = [point[axis] for point in tile.outline]
                sizes.append(max(at) - min(at))
            assert (kind.least[axis], kind.most[axis]) == (min(sizes), max(sizes))
        said = size_words(kind, Speaker("us", Tape.MM))
        assert said.startswith("about ") and f"{round(to_mm(kind.least[0]))}" in said


def test_cuts_at_45_degrees_along_the_walls_of_a_diagonal_floor_are_cut_to_fit() -> None:
    job: dict[str, Any] = yaml.safe_load(ROOM)
    job["rooms"][0]["sides"] |= {"B-C": "1800 mm"}
    job["rooms"][0]["diagonals"] = {"A-C": "3000 mm", "B-D": "3000 mm"}
    job["rooms"][0]["floor"]["tiling"]["pattern"] = "diagonal"
    result = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0)
    (floor,) = result.plan.surfaces
    kinds = cut_kinds(floor, without={})
    assert sum(kind.count for kind in kinds) > 50 and all(kind.is_fit for kind in kinds)
    assert all(place.startswith("wall") for kind in kinds for place in places_of(kind.places))
    document = json.loads(result.document)
    next(tile for tile in document["surfaces"][0]["tiles"] if tile["fit"])["fit"] = False
    assert "VER-714" in {one.code for one in verify_text(json.dumps(document)).objections}


def test_notches_holes_and_slants_are_drawn() -> None:
    job: dict[str, Any] = yaml.safe_load(ROOM)
    floor = job["rooms"][0]["floor"]
    floor["openings"] = [
        {"id": "drain", "kind": "drain", "side": "A-B", "left": "900 mm", "out": "700 mm", "diameter": "60 mm"}
    ]
    # The far wall runs some twenty degrees off the others.
    job["rooms"][0]["sides"] |= {"B-C": "2674 mm", "C-D": "2554 mm"}
    job["rooms"][0]["diagonals"] = {"A-C": "3593 mm", "B-D": "3000 mm"}
    plan = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan
    kinds = cut_kinds(plan.surfaces[0], without=mosaics(plan))
    drawn = [kind for kind in kinds if not kind.is_fit]
    assert any("drain" in place for kind in drawn for place in places_of(kind.places))
    assert any("wall" in place for kind in drawn for place in places_of(kind.places))


def test_verify_holds_what_is_cut_to_fit() -> None:
    assert verify_text(askew().document).objections == ()
    for change in ({"fit": False}, {"mark": ""}):
        document = json.loads(askew().document)
        next(tile for tile in document["surfaces"][0]["tiles"] if not tile["whole"]).update(change)
        assert "VER-714" in {one.code for one in verify_text(json.dumps(document)).objections}
