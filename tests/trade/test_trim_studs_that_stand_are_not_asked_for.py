"""Studs on a regular spacing left no way to say that trim studs stand at an opening: they were always asked for.

Members as found may now be entered beside the regular ones; one that stands where a regular one would takes its
place, and nothing is asked for where entered wood carries.
"""

import json
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

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
        framing: {spacing: 400 mm, first: 419 mm, width: 38 mm}
        openings:
          - {id: door, kind: door, left: 600 mm, bottom: 0 mm, width: 760 mm, height: 2040 mm}
          - {id: window, kind: window, left: 1900 mm, bottom: 1000 mm, width: 500 mm, height: 600 mm}
"""
TRIMMED = JOB.replace(
    "width: 38 mm}\n",
    "width: 38 mm, members: [{at: 581 mm}, {at: 1379 mm}, {at: 1881 mm}, {at: 2419 mm}]}\n",
)


def planned(job: str) -> dict[str, Any]:
    plan = json.loads(plan_job(read_job_text(job), effort=0).document)
    assert verify(plan).objections == ()
    return plan


def studs(plan: dict[str, Any], *, added: bool) -> list[float]:
    (wall,) = plan["surfaces"]
    found = [s["outline"] for s in wall["supports"] if s["kind"] == "stud" and bool(s.get("added")) is added]
    return sorted((ring[0][0] + ring[1][0]) / 2 for ring in found)


def test_trim_studs_are_asked_for_where_none_are_entered() -> None:
    places = studs(planned(JOB), added=True)
    # At the right of the window a regular stud carries as it is.
    for edge in (600, 1360, 1900):
        assert any(abs(at - edge) < 30 for at in places), edge


def test_nothing_is_asked_for_where_entered_studs_carry() -> None:
    plan = planned(TRIMMED)
    assert studs(plan, added=True) == []
    assert "BRD-101" not in {finding["code"] for finding in plan["findings"]}
    assert not [line for line in plan["quantities"] if line["item"] == "added stud"]


def test_a_stud_as_found_takes_the_place_of_the_regular_one_it_overlaps() -> None:
    places = studs(planned(TRIMMED), added=False)
    # The regular stud at 2419 is the trim stud itself; that at 1219 and all others stay.
    assert [at for at in places if abs(at - 2419) < 40] == pytest.approx([2419])
    assert {419.0, 819.0, 1219.0, 1619.0, 2019.0, 2819.0} <= {round(at, 3) for at in places}


def test_a_niche_off_a_stud_by_less_than_a_tape_shows_stands_free() -> None:
    niche = (
        "          - {id: niche, kind: niche, left: 2437.9 mm, bottom: 1700 mm, width: 300 mm, height: 300 mm}\n"
    )
    assert "SUR-108" not in {finding["code"] for finding in planned(TRIMMED + niche)["findings"]}
