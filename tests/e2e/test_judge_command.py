"""`judge` as a setter uses it: stop, read the remedies, change the job, go on."""

import json
from pathlib import Path

import pytest

from firstcourse.cli import run

ROOT = Path(__file__).parents[2]
LIMBER = ROOT / "examples" / "limber-floor" / "job.yaml"


def test_the_limber_floor_stops_the_work_and_shows_remedies_and_cautions(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["judge", str(LIMBER)]) == 1
    shown = capsys.readouterr().out
    stop, remedies = shown.index("STOPS THE WORK"), shown.index("REMEDIES FOR upper bath: floor")
    for label in ("measured: L/", "limit: at least L/360", "rule: floor.deflection", "source:", "do:"):
        assert stop < shown.index(label) < remedies
    assert shown.count("\n      passes; height") >= 3
    assert shown.rstrip().rsplit("\n", 1)[-1].startswith("CAUTION:")
    assert "licensed engineer" in shown


def test_one_remedy_applied_to_the_job_lets_judge_and_plan_pass(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(
        LIMBER.read_text(encoding="utf-8").replace("sistered: none ", "sistered: full "), encoding="utf-8"
    )
    assert run(["judge", str(job)]) == 0
    shown = capsys.readouterr().out
    assert "STOPS THE WORK" not in shown and "REMEDIES" not in shown
    assert "licensed engineer" in shown
    assert run(["plan", str(job), "--out", str(tmp_path / "plan"), "--effort", "0"]) == 0


def test_judge_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["judge", str(LIMBER), "--json"]) == 1
    said = json.loads(capsys.readouterr().out)
    options = said["remedies"][0]["options"]
    passing = [option for option in options if option["passes"]]
    assert len(passing) >= 3
    ranks = [(option["height_in"], option["material"], option["labour_h"]) for option in passing]
    assert ranks == sorted(ranks)
    assert all(not option["still_failing"] for option in passing)
    assert said["cautions"] and said["workings"]
    assert [finding["code"] for finding in said["findings"]][-1] == "SUI-900"


def test_the_sheets_are_written_where_asked(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["judge", str(LIMBER), "--out", str(tmp_path / "sheets")]) == 1
    written = sorted(file.name for file in (tmp_path / "sheets").iterdir())
    assert written == ["judgement-a4.pdf", "judgement-letter.pdf"]
    assert "written: " in capsys.readouterr().out


def test_a_job_that_says_nothing_passes_with_a_note(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = tmp_path / "job.yaml"
    run(["new", str(job)])
    capsys.readouterr()
    assert run(["judge", str(job)]) == 0
    shown = capsys.readouterr().out
    assert "judged nothing" in shown and "SUI-910" in shown


def test_wrong_input_ends_with_two(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(LIMBER.read_text(encoding="utf-8").replace("size: 2x8", "size: 2x7"), encoding="utf-8")
    assert run(["judge", str(job)]) == 2
    assert "job.yaml:" in capsys.readouterr().err
