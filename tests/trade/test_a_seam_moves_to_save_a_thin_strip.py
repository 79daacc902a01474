"""A seam in the middle of its stud left a board 3/16 in narrower than its sheet, which no knife can take off.

The seam moves on its stud, as far as both boards still bear enough, and the board keeps the sheet's whole width.
"""

import json
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

INCH = 25.4


def planned(first: str = "16 in") -> dict[str, Any]:
    text = f"""
name: a seam beside the middle of a stud
date: 2026-11-25
tape: inch
stock: [{{id: board, size: [48 in, 96 in], thickness: 1/2 in}}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 140 in, B-C: 60 in, C-D: 140 in, D-A: 60 in}}
    diagonals: {{A-C: 152 5/16 in, B-D: 152 5/16 in}}
    height: 100 in
    walls:
      - {{wall: A-B, foot: floor, framing: {{spacing: 16 in, first: {first}}}, boards: {{top: 96 1/4 in}}}}
"""
    document: dict[str, Any] = json.loads(plan_job(read_job_text(text), effort=0).document)
    return document


def codes(plan: dict[str, Any]) -> list[str]:
    return [finding["code"] for finding in plan["findings"]]


def test_the_seam_gives_way_by_what_cannot_be_snapped_off() -> None:
    plan = planned()
    surface = next(surface for surface in plan["surfaces"] if surface["boards"])
    seam = min(surface["seams"], key=lambda found: found["line"][0][0])
    stud = min(
        (min(u for u, _ in support["outline"]), max(u for u, _ in support["outline"]))
        for support in surface["supports"]
        if support["kind"] == "stud" and abs(support["outline"][0][0] - seam["line"][0][0]) < 2 * INCH
    )
    at, half = seam["line"][0][0], seam["width"] / 2
    assert at - half - stud[0] >= INCH / 2 - 0.1 and stud[1] - at - half >= INCH / 2 - 0.1
    assert at != pytest.approx(sum(stud) / 2, abs=1)
    assert any(piece["blank"][0] == pytest.approx(48 * INCH) for piece in plan["pieces"])
    assert "BRD-206" not in codes(plan)
    assert not verify(plan).objections


def test_no_seam_leaves_its_stud_for_it() -> None:
    # With the stud 1/16 in nearer 1/4 in is left over: to keep it, or to cut off 1/2 in, one board would bear too
    # little.
    plan = planned("15 15/16 in")
    assert "BRD-206" in codes(plan)
    assert not {"BRD-101", "BRD-102"} & set(codes(plan))
    assert not verify(plan).objections
