"""A plan from which a finding was taken, or in which one was made to say another value, was still proved.

Each finding on survey, tile, sheets, water and rules is derived again whole: one that is left out, told twice, or
that says another value, limit, place, rule, severity or remedy is objected to.
"""

import copy
import json
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.verify.findings import check_findings
from firstcourse.verify.reading import read_document
from proving import verify

LEANING = """
name: a leaning wall with a pipe
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rules: [{rule: tile.trim.stock, value: 100, unit: in, reason: as the maker asks}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in}
    taped_to: finish
    height: 96 in
    plumb: {A-B: 3/8 in, B-C: -5/8 in}
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      doorways: [{id: door, wall: A-B, left: 10 in, width: 30 in, other_floor: 1 in}]
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 15 1/4 in}
        boards: {top: 36 1/4 in}
        no_fasteners: [{left: 4 in, right: 8 in, bottom: 10 in, top: 20 in, why: a pipe}]
"""
TILED = """
name: a tiled wall with a window and a niche
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
tiles:
  - {id: long, size: [20 in, 4 in], thickness: 3/8 in, joint: 1/16 in, warpage: 3/16 in}
  - {id: tall, size: [6 in, 12 in], thickness: 3/8 in}
rules: [{rule: tile.bed.max_thin, value: 0.05, unit: in, reason: as the maker asks}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in}
    height: 96 in
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 15 1/4 in}
        boards: {top: 72 in}
        openings:
          - {id: niche, kind: niche, left: 5 in, bottom: 30 in, width: 10 1/4 in, height: 11 in}
          - id: window
            kind: window
            left: 34 in
            bottom: 30 in
            width: 14 in
            height: 20 in
            returns: {depth: 4 in, drop: 1/8 in}
        exposure: {zone: wet, membrane: true, mortar: improved, fasteners: backer_screw}
        tiling: {tile: long, pattern: running, offset: 1/2, start: {left: 1 in, up: 0 in}}
      - wall: B-C
        framing: {spacing: 16 in, first: 15 1/4 in}
        boards: {top: 30 in}
        tiling: {tile: tall}
"""
STANDING = """
name: a flange on a joist
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in}
    height: 96 in
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      openings:
        - {id: flange, kind: flange, side: A-B, left: 40 in, out: 24 in, diameter: 4 in}
        - {id: tub, kind: tub, side: D-A, left: 1/2 in, out: 0 in, width: 30 in, depth: 20 in}
        - {id: chest, kind: cabinet, side: C-D, left: 0 in, out: 2 1/2 in, width: 30 in, depth: 18 in}
"""
BORROWED = LEANING.replace("tape: inch", "tape: inch\npractice: uk")
JOBS = {
    "SUR-101": LEANING.replace("A-C: 84 7/8 in", "A-C: 84 7/8 in, B-D: 83 in"),
    "SUR-102": LEANING,
    "SUR-104": LEANING,
    "SUR-105": LEANING,
    "SUR-109": LEANING,
    "SUR-112": LEANING,
    "SUR-106": STANDING,
    "SUR-107": STANDING,
    "SUR-108": STANDING,
    "QTY-101": LEANING,
    "QTY-102": LEANING.replace("36 in, 60 in", "48 in, 96 in"),
    "RUL-101": BORROWED,
    **dict.fromkeys(
        [f"TIL-{number}" for number in (101, 102, 103, 105, 106, 107, 121, 122, 124, 129, 131)], TILED
    ),
    "RUL-102": LEANING,
}


@cache
def made(text: str) -> str:
    plan = plan_job(read_job_text(text), effort=0).plan.model_dump(mode="json", by_alias=True)
    assert verify(plan).verified
    return json.dumps(plan)


def document(code: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(made(JOBS[code]))
    return found


def others(value: Any) -> Iterator[Any]:
    """Each way of changing a value a little."""
    if isinstance(value, dict):
        for key, item in value.items():
            yield from ({**value, key: other} for other in others(item))
    elif isinstance(value, list):
        yield [*value, *value[-1:]] if value else ["more"]
        for number, item in enumerate(value):
            yield from ([*value[:number], other, *value[number + 1 :]] for other in others(item))
    elif isinstance(value, bool):
        yield not value
    elif isinstance(value, int | float):
        yield value + 1
    elif isinstance(value, str):
        yield f"{value}x"


def spoiled(finding: dict[str, Any]) -> Iterator[dict[str, Any]]:
    for severity in {"stop", "fix", "note"} - {finding["severity"]}:
        yield {**finding, "severity": severity}
    for key in ("at", "measured", "limit", "rule", "remedies", "values"):
        for other in others(finding[key]):
            # A sense that no limit has is refused before anything is derived.
            if not isinstance(other, dict) or other.get("sense") in (None, "least", "most", "is"):
                yield {**finding, key: other}


@pytest.mark.parametrize("code", JOBS)
def test_no_value_of_a_finding_can_be_changed(code: str) -> None:
    plan = document(code)
    place = next(number for number, one in enumerate(plan["findings"]) if one["code"] == code)
    mine = plan["findings"][place]
    rest = [*plan["findings"][:place], *plan["findings"][place + 1 :]]
    assert objected({**plan, "findings": rest}), "left out"
    assert objected({**plan, "findings": [*plan["findings"], copy.deepcopy(mine)]}), "told twice"
    for other in spoiled(mine):
        assert objected({**plan, "findings": [*rest, other]}), other


def objected(plan: dict[str, Any]) -> bool:
    return bool([*check_findings(read_document(plan))])
