"""A run is stopped by Ctrl-C within a second, whatever compiled code it is in, and leaves its folder as it was."""

import json
import os
import re
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

pytestmark = pytest.mark.skipif(os.name != "posix", reason="signals of POSIX systems")

# The search of a plan goes on in compiled code for half a minute, as a large room's does.
DEAF = """
import sys, time
import ctypes
import firstcourse.app.session as session
from firstcourse.cli import main
usleep = ctypes.PyDLL(None).usleep

def plan(self, **_):
    print("begun", flush=True)
    usleep(30_000_000)

def papers(self, *_args, **_named):
    from firstcourse.app.folder_swap import folder_set
    from pathlib import Path
    with folder_set(Path(_args[1]), record=True) as files:
        files.add("plan.json", b"half")
        print("begun", flush=True)
        usleep(30_000_000)

if sys.argv.pop(1) == "plan":
    session.Session.plan = plan
else:
    session.Session.plan = lambda self, **_: None
    session.Session.papers = papers
main()
"""
JOB = Path(__file__).parents[2] / "examples" / "tub-bathroom" / "job.yaml"


@pytest.mark.parametrize("where", ["plan", "papers"])
@pytest.mark.parametrize("to_both", [True, False], ids=["terminal", "kill"])
def test_stopped_within_a_second_in_compiled_code(where: str, to_both: bool, tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "notes.txt").write_text("mine")
    words = [sys.executable, "-c", DEAF, where, "plan", str(JOB), "--out", str(out)]
    with subprocess.Popen(
        words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True
    ) as started:
        assert started.stdout is not None
        assert started.stdout.readline() == "begun\n"
        began = time.monotonic()
        if to_both:
            os.killpg(started.pid, signal.SIGINT)
        else:
            started.send_signal(signal.SIGINT)
        _, said = started.communicate(timeout=20)
    # A second on a machine of its own; others may use this one.
    assert time.monotonic() - began < 4
    assert started.returncode == 2
    assert said.strip() == "stopped; nothing was written"
    assert [entry.name for entry in tmp_path.iterdir()] == ["out"]
    assert [entry.name for entry in out.iterdir()] == ["notes.txt"]


def test_a_run_that_the_system_ends_says_so(tmp_path: Path) -> None:
    code = (
        "import os, signal; from firstcourse.cli.watched import watched; import sys; "
        "sys.exit(watched(lambda _: os.kill(os.getpid(), signal.SIGKILL), ['plan']))"
    )
    ended = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert ended.returncode == 3
    assert "signal 9" in ended.stderr and "nothing was written" in ended.stderr


def test_progress_is_told_on_request(tmp_path: Path) -> None:
    code = "from firstcourse.cli import main; main()"
    words = [sys.executable, "-c", code, "plan", str(JOB), "--out", str(tmp_path / "out"), "--effort", "0"]
    told = subprocess.run([*words, "--progress"], capture_output=True, text=True, check=False)
    steps = [line.split(" s  ")[1] for line in told.stderr.splitlines()]
    assert [steps[0], *steps[2:4]] == ["survey", "judgement", "boards and cutting"]
    # How much there is to do is told before it begins, counted and not in seconds.
    said = re.fullmatch(r"to lay out: (\d+) surfaces, about (\d+) boards? and (\d+) tiles?", steps[1])
    plan = json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))
    boards, tiles = (sum(len(surface[what]) for surface in plan["surfaces"]) for what in ("boards", "tiles"))
    assert said is not None
    assert 0 < int(said[2]) <= boards
    assert (int(said[3]) > 0) == (tiles > 0)
    assert {"plan.json", "site-pack-letter.pdf", "office-pack-a4.pdf"} <= set(steps)
