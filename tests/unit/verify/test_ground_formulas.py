"""Workings of survey, ground and build-up: any value that is changed by itself is noticed."""

import json
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from changed import changes
from firstcourse.job import read_job_text
from firstcourse.planning import plan_job
from firstcourse.verify import verify
from firstcourse.verify.formulas import FORMULAS as PROVED
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document

EXAMPLES = Path(__file__).parents[3] / "examples"
HANDED_OVER = """\
name: Flat
date: 2026-11-25
practice: uk
tape: mm
stock:
  - {id: plasterboard, size: [1200 mm, 2400 mm], thickness: 12.5 mm, kind: plasterboard}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 1500 mm, B-C: 2400 mm, C-D: 1500 mm, D-A: 2400 mm}
    diagonals: {A-C: 2830 mm}
    height: 2400 mm
    walls:
      - wall: A-B
        framing: {spacing: 400 mm, first: 400 mm}
        tile: {kind: ceramic, thickness: 8 mm, edge: 300 mm}
        faces:
          - {at: 400 mm, up: 200 mm, face: 0 mm}
          - {at: 800 mm, up: 200 mm, face: 2 mm}
          - {at: 1200 mm, up: 200 mm, face: 1 mm}
          - {at: 400 mm, up: 1200 mm, face: 9 mm}
          - {at: 800 mm, up: 1200 mm, face: 0 mm}
          - {at: 1200 mm, up: 1200 mm, face: 1 mm}
"""
LAID = "straightedge: [{reach: 24 in, gap: 1/8 in, place: by the tub}, {reach: 6 ft, gap: 1/16 in}]"
FORMULAS = {
    "flat": (
        "survey-area", "survey-checks", "survey-square", "ground-straightedge", "ground-map", "ground-shim",
        "ground-plane_down", "ground-remedy", "height-build_up", "height-mass", "height-backing",
    ),
    "out of true": (
        "survey-area", "survey-checks", "survey-square", "ground-gaps", "ground-straightedge", "ground-map",
        "ground-patch", "ground-level_out", "ground-grind", "ground-shim", "ground-plane_down", "ground-packing",
        "ground-plumb", "ground-taper", "ground-remedy", "ground-materials", "height-build_up", "height-mass",
    ),
}  # fmt: skip


@cache
def document(name: str) -> dict[str, object]:
    text = HANDED_OVER
    if name == "out of true":
        text = (EXAMPLES / "out-of-true" / "job.yaml").read_text(encoding="utf-8")
        text = text.replace("trim: 3/8 in", f"trim: 3/8 in\n      {LAID}")
    found: dict[str, object] = json.loads(plan_job(read_job_text(text), effort=0).document)
    return found


@cache
def planned(name: str) -> Document:
    return read_document(document(name))


CASES = [(name, formula) for name, formulas in FORMULAS.items() for formula in formulas]


@pytest.mark.parametrize("name", FORMULAS)
def test_all_of_it_is_proved(name: str) -> None:
    assert verify(document(name)).objections == ()
    made = {working.formula for working in planned(name).workings.values()}
    assert set(FORMULAS[name]) <= made


@pytest.mark.parametrize(("name", "formula"), CASES)
def test_every_value_is_proved(name: str, formula: str) -> None:
    plan = planned(name)
    for key in [key for key in plan.workings if key.startswith(f"{formula}@")]:
        for what, changed in changes(plan.workings[key]):
            other = replace(plan.shopping, workings={**plan.workings, key: changed})
            spoiled = replace(plan, shopping=other)
            # A corner that lies elsewhere may show only where others are held to it.
            assert list(PROVED[formula](spoiled, changed)) or list(check_formulas(spoiled)), what


@pytest.mark.parametrize("name", FORMULAS)
def test_what_is_asked_for_must_be_there(name: str) -> None:
    plan = planned(name)
    for formula in FORMULAS[name]:
        key = next(key for key in plan.workings if key.startswith(f"{formula}@"))
        fewer = {other: working for other, working in plan.workings.items() if other != key}
        without = replace(plan, shopping=replace(plan.shopping, workings=fewer))
        assert ("VER-907", key) in [(one.code, one.where) for one in check_formulas(without)]
