"""`firstcourse explain` as a setter uses it."""

import json
from pathlib import Path

import pytest

from firstcourse.cli import run

ROOT = Path(__file__).parents[2]
TUB = ROOT / "examples" / "tub-bathroom" / "job.yaml"
WALL = """
name: one wall
date: 2026-01-01
stock:
  - {id: small, size: [36 in, 60 in], thickness: 1/2 in, price: 15, for: [wall]}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5 ft, B-C: 5 ft, C-D: 5 ft, D-A: 5 ft}
    diagonals: {A-C: 84.852 in, B-D: 84.852 in}
    height: 7 ft
    walls:
      - {wall: A-B, framing: {spacing: 16 in, first: 12 in}}
"""


@pytest.fixture
def job(tmp_path: Path) -> str:
    file = tmp_path / "job.yaml"
    file.write_text(WALL)
    return str(file)


def test_why_and_what_if_in_words(job: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["explain", job, "--effort", "0"]) == 0
    shown = capsys.readouterr().out
    assert "one wall: why 3 sheets?" in shown
    assert "Plain practice (full sheets from a corner" in shown
    assert "the plan as it is" in shown
    assert "search longer (effort 1)" in shown
    assert 'in sheets of 48" × 96"' in shown
    assert max(len(line) for line in shown.splitlines()) < 300


def test_the_plan_alone(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["explain", str(TUB), "--effort", "0", "--no-what-if"]) == 0
    shown = capsys.readouterr().out
    assert "floor board 3x5: 2 sheets" in shown
    assert "(kept offcut rack 1)" in shown
    assert "WHAT IF" not in shown


def test_for_another_program(job: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["explain", job, "--effort", "0", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["plan"]["sheets"] == 3
    assert [stock["stock"] for stock in told["why"]] == ["small"]
    sheets = [outcome["sheets"] for outcome in told["alternatives"]]
    assert len(sheets) == 7 and sheets == sorted(sheets)


def test_wrong_input_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["explain", "no-such-job.yaml"]) == 2
    assert "no-such-job.yaml" in capsys.readouterr().err
