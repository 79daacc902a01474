"""Workings of survey, ground and build-up: any value that is changed by itself is noticed."""

import json
from dataclasses import replace
from functools import cache

import pytest

from changed import changes
from firstcourse.job import read_job_text
from firstcourse.planning import plan_job
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document

JOB = """\
name: Out of true
date: 2026-11-25
tape: inch
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 96 in, C-D: 60 1/16 in, D-A: 96 in}
    diagonals: {A-C: 113 1/4 in, B-D: 113 3/16 in}
    height: 8 ft
    walls:
      - {wall: A-B, framing: {spacing: 16 in, first: 16 in}}
"""
NOT_YET = {"survey-checks": ("taped_to", "changed", "by")}
"""Inputs that nothing else in the plan gives."""


@cache
def planned() -> Document:
    return read_document(json.loads(plan_job(read_job_text(JOB), effort=0).document))


@pytest.mark.parametrize("formula", ["survey-area", "survey-checks", "survey-square"])
def test_every_value_is_proved(formula: str) -> None:
    plan = planned()
    assert not list(check_formulas(plan))
    for key in [key for key in plan.workings if key.startswith(f"{formula}@")]:
        for what, changed in changes(plan.workings[key]):
            if what.startswith(NOT_YET.get(formula, "-")):
                continue
            other = replace(plan.shopping, workings={**plan.workings, key: changed})
            found = [one.where for one in check_formulas(replace(plan, shopping=other))]
            assert key in found or any(at.endswith("@bath") for at in found), what
