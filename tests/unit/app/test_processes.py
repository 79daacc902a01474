"""Work shared out to processes: the results, and the errors, of one process."""

import multiprocessing
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from firstcourse.app import processes
from firstcourse.app.processes import shared_out
from firstcourse.cli import run
from firstcourse.cutting.model import CannotCutError

ROOM = """
  - name: {name}
    corners: [A, B, C, D]
    sides: {{A-B: 60 in, B-C: {long} in, C-D: 60 in, D-A: {long} in}}
    diagonals: {{A-C: {diagonal} in}}
    height: 96 in
    floor: {{framing: {{parallel_to: A-B, spacing: 16 in, first: 15 in}}}}
"""

INTERRUPTED = (
    "import os, signal, time; from firstcourse.app.processes import shared_out; "
    "signal.signal(signal.SIGINT, signal.default_int_handler); "
)
"""A program begun in the background of a shell ignores interrupts unless it asks for them."""


def half(number: int, by: int) -> int:
    if number % 2:
        raise CannotCutError(f"blank {number}")
    return number // by


def half_or_end(number: int, by: int) -> int:
    if multiprocessing.parent_process() is not None:
        os._exit(1)
    return half(number, by)


@pytest.mark.parametrize("workers", [1, 2, 3])
def test_results_come_in_order_however_many_processes(workers: int) -> None:
    assert shared_out(half, range(0, 20, 2), 2, workers=workers) == list(range(10))
    assert multiprocessing.active_children() == []


@pytest.mark.parametrize("workers", [1, 2])
def test_the_first_error_is_raised_as_it_is(workers: int) -> None:
    with pytest.raises(CannotCutError) as caught:
        shared_out(half, [0, 2, 5, 7], 2, workers=workers)
    assert caught.value.blank == "blank 5"
    assert str(caught.value).count("blank 5") == 1


def test_what_a_lost_process_would_have_done_is_done_here() -> None:
    assert shared_out(half_or_end, [0, 2, 4], 2, workers=2) == [0, 1, 2]


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
def test_an_interrupt_ends_all_processes_without_a_word() -> None:
    code = INTERRUPTED + "print('begun', flush=True); shared_out(time.sleep, [50, 50, 50], workers=2)"
    begun = time.monotonic()
    with subprocess.Popen(
        [sys.executable, "-c", code], stdout=subprocess.PIPE, stderr=subprocess.PIPE, start_new_session=True
    ) as run_it:
        assert run_it.stdout is not None
        run_it.stdout.readline()
        time.sleep(1)
        os.killpg(run_it.pid, signal.SIGINT)
        _, told = run_it.communicate()
    assert time.monotonic() - begun < 40
    assert "KeyboardInterrupt" in told.decode()


@pytest.mark.skipif(not hasattr(os, "fork"), reason="processes begin otherwise")
def test_an_interrupt_while_a_process_begins_is_not_lost() -> None:
    code = INTERRUPTED + "os.register_at_fork(after_in_parent=lambda: os.kill(os.getpid(), signal.SIGINT)); "
    code += "shared_out(time.sleep, [0, 0, 0], workers=2); print('went on')"
    ended = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert "went on" not in ended.stdout
    assert ended.returncode != 0


def test_a_plan_of_several_rooms_is_the_same_on_any_number_of_cores(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rooms = "".join(
        ROOM.format(name=f"room {number}", long=long, diagonal=round((60**2 + long**2) ** 0.5 * 16) / 16)
        for number, long in enumerate((72, 91, 84), 1)
    )
    job = tmp_path / "job.yaml"
    job.write_text(f"name: three\ndate: 2026-11-25\ntape: inch\nrooms:{rooms}", encoding="utf-8")
    shared: list[int] = []

    def noted(function, tasks, given, workers):  # type: ignore[no-untyped-def]
        shared.append(workers)
        return in_processes(function, tasks, given, workers)

    in_processes = processes._in_processes
    monkeypatch.setattr(processes, "_in_processes", noted)
    documents = []
    for number in (1, 2):
        monkeypatch.setattr(processes, "cores", lambda number=number: number)
        out = tmp_path / f"out {number}"
        assert run(["plan", str(job), "--out", str(out), "--effort", "0"]) == 0
        documents.append((out / "plan.json").read_bytes())
    assert documents[0] == documents[1]
    assert shared == [2]
