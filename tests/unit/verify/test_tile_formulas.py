"""Every value of the workings of tile is proved: whatever is changed in one of them is objected to."""

import copy
import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from firstcourse.app.store import Memory
from firstcourse.job import read_job_text
from firstcourse.reuse import Steps
from firstcourse.steps import plan_job
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.reading import read_document
from proving import verify

DETAILS = Path(__file__).parents[2] / "e2e" / "tile_details.yaml"
FORMULAS = (
    "tiles-joint", "tiles-offset", "tiles-lippage", "tiles-mortar", "tiles-soft_joints", "tiles-cut",
    "tiles-kerb_face", "tiles-sill",
)  # fmt: skip


WINDOW = """
name: Window in a tub wall
practice: us
date: 2026-11-25
stock: [{id: board 3x5, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}]
tiles:
  - {id: white, size: [8 in, 4 in], thickness: 5/16 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 96 in, C-D: 60 in, D-A: 96 in}
    diagonals: {A-C: 113 3/16 in, B-D: 113 3/16 in}
    height: 96 in
    taped_to: studs
    walls:
      - wall: A-B
        boards: {bottom: 15 in, top: 84 in}
        foot: tub
        framing: {spacing: 16 in, first: 15 1/4 in}
        openings:
          - {id: window, kind: window, left: 18 in, bottom: 48 in, width: 24 in, height: 24 in, returns: DEEP}
        exposure: {zone: wet, membrane: true}
        tiling: {tile: white}
"""


READ = Steps(Memory())
"""Surfaces are read once: only workings are changed."""


@cache
def document(formula: str = "") -> dict[str, Any]:
    """A plan that holds a working by a formula."""
    text = WINDOW.replace("DEEP", "{depth: 4 in}") if formula == "tiles-sill" else DETAILS.read_text()
    return json.loads(plan_job(read_job_text(text), effort=0).document)  # type: ignore[no-any-return]


def other(value: Any) -> Any:
    """A value of the same kind that is another one."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int | float):
        return value + 1
    if isinstance(value, str):
        return f"{value}x"
    if isinstance(value, list):
        return [*value[:-1], other(value[-1])]
    key = next(key for key in ("value", "word", "ref") if key in value)
    return value | {key: other(value[key])}


def changed(working: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    for name, value in working["inputs"].items():
        yield name, working | {"inputs": working["inputs"] | {name: other(value)}}
        yield f"without {name}", working | {"inputs": {k: v for k, v in working["inputs"].items() if k != name}}
    yield "result", working | {"result": other(working["result"])}
    yield "rule", working | {"rule": "another.rule"}
    yield "limit", working | {"limit": {"value": 1.0, "unit": "mm", "sense": "most"}}


@pytest.mark.parametrize("formula", FORMULAS)
def test_whatever_is_changed_in_a_working_is_noticed(formula: str) -> None:
    plan = document(formula if formula == "tiles-sill" else "")
    key, working = next((key, one) for key, one in plan["workings"].items() if one["formula"] == formula)
    unnoticed = []
    for name, spoilt in changed(working):
        read = read_document({**plan, "workings": {**plan["workings"], key: spoilt}}, do=READ.do)
        if not any(one.where == key for one in check_formulas(read)):
            unnoticed.append(name)
    assert unnoticed == []


@pytest.mark.parametrize("formula", FORMULAS)
def test_a_working_that_is_missing_is_noticed(formula: str) -> None:
    plan = document(formula if formula == "tiles-sill" else "")
    key = next(key for key, one in plan["workings"].items() if one["formula"] == formula)
    fewer = {name: one for name, one in plan["workings"].items() if name != key}
    assert ("VER-907", key) in {
        (one.code, one.where) for one in check_formulas(read_document({**plan, "workings": fewer}, do=READ.do))
    }


@pytest.mark.parametrize(
    "change",
    [{"why": "restrained"}, {"at": "bath/floor/side/9"}, {"place": "field"}, {"why": "field"}, {"cut": True}],
)
def test_why_a_soft_joint_is_there_is_derived_from_where_it_lies(change: dict[str, Any]) -> None:
    plan = copy.deepcopy(document())
    surface = next(one for one in plan["surfaces"] if any(joint["why"] == "plane" for joint in one["soft_joints"]))
    next(joint for joint in surface["soft_joints"] if joint["why"] == "plane").update(change)
    assert "VER-722" in {one.code for one in verify(plan).objections}
