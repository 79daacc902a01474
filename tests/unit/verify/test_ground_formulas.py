"""Workings of survey, ground and build-up: any value that is changed by itself is noticed."""

import json
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from changed import changes
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.verify.formulas import FORMULAS as PROVED
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document
from proving import verify

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
        straightedge: [{reach: 2 m, gap: 2 mm}, {reach: 600 mm, gap: 1 mm}]
"""
LAID = "straightedge: [{reach: 24 in, gap: 1/8 in, place: by the tub}, {reach: 6 ft, gap: 1/16 in}]"
FORMULAS = {
    "flat": (
        "survey-area", "survey-checks", "survey-square", "ground-gaps", "ground-straightedge", "ground-map",
        "ground-shim", "ground-plane_down", "ground-remedy", "height-build_up", "height-mass", "height-backing",
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


def test_a_reading_a_hair_off_the_plane_is_left_and_proved_as_it_lies() -> None:
    spots = [
        (400, 400, 2), (1017, 400, 3), (1000, 1000, 5), (700, 1000, 3), (117, 700, 2), (717, 100, 1),
        (100, 100, 0), (700, 700, 8), (400, 700, 3), (400, 1000, 0), (1300, 400, 3), (400, 100, 8), (1000, 100, 3),
        (700, 400, 5),
        (1300, 100, 1), (100, 1000, 2), (1017, 700, 2), (1300, 700, 3), (100, 400, 1),
    ]  # fmt: skip
    rows = "".join(f"        - {{left: {u} mm, out: {v} mm, height: {h} mm}}\n" for u, v, h in spots)
    floor = f"    floor:\n      tile: {{kind: ceramic, thickness: 9 mm, edge: 300 mm}}\n      spots:\n{rows}"
    head = (
        HANDED_OVER.partition("    walls:")[0]
        .replace("practice: uk", "practice: us")
        .replace("tape: mm", "tape: inch")
    )
    made = json.loads(plan_job(read_job_text(head + floor), effort=0).document)["workings"][
        "ground-grind@bath/floor"
    ]
    left = [
        by["value"]
        for do, by in zip(made["inputs"]["do"], made["inputs"]["by"], strict=True)
        if do["word"] == "leave"
    ]
    assert any(-0.05 < by < 0 for by in left)
