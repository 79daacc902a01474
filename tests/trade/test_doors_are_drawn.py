"""A doorway stood in the job and on no drawing: a floor's line ran through it, and its wall showed nothing there.

Each is a gap as wide as the door in the line of its floor, and an outline on its wall, also where that wall is not
boarded: on the unfolded room.
"""

import json
import math
from functools import cache
from typing import Any

import pytest
import yaml
from shapely import LineString, Polygon

from firstcourse.drawings import Drawing, draw_room, draw_surface, draw_tiling
from firstcourse.job import read_job_text
from firstcourse.plan import Plan, Surface
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_MM, inches
from proving import verify
from said import all_said

FRAMING = {"spacing": "16 in", "first": "16 in"}
DOORWAY = {
    "id": "to hall",
    "wall": "C-D",
    "left": "6 in",
    "width": "30 in",
    "height": "80 in",
    "other_floor": "0 in",
}
IN_WALL = {"id": "closet", "kind": "door", "left": "40 in", "bottom": "0 in", "width": "28 in", "height": "79 in"}


def job_text(*, walls: bool, part: bool = False, doorway: dict[str, Any] | None = None) -> str:
    wall: dict[str, Any] = {
        "wall": "B-C",
        "framing": FRAMING,
        "openings": [IN_WALL],
        "tiling": {"tile": "t", "pattern": "stacked"},
    }
    if part:
        # Boards end short of the door, which lies on what is left of the wall.
        wall["boards"] = {"right": "32 3/4 in", "top": "84 in"}
        wall["framing"] = {"members": [{"at": f"{at} in"} for at in (0.75, 16, 32)]}
    room: dict[str, Any] = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "60 in", "B-C": "96 in", "C-D": "60 in", "D-A": "96 in"},
        "diagonals": {"A-C": "113 3/16 in", "B-D": "113 3/16 in"},
        "height": "96 in",
        "floor": {
            "framing": {"parallel_to": "A-B", **FRAMING},
            "doorways": [doorway or DOORWAY],
            "tiling": {"tile": "t", "pattern": "stacked"},
        },
    }
    if walls:
        room["walls"] = [wall]
    return yaml.safe_dump(
        {
            "name": "doors",
            "practice": "us",
            "date": "2026-11-25",
            "tape": "inch",
            "stock": [{"id": "b", "size": ["36 in", "60 in"], "thickness": "1/2 in"}],
            "tiles": [{"id": "t", "size": ["11 7/8 in", "11 7/8 in"], "thickness": "3/8 in", "joint": "1/8 in"}],
            "rooms": [room],
        }
    )


@cache
def planned(*, walls: bool, part: bool = False) -> tuple[Plan, str]:
    done = plan_job(read_job_text(job_text(walls=walls, part=part)), effort=0)
    return done.plan, done.document


def surface(plan: Plan, name: str) -> Surface:
    return next(one for one in plan.surfaces if one.id == f"bath/{name}")


def open_line(drawing: Drawing, plan: Plan, name: str) -> float:
    """How much of a door's line no outline runs along, on a drawing with the floor's own origin [in]."""
    (door,) = (door for door in plan.doors if door.id == name)
    per = TICKS_PER_MM * drawing.scale
    gap = LineString([(u / per, v / per) for u, v in door.line])
    drawn = [LineString([line.a, line.b]) for line in drawing.lines if line.layer == "outline"]
    drawn += [Polygon(poly.points).exterior for poly in drawing.polys if poly.layer == "outline"]
    for line in drawn:
        gap = gap.difference(line.buffer(1e-3))
    return gap.length * drawing.scale / 25.4


def outline(drawing: Drawing, name: str) -> tuple[float, float]:
    """Sides of the one outline a drawing has of a door, shorter first [in]."""
    (poly,) = (poly for poly in drawing.polys if poly.name == name)
    a, b, c = poly.points[:3]
    short, long = sorted(math.dist(*ends) * drawing.scale / 25.4 for ends in ((a, b), (b, c)))
    return short, long


@pytest.mark.parametrize("walls", [False, True])
def test_a_floor_has_a_gap_as_wide_as_each_door_and_names_it(walls: bool) -> None:
    plan, _ = planned(walls=walls)
    floor = surface(plan, "floor")
    for drawing in (draw_surface(plan, floor), draw_tiling(plan, floor), draw_room(plan, "bath")):
        for door in plan.doors:
            width = 30 if door.id == "to hall" else 28
            assert open_line(drawing, plan, door.id) == pytest.approx(width, abs=0.05)
        assert any(text.text.startswith("to hall, 2' 6\"") for text in drawing.texts)
    assert [door.id for door in plan.doors] == (["to hall", "closet"] if walls else ["to hall"])


def test_a_door_of_a_wall_that_is_not_boarded_is_folded_out_of_the_room() -> None:
    plan, _ = planned(walls=False)
    drawing = draw_room(plan, "bath")
    assert outline(drawing, "to hall") == pytest.approx((30, 80), abs=0.01)
    (door,) = (poly for poly in drawing.polys if poly.name == "to hall")
    floor = Polygon([(u / TICKS_PER_MM / drawing.scale, v / TICKS_PER_MM / drawing.scale)
                     for u, v in surface(plan, "floor").outline])  # fmt: skip
    assert Polygon(door.points).intersection(floor).area < 0.01


@pytest.mark.parametrize("part", [False, True])
def test_a_door_is_drawn_on_its_wall_where_it_is(part: bool) -> None:
    plan, _ = planned(walls=True, part=part)
    wall = surface(plan, "wall/B-C")
    assert bool(wall.openings) is not part
    for drawing in (draw_surface(plan, wall), draw_tiling(plan, wall), draw_room(plan, "bath")):
        assert outline(drawing, "closet") == pytest.approx((28, 79), abs=0.01)
    sheet = draw_surface(plan, wall)
    (door,) = (poly for poly in sheet.polys if poly.name == "closet")
    left = min(x for x, _ in door.points) * sheet.scale / 25.4
    assert left == pytest.approx(40, abs=0.01)


def test_a_doorway_that_is_an_opening_too_is_one_door() -> None:
    doorway = DOORWAY | {"wall": "B-C", "left": "40 in", "width": "28 in"}
    plan = plan_job(read_job_text(job_text(walls=True, doorway=doorway)), effort=0).plan
    (door,) = plan.doors
    assert (door.id, door.height) == ("to hall", inches(79))
    assert not [finding for finding in all_said(plan.findings) if finding.code == "SUR-109"]


def test_boards_across_a_doorway_are_told() -> None:
    doorway = DOORWAY | {"wall": "B-C", "left": "4 in"}
    plan = plan_job(read_job_text(job_text(walls=True, doorway=doorway)), effort=0).plan
    (finding,) = (finding for finding in all_said(plan.findings) if finding.code == "SUR-109")
    assert "'to hall'" in finding.message and "kind: door" in finding.remedy


@pytest.mark.parametrize(
    "change", [{"left": 200.0}, {"width": 700.0}, {"wall": "A-B"}, {"line": [[100, 0], [862, 50]]}]
)
def test_the_verifier_objects_to_a_door_that_was_moved(change: dict[str, Any]) -> None:
    document = json.loads(planned(walls=True)[1])
    assert not verify(document).objections
    document["doors"][0] |= change
    assert "VER-112" in {objection.code for objection in verify(document).objections}


def test_the_verifier_objects_where_a_door_of_a_wall_is_not_among_the_doors() -> None:
    document = json.loads(planned(walls=True)[1])
    del document["doors"][1]
    assert "VER-112" in {objection.code for objection in verify(document).objections}
