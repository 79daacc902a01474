"""`firstcourse done` as a setter uses it: boards up, then the next plan."""

import json
from pathlib import Path

import pytest
import yaml

import firstcourse
from firstcourse.cli import run

WALL = """# as taped on site
name: one wall
date: 2026-01-01
tiles:
  - {id: white, size: [11 7/8 in, 5 7/8 in], thickness: 5/16 in, joint: 1/8 in}   # measured
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 9 ft, B-C: 5 ft, C-D: 9 ft, D-A: 5 ft}
    diagonals: {A-C: 123.548 in, B-D: 123.548 in}
    height: 4 ft
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 12 in}   # by the stud finder
        tiling: {tile: white}
"""
SURFACE = "bath/wall/A-B"


@pytest.fixture
def job(tmp_path: Path) -> Path:
    file = tmp_path / "job.yaml"
    file.write_text(WALL)
    return file


def test_boards_that_are_up_are_written_into_the_job_and_stay(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    first = firstcourse.open(job).plan(effort=0)
    (tmp_path / "plan.json").write_text(first.document)
    marks = [board.mark for board in first.plan.surfaces[0].boards]
    assert len(marks) >= 3
    words = ["done", str(job), "--plan", str(tmp_path), "--boards", *marks[:2]]
    assert run([*words, "--first-course", f"{SURFACE}=3 5/8 in"]) == 0
    assert "2 boards are up" in capsys.readouterr().out
    text = job.read_text()
    assert text.startswith("# as taped on site") and "# by the stud finder" in text and "# measured" in text
    again = firstcourse.open(job).plan(effort=0).plan
    assert [board.mark for board in again.surfaces[0].boards if board.fixed] == marks[:2]
    # The first course stands where it stands: no other start is weighed.
    (start,) = again.surfaces[0].tiled[0].starts
    assert start.why == "given" and start.origin[1] == round(3.625 * 25.4 * 640)
    lowest = {min(v for _, v in tile.laid or tile.outline) for tile in again.surfaces[0].tiles}
    assert start.origin[1] in lowest


def test_the_job_may_be_written_elsewhere_and_be_json(job: Path, tmp_path: Path) -> None:
    first = firstcourse.open(job).plan(effort=0)
    (tmp_path / "plan.json").write_text(first.document)
    as_json = tmp_path / "job.json"
    as_json.write_text(json.dumps(yaml.safe_load(WALL), default=str))
    before, out = as_json.read_text(), tmp_path / "next.json"
    mark = first.plan.surfaces[0].boards[0].mark
    assert run(["done", str(as_json), "--plan", str(tmp_path), "--boards", mark, "--out", str(out)]) == 0
    assert as_json.read_text() == before
    done = json.loads(out.read_text())["done"]
    assert [board["mark"] for board in done["surfaces"][0]["boards"] if board["up"]] == [mark]
    assert firstcourse.open(out).job.done is not None


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([], "nothing is said to be done"),
        (["--boards", "W9-9"], "no board of this plan"),
        (["--first-course", "3 in"], "is not like"),
        (["--first-course", "hall=3 in"], "no tiled surface"),
    ],
)
def test_what_cannot_be_is_said_and_nothing_is_written(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    (tmp_path / "plan.json").write_text(firstcourse.open(job).plan(effort=0).document)
    assert run(["done", str(job), "--plan", str(tmp_path), *words]) == 2
    assert said in capsys.readouterr().err
    assert job.read_text() == WALL


def test_a_plan_that_does_not_verify_is_refused(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plan = json.loads(firstcourse.open(job).plan(effort=0).document)
    plan["surfaces"][0]["boards"][0]["outline"][0][0] -= 5
    (tmp_path / "plan.json").write_text(json.dumps(plan))
    assert run(["done", str(job), "--plan", str(tmp_path), "--boards", "W1-1"]) == 2
    assert "does not verify" in capsys.readouterr().err
