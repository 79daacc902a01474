"""Slanting patterns got no lines where these end at what is not there yet, and nobody missed them.

Every tiled surface has two lines at right angles, through points of tiles where joints slant, or a finding that
says why not; the verifier misses them on any tiled surface.
"""

import json
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
import yaml

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.verify.marks import check_marks
from firstcourse.verify.reading import read_document
from firstcourse.verify.structure import Document, Surface

JOB = """
name: Slanting
practice: us
date: 2026-11-25
tape: inch
tiles:
  - {id: square, size: [6 in, 6 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: plank, size: [8 in, 4 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
stock:
  - {id: board, size: [36 in, 60 in], thickness: 1/2 in, for: [wall, ceiling]}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 96 in, B-C: 66 in, C-D: 96 in, D-A: 66 in}
    diagonals: {A-C: 116 1/2 in}
    height: 96 in
    floor: {}
    ceiling: {framing: {parallel_to: A-B, spacing: 16 in, first: 16 in}}
    walls:
      - wall: A-B
        foot: floor
        framing: {spacing: 16 in, first: 16 in}
      - wall: C-D
        foot: floor
        framing: {spacing: 16 in, first: 16 in}
"""
PATTERNS = {
    "diagonal": {"tile": "square", "angle": 45},
    "herringbone": {"tile": "plank", "pattern": "herringbone", "angle": 45},
    "herringbone along": {"tile": "plank", "pattern": "herringbone"},
    "running turned": {"tile": "plank", "pattern": "running", "angle": 45},
}


@cache
def _document(pattern: str, ceiling: bool, heating: bool) -> Document:
    job: dict[str, Any] = yaml.safe_load(JOB)
    job["date"] = str(job["date"])
    (room,) = job["rooms"]
    room["floor"] = {"tiling": PATTERNS[pattern]}
    if heating:
        room["floor"]["tile"] = {"kind": "ceramic", "thickness": "1/4 in", "heating": "1/4 in"}
    if not ceiling:
        del room["ceiling"]
    for wall in room["walls"]:
        wall["tiling"] = PATTERNS[pattern]
    return read_document(json.loads(plan_job(read_job_text(json.dumps(job)), effort=0).document))


def _only(plan: Document, surface: Surface) -> Document:
    return replace(
        plan,
        surfaces=tuple(
            surface if one.id == surface.id else replace(one, tiles=(), marks=()) for one in plan.surfaces
        ),
    )


@pytest.mark.parametrize(
    ("pattern", "ceiling", "heating"),
    [*((pattern, True, True) for pattern in PATTERNS), ("diagonal", False, False)],
)
def test_every_surface_has_two_lines_at_right_angles(pattern: str, ceiling: bool, heating: bool) -> None:
    plan = _document(pattern, ceiling, heating)
    tiled = [surface for surface in plan.surfaces if surface.tiles]
    assert len(tiled) == 3
    for surface in tiled:
        ways = {(mark.line[1][0] - mark.line[0][0], mark.line[1][1] - mark.line[0][1]) for mark in surface.marks}
        assert any(
            abs(a * c + b * d) <= 1e-3 * (abs(a) + abs(b)) * (abs(c) + abs(d)) for a, b in ways for c, d in ways
        )
        assert not list(check_marks(_only(plan, surface)))
        assert "VER-711" in {found.code for found in check_marks(_only(plan, replace(surface, marks=())))}
