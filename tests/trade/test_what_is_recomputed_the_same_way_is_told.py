"""A verdict said `verified` alike of what was derived another way and of what was recomputed the planner's way."""

import json
from functools import cache
from pathlib import Path

import pytest

from firstcourse.cli import run
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify_text

ROOM = """
name: Small floor
practice: us
date: 2026-11-25
stock: [{id: board, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 48 in, C-D: 60 in, D-A: 48 in}
    diagonals: {A-C: 76 13/16 in, B-D: 76 13/16 in}
    taped_to: studs
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 15 in}
"""
TILE = """
      tiling: {tile: small}
tiles: [{id: small, size: [7 7/8 in, 7 7/8 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}]
"""


@cache
def document(tile: bool) -> str:
    return plan_job(read_job_text(ROOM.rstrip() + TILE if tile else ROOM), effort=0).document


def test_it_is_told_where_there_is_something_of_the_kind() -> None:
    assert set(verify_text(document(True)).same_way) - set(verify_text(document(False)).same_way) == {"play"}


@pytest.mark.parametrize(("words", "line"), [((), "recomputed the same way"), (("--tongue", "es"), "de la misma")])
def test_verify_prints_it(
    words: tuple[str, ...], line: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "plan.json"
    file.write_text(document(True), encoding="utf-8")
    assert run(["verify", str(file), *words]) == 0
    assert line in capsys.readouterr().out
    assert run(["verify", str(file), "--json"]) == 0
    assert "play" in json.loads(capsys.readouterr().out)["same_way"]
