"""Bounds, costs and what boards take: any value that is changed by itself is noticed."""

import json
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from changed import changes
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.verify.bounds import check_bounds
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document

JOB = """\
name: Two sheets for one wall
date: 2026-11-25
tape: inch
currency: USD
stock:
  - {id: small, size: [36 in, 60 in], thickness: 1/2 in, price: 15, for: [wall]}
  - {id: large, size: [48 in, 96 in], thickness: 1/2 in, price: 34, for: [wall]}
  - {id: low, size: [36 in, 60 in], thickness: 1/4 in, price: 12, for: [floor]}
offcuts:
  - {id: left, stock: low, size: [20 in, 30 in]}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 96 in, C-D: 60 in, D-A: 96 in}
    diagonals: {A-C: 113 3/16 in, B-D: 113 3/16 in}
    height: 8 ft
    floor: {framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}}
    walls:
      - {wall: A-B, framing: {spacing: 16 in, first: 16 in}}
"""
FORMULAS = (
    "boards-area", "boards-fasteners", "boards-practice", "bounds-sheets", "bounds-cost", "bounds-every_layout",
    "bounds-every_layout_by_cost", "cost-sheets",
)  # fmt: skip
NOT_YET = {
    "boards-practice": ("result larger", "result one more", "numbers"),
    "bounds-sheets": ("proof area",),
    "bounds-cost": ("proof area",),
}
"""What nothing else in the plan gives."""


@cache
def document() -> str:
    return plan_job(read_job_text(JOB), effort=0).document


@cache
def planned() -> Document:
    return read_document(json.loads(document()))


@pytest.mark.parametrize("formula", FORMULAS)
def test_every_value_is_proved(formula: str) -> None:
    plan = planned()
    assert not list(check_formulas(plan))
    keys = [key for key in plan.workings if key.startswith(f"{formula}@")]
    assert keys
    for key in keys:
        for what, changed in changes(plan.workings[key]):
            if what.startswith(NOT_YET.get(formula, "-")):
                continue
            other = replace(plan.shopping, workings={**plan.workings, key: changed})
            assert key in [one.where for one in check_formulas(replace(plan, shopping=other))], what


def bounds_changed() -> Iterator[tuple[str, dict[str, Any]]]:
    """The plan with one value of one bound changed."""
    for number, bound in enumerate(json.loads(document())["bounds"]):
        for name, value in bound.items():
            if isinstance(value, int | float):
                told = json.loads(document())
                told["bounds"][number][name] = not value if isinstance(value, bool) else value + 1
                yield f"{number} {name}", told
        for name in ("covered", "gaps", "least", "side", "courses", "alone", "pair"):
            told = json.loads(document())
            field = told["bounds"][number]["surfaces"][0]
            field[name] += 1 + field[name] // 10
            yield f"{number} {name}", told


def test_every_value_of_a_bound_over_layouts_is_proved() -> None:
    assert not list(check_bounds(planned()))
    for what, told in bounds_changed():
        assert list(check_bounds(read_document(told))), what
