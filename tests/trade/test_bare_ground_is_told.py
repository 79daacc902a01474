"""Strips left to be filled, 28 x 2,190 mm behind a fixture, stood in no finding and on no page.

Every strip that no board covers is in the plan with its outline and what fills it, has a finding with place and
size, is drawn, and counts among the materials; the verifier finds bare ground that is not told.
"""

import copy
import json
from typing import Any

import pytest

from firstcourse.drawings import draw_surface
from firstcourse.job import read_job_text
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import Tape
from proving import verify
from said import said, said_of

JOB = """
name: strips beside a chimney and a cabinet
date: 2026-11-25
tape: mm
stock: [{id: board, size: [900 mm, 1500 mm], thickness: 12 mm}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 3000 mm, B-C: 2200 mm, C-D: 3000 mm, D-A: 2200 mm}
    diagonals: {A-C: 3720 mm, B-D: 3720 mm}
    height: 2400 mm
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 200 mm}
      openings:
        - {id: chimney, kind: column, side: A-B, left: 15 mm, out: 0 mm, width: 900 mm, depth: 900 mm}
        - {id: cabinet, kind: cabinet, side: C-D, left: 40 mm, out: 0 mm, width: 1200 mm, depth: 500 mm}
"""


@pytest.fixture(scope="module")
def result() -> PlanResult:
    return plan_job(read_job_text(JOB), effort=0)


@pytest.fixture(scope="module")
def plan(result: PlanResult) -> dict[str, Any]:
    return json.loads(result.document)


def test_each_strip_is_told_with_its_place_and_what_fills_it(plan: dict[str, Any]) -> None:
    (floor,) = plan["surfaces"]
    told = {fill["filled_with"]: fill for fill in floor["fills"]}
    assert set(told) == {"mortar", "board"} and len(floor["fills"]) == 2
    sizes = {
        kind: [max(p[axis] for p in f["outline"]) - min(p[axis] for p in f["outline"]) for axis in (0, 1)]
        for kind, f in told.items()
    }
    assert sizes["mortar"] == pytest.approx([15, 900], abs=12)
    assert sizes["board"] == pytest.approx([40, 500], abs=12)
    findings = [f for f in plan["findings"] if f["code"] == "BRD-303"]
    assert len(findings) == 2
    assert {f["at"][0]: f["values"]["beside"] for f in findings} == {
        told["mortar"]["id"]: [{"ref": "bath/floor/opening/chimney"}],
        told["board"]["id"]: [{"ref": "bath/floor/opening/cabinet"}],
    }
    widths = {f["at"][0]: f["measured"]["value"] for f in findings}
    assert widths[told["mortar"]["id"]] == pytest.approx(15, abs=0.5)
    assert widths[told["board"]["id"]] == pytest.approx(40, abs=0.5)


def test_a_strip_is_said_with_its_place_on_either_tape(result: PlanResult) -> None:
    (mortar,) = [f for f in said_of(result.document) if f.code == "BRD-303" and "chimney" in f.message]
    assert mortar.where == "bath: floor, fill 1" and mortar.measured.startswith("15 mm x 901 mm, from 0 mm")
    inches = [f for f in result.plan.findings if f.code == "BRD-303"]
    assert [said(f, Tape.INCH).measured.partition(" ")[0] for f in inches] == ['9/16"', '1-9/16"']


def test_they_count_among_the_materials(plan: dict[str, Any]) -> None:
    strips = [line for line in plan["quantities"] if line["item"] == "board_strips"]
    assert strips and strips[0]["exact"] == pytest.approx(500, abs=10)
    assert plan["workings"]["quantities-bedding_mortar@bedding_mortar"]["inputs"]["strips"]["value"] > 0


def test_they_are_drawn(result: PlanResult) -> None:
    (floor,) = result.plan.surfaces
    drawing = draw_surface(result.plan, floor)
    texts = {text.text for text in drawing.texts}
    assert {"fill 1", "fill 2"} <= texts


@pytest.mark.parametrize("what", ["untold", "wrong filling", "no finding"])
def test_the_verifier_holds_it(plan: dict[str, Any], what: str) -> None:
    spoilt = copy.deepcopy(plan)
    (floor,) = spoilt["surfaces"]
    if what == "untold":
        gone = floor["fills"].pop()
        spoilt["findings"] = [f for f in spoilt["findings"] if gone["id"] not in f["at"]]
    elif what == "wrong filling":
        floor["fills"][0]["filled_with"] = "board" if floor["fills"][0]["filled_with"] == "mortar" else "mortar"
    else:
        spoilt["findings"] = [f for f in spoilt["findings"] if f["code"] != "BRD-303"]
    assert "VER-111" in {objection.code for objection in verify(spoilt).objections}
