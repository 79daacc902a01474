"""What reaches a terminal steers nothing, and an answer that cannot be printed is not lost without a word."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from firstcourse.cli import run

PROGRAM = [sys.executable, "-c", "from firstcourse.cli import main; main()"]


def test_a_hostile_plan_steers_no_terminal(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "plan.json").write_text(json.dumps({"format": "\x1b[2J", "version": "\x9b", "\x1b]0;": "\u202e"}))
    for words in (["verify"], ["verify", "--json"]):
        assert run([*words, str(tmp_path / "plan.json")]) == 2
    assert run(["plan", str(tmp_path / "\x1b[31mjob.yaml"), "--out", str(tmp_path / "plan")]) == 2
    shown = "".join(capsys.readouterr())
    assert "job.yaml" in shown
    assert all(sign.isprintable() or sign == "\n" for sign in shown)


def test_json_for_programs_stays_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["schema", "job"]) == 0
    assert json.loads(capsys.readouterr().out)["title"]


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full here")
def test_a_full_disk_behind_stdout_is_named() -> None:
    with open("/dev/full", "w") as full:
        done = subprocess.run([*PROGRAM, "rules", "choice"], stdout=full, stderr=subprocess.PIPE, text=True)
    assert done.returncode == 2
    assert done.stderr.startswith("standard output: No space left on device")
    assert "Traceback" not in done.stderr and "Exception" not in done.stderr


def test_a_closed_stdout_is_named() -> None:
    done = subprocess.run(
        [*PROGRAM, "rules", "choice"], stderr=subprocess.PIPE, text=True, preexec_fn=lambda: os.close(1)
    )
    assert done.returncode == 2
    assert done.stderr.startswith("standard output: is closed")


def test_a_terminal_without_utf_8_gets_codes() -> None:
    done = subprocess.run(
        [*PROGRAM, "rules", "tiling"], env={**os.environ, "PYTHONIOENCODING": "ascii"}, capture_output=True
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.isascii() and b"Traceback" not in done.stderr


def test_an_empty_folder_name_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "job.yaml").write_text("name: x")
    for words in (["plan", str(tmp_path / "job.yaml"), "--out", ""], ["judge", "x", "--out", " "], ["demo", ""]):
        assert run(words) == 2
        assert "no folder is named" in capsys.readouterr().err
