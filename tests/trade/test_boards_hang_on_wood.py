"""A board edge counted as carried because a stud lay within its reach; edges at openings were not asked at all.

Every edge along the framing now lies on a member, given or added, with the bearing asked, and no point of it is
farther from a fastener than the rule; the verifier derives both from the plan alone.
"""

import copy
import json
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify
from said import said_of

JOB = """
name: one wall with a door and a window
date: 2026-11-25
tape: mm
stock: [{id: board, size: [900 mm, 1500 mm], thickness: 12 mm}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 3000 mm, B-C: 2000 mm, C-D: 3000 mm, D-A: 2000 mm}
    diagonals: {A-C: 3606 mm, B-D: 3606 mm}
    height: 2400 mm
    walls:
      - wall: A-B
        foot: floor
        # The first stud stands 60 mm out from the corner; no stud stands beside the door or the window.
        framing: {members: [{at: 80 mm}, {at: 480 mm}, {at: 880 mm}, {at: 1280 mm}, {at: 1680 mm}, {at: 2080 mm},
                            {at: 2480 mm}, {at: 2980 mm}]}
        openings:
          - {id: door, kind: door, left: 600 mm, bottom: 0 mm, width: 760 mm, height: 2040 mm}
          - {id: window, kind: window, left: 1900 mm, bottom: 1000 mm, width: 500 mm, height: 600 mm}
"""


@pytest.fixture(scope="module")
def plan() -> dict[str, Any]:
    return json.loads(plan_job(read_job_text(JOB), effort=0).document)


def added(plan: dict[str, Any]) -> list[tuple[float, float]]:
    (wall,) = plan["surfaces"]
    return sorted(
        (min(u for u, _ in s["outline"]), max(u for u, _ in s["outline"]))
        for s in wall["supports"]
        if s.get("added")
    )


def test_members_are_added_at_the_corner_and_beside_openings(plan: dict[str, Any]) -> None:
    places = added(plan)
    assert any(low <= 5 and high >= 15 for low, high in places), "the corner"
    for edge in (600, 1900):
        assert any(low < edge - 15 and high >= edge - 1 for low, high in places), edge
    for edge in (1360, 2400):
        assert any(low <= edge + 1 and high > edge + 15 for low, high in places), edge
    bought = [line for line in plan["quantities"] if line["item"] == "added/stud"]
    assert bought and bought[0]["exact"] > 0
    (told,) = (f for f in plan["findings"] if f["code"] == "BRD-101")  # each member once, all in one finding
    assert told["values"]["count"] == len(told["values"]["upright_at"]) == len(places)
    (said,) = [finding for finding in said_of(plan) if finding.code == "BRD-101"]
    assert said.measured.count("off the") == len(places) and f"{len(places)} members" in said.message


def test_no_point_of_an_edge_along_the_studs_is_far_from_a_fastener(plan: dict[str, Any]) -> None:
    (wall,) = plan["surfaces"]
    for board in wall["boards"]:
        for ring in (board["outline"], *board["holes"]):
            for (au, av), (bu, bv) in zip(ring, ring[1:] + ring[:1], strict=True):
                if au != bu or abs(bv - av) <= 50.8:
                    continue
                for part in range(51):
                    v = av + (bv - av) * part / 50
                    assert min((u - au) ** 2 + (w - v) ** 2 for u, w in board["fasteners"]) <= 105**2


@pytest.mark.parametrize("code", ["VER-306", "VER-409"])
def test_the_verifier_holds_it(plan: dict[str, Any], code: str) -> None:
    spoilt = copy.deepcopy(plan)
    (wall,) = spoilt["surfaces"]
    if code == "VER-306":
        wall["supports"] = [s for s in wall["supports"] if not s.get("added")]
    else:
        board = wall["boards"][0]
        low = min(u for u, _ in board["outline"])
        board["fasteners"] = [place for place in board["fasteners"] if place[0] > low + 60]
    assert code in {objection.code for objection in verify(spoilt).objections}


CEILING = """
name: ceiling
practice: uk
date: 2026-11-25
tape: mm
stock: [{id: board, size: [600 mm, 1200 mm], thickness: 12 mm, for: [ceiling]}]
rooms:
  - name: attic
    corners: [A, B, C, D]
    sides: {A-B: 2750 mm, B-C: 3200 mm, C-D: 2750 mm, D-A: 3200 mm}
    diagonals: {A-C: 4219 mm}
    height: 2300 mm
    ceiling:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 350 mm, width: 47 mm}
"""


def test_no_sheet_is_saved_by_members_between_the_joists() -> None:
    """Every member counts when layouts are weighed, though one finding tells of all."""
    plan = json.loads(plan_job(read_job_text(CEILING), effort=0).document)
    (ceiling,) = plan["surfaces"]
    ends = [min(v for _, v in ceiling["outline"]) + 60, max(v for _, v in ceiling["outline"]) - 60]
    for member in (s["outline"] for s in ceiling["supports"] if s.get("added")):
        assert max(v for _, v in member) < ends[0] or min(v for _, v in member) > ends[1]
