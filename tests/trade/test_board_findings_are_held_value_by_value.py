"""Of what a finding on boards told, its code and its place were checked, and hardly any of its numbers.

Each of its values and references is derived again: a plan with one of them changed, without the finding, or with
the finding twice, is objected to.
"""

import copy
import json
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify

ROOM = """
name: boards
date: 2026-11-25
tape: inch
stock: [{{id: board, size: [36 in, 60 in], thickness: 1/2 in}}]
{rules}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: {wide}, B-C: 60 in, C-D: {wide}, D-A: 60 in}}
    diagonals: {{A-C: {across}}}
    height: 96 in
    walls:
      - wall: A-B
        foot: floor
        framing: {framing}
        boards: {{top: {top}}}
"""
REGULAR = "{spacing: 16 in, first: 15 1/4 in}"


def job(
    wide: str = "60 in",
    across: str = "84 7/8 in",
    top: str = "36 1/4 in",
    framing: str = REGULAR,
    rules: str = "",
) -> str:
    return ROOM.format(wide=wide, across=across, top=top, framing=framing, rules=rules)


def rule(name: str, value: float) -> str:
    return f"rules: [{{rule: {name}, value: {value}, unit: in, reason: as the maker asks}}]"


STRIP = """
name: a strip beside a chimney
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in}
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      openings: [{id: chimney, kind: column, side: A-B, left: 0.75 in, out: 0 in, width: 30 in, depth: 30 in}]
"""
SLAB = """
name: a slab
date: 2026-11-25
tape: inch
tiles: [{id: square, size: [12 in, 12 in], thickness: 3/8 in, kind: porcelain, joint: 1/8 in, edges: rectified}]
rooms:
  - name: hall
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in}
    floor: {tiling: {tile: square}}
"""
NICHE = """
name: a niche beside a stud
date: 2026-11-25
tape: inch
stock: [{{id: board, size: [36 in, 60 in], thickness: 1/2 in}}]
{rules}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 121 in, B-C: 80 in, C-D: 121 in, D-A: 80 in}}
    diagonals: {{A-C: 145 1/16 in}}
    height: 96 in
    walls:
      - wall: A-B
        framing: {{spacing: 16 in, first: 15 1/4 in}}
        openings: [{{id: niche, kind: niche, left: 48 in, bottom: 40 in, width: 14 1/2 in, height: 20 in}}]
"""
PANELS = """
name: a joint of the panel under the boards
date: 2026-11-25
tape: inch
stock: [{{id: board, size: [36 in, 60 in], thickness: 1/2 in}}]
{rules}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 121 in, B-C: 80 in, C-D: 121 in, D-A: 80 in}}
    diagonals: {{A-C: 145 1/16 in}}
    floor:
      framing: {{parallel_to: A-B, spacing: 16 in, first: 8 in}}
      panel_joints: [{{parallel_to: A-B, out: 40 in}}, {{parallel_to: B-C, out: 60 in}}]
"""
CROWDED = "{members: [{at: 1 in}, {at: 2.6 in}, {at: 20 in}, {at: 40 in}, {at: 58.6 in}]}"
JOBS = {
    "BRD-101": job(framing="{members: [{at: 20 in}, {at: 40 in}]}"),
    "BRD-102": job(framing=CROWDED, rules=rule("boards.bearing.min", 1.2)),
    "BRD-201": NICHE.format(rules=rule("boards.stagger.end_joints", 59)),
    "BRD-203": PANELS.format(rules=rule("boards.offset.panel_joints", 25)),
    "BRD-204": job(top="38 in", rules=rule("boards.piece.min", 40)),
    "BRD-205": NICHE.format(rules=rule("boards.limb.min", 20)),
    "BRD-206": job(across="85 in, B-D: 85 in", top="36 3/8 in"),
    "BRD-207": job(wide="60 3/16 in", across="85 in"),
    "BRD-208": job(wide="59 15/16 in", across="84 11/16 in"),
    "BRD-301": job(top="1/4 in"),
    "BRD-302": SLAB,
    "BRD-303": STRIP,
}


@cache
def document(code: str) -> str:
    return plan_job(read_job_text(JOBS[code]), effort=0).document


def leaves(value: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    if isinstance(value, dict | list):
        for key, one in value.items() if isinstance(value, dict) else enumerate(value):
            yield from leaves(one, (*path, key))
    elif value not in ("", None):
        yield path


def spoilt(value: Any) -> Any:
    if isinstance(value, bool):
        return not value
    return value + 1 if isinstance(value, int | float) else f"{value}x"


def changed(plan: dict[str, Any], number: int, path: tuple[Any, ...]) -> dict[str, Any]:
    other = copy.deepcopy(plan)
    held: Any = other["findings"][number]
    for key in path[:-1]:
        held = held[key]
    held[path[-1]] = spoilt(held[path[-1]])
    return other


def first_of_each_list(paths: Iterator[tuple[Any, ...]]) -> Iterator[tuple[Any, ...]]:
    """Later entries of a list are held as its first is; the last one stands for them."""
    seen: dict[tuple[Any, ...], tuple[Any, ...]] = {}
    for path in paths:
        kind = tuple("n" if isinstance(key, int) else key for key in path)
        if kind not in seen:
            yield path
        seen[kind] = path


@pytest.mark.parametrize("code", JOBS)
def test_no_value_of_a_finding_can_change(code: str) -> None:
    plan = json.loads(document(code))
    assert not verify(plan).objections
    numbers = [number for number, finding in enumerate(plan["findings"]) if finding["code"] == code]
    assert numbers
    finding = plan["findings"][numbers[0]]
    paths = [path for path in first_of_each_list(leaves(finding)) if path not in {("code",), ("severity",)}]
    assert len(paths) > 1
    unseen = [path for path in paths if not verify(changed(plan, numbers[0], path)).objections]
    assert not unseen


@pytest.mark.parametrize("code", JOBS)
def test_no_finding_can_be_left_out_or_told_twice(code: str) -> None:
    plan = json.loads(document(code))
    told = next(finding for finding in plan["findings"] if finding["code"] == code)
    without = {**plan, "findings": [finding for finding in plan["findings"] if finding is not told]}
    assert verify(without).objections
    assert verify({**plan, "findings": [*plan["findings"], told]}).objections
