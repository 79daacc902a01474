"""A wall as long as its sheet asked for a strip that no knife can snap off, though its gaps could be wider.

A gap at a wall has a most beside its usual width: the board is cut back to it, so that the strip can be snapped.
"""

import copy
import json
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

INCH = 25.4


def planned(wall: str, changes: str = "") -> dict[str, Any]:
    text = f"""
name: one board cut back
date: 2026-11-25
tape: inch
stock: [{{id: board, size: [36 in, 60 in], thickness: 1/2 in}}]
{changes}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: {wall}, B-C: 60 in, C-D: {wall}, D-A: 60 in}}
    diagonals: {{A-C: 84 11/16 in}}
    height: 96 in
    walls:
      - {{wall: A-B, foot: floor, framing: {{spacing: 16 in, first: 15 1/4 in}}, boards: {{top: 36 1/4 in}}}}
"""
    document: dict[str, Any] = json.loads(plan_job(read_job_text(text), effort=0).document)
    return document


def findings(plan: dict[str, Any], code: str) -> list[dict[str, Any]]:
    return [finding for finding in plan["findings"] if finding["code"] == code]


def width(plan: dict[str, Any]) -> float:
    (board,) = next(surface["boards"] for surface in plan["surfaces"] if surface["boards"])
    return float(max(u for u, _ in board["outline"]) - min(u for u, _ in board["outline"]))


@pytest.mark.parametrize("wall", ["59 13/16 in", "59 7/8 in", "60 in"])
def test_the_board_is_cut_back_so_that_the_strip_can_be_snapped(wall: str) -> None:
    plan = planned(wall)
    assert not findings(plan, "BRD-206")
    assert width(plan) == pytest.approx(59.5 * INCH)
    assert not verify(plan).objections


def test_more_gap_is_told_and_only_where_it_saves_a_thin_cut() -> None:
    plan = planned("59 15/16 in")
    (told,) = findings(plan, "BRD-208")
    assert told["measured"] == {"value": INCH / 4, "unit": "mm"} and told["rule"] == "boards.gap.perimeter.most"
    assert width(plan) == pytest.approx(59.5 * INCH)
    untold = copy.deepcopy(plan)
    untold["findings"] = [finding for finding in plan["findings"] if finding["code"] != "BRD-208"]
    assert "VER-106" in {objection.code for objection in verify(untold).objections}
    needless = planned("58 in")
    surface = next(surface for surface in needless["surfaces"] if surface["boards"])
    needless["findings"].append({**told, "at": [surface["boards"][0]["id"]]})
    assert {"VER-110", "VER-102"} & {objection.code for objection in verify(needless).objections}


def test_a_job_may_hold_the_usual_gap() -> None:
    rule = "{rule: boards.gap.perimeter.most, value: 0.125, unit: in, reason: the maker asks for it}"
    plan = planned("59 15/16 in", f"rules: [{rule}]")
    assert findings(plan, "BRD-206") and not findings(plan, "BRD-208")


def test_no_gap_is_wider_than_its_most() -> None:
    plan = planned("59 15/16 in")
    spoilt = copy.deepcopy(plan)
    (board,) = next(surface["boards"] for surface in spoilt["surfaces"] if surface["boards"])
    right = max(u for u, _ in board["outline"])
    for spot in board["outline"]:
        spot[0] -= INCH / 2 if spot[0] == right else 0
    assert "VER-106" in {objection.code for objection in verify(spoilt).objections}
