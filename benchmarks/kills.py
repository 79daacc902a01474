"""Kill `plan` at random moments, half of them while it writes, and look at what its folder holds.

    python benchmarks/kills.py --seed 1 --count 1000

Two small jobs are planned into one folder, always the one whose plan is not there; it also holds a file of
somebody else's. After each kill the folder must hold the old plan or the new one, whole, every file of it and
nothing else; anything else is a fault and the exit code is 1. What a kill leaves beside the folder must be gone
after the next run that ends. The folder is compared byte by byte with plans that were let alone.

Each plan runs in a process forked from one that has loaded the program. One kill in two comes at any moment of a
run. The others come while it writes: half of them as the folder in the making appears or after any number of files
in it, a quarter when all is written, a quarter when that folder has just got the plan's name and the old one is
being taken away; each then waits a little more, at the most as long as that step took when it was measured.
"""

import argparse
import os
import random
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from statistics import median
from typing import NamedTuple

from warm import warm_up

from firstcourse.app.folder_swap import RECORD
from firstcourse.cli import run

JOB = """
name: {name}
date: 2026-11-25
tape: mm
stock: [{{id: board, size: [800 mm, 1200 mm], thickness: 6 mm}}]
rooms:
  - name: {name}
    corners: [A, B, C, D]
    sides: {{A-B: {width} mm, B-C: 900 mm, C-D: {width} mm, D-A: 900 mm}}
    diagonals: {{A-C: {diagonal:.0f} mm}}
    floor: {{framing: {{parallel_to: A-B, spacing: 400 mm, first: 200 mm}}}}
"""
SOMEBODYS, HIS = "notes.txt", b"somebody's"
ENDED = "it had ended, not counted"
LONGEST_S = 120.0
"""No run takes so long, even on a busy machine."""


def job(name: str, width: int) -> str:
    """A small job; its name stands in its drawings' names, so that the two sets differ in their files."""
    return JOB.format(name=name, width=width, diagonal=(width**2 + 900**2) ** 0.5)


class Running:
    """A plan being made in a process of its own, without a word."""

    def __init__(self, file: Path, folder: Path) -> None:
        self.folder = folder
        self._stood = _inode(folder)
        self._child = os.fork()
        self._ended = False
        if self._child == 0:
            with open(os.devnull, "w") as nowhere, redirect_stdout(nowhere), redirect_stderr(nowhere):
                code = run(["plan", str(file), "--out", str(folder), "--effort", "0"])
            os._exit(code)

    def ended(self) -> bool:
        """Whether it has come to its end."""
        if not self._ended:
            self._ended = os.waitpid(self._child, os.WNOHANG)[0] != 0
        return self._ended

    def wait(self) -> None:
        """Wait for its end."""
        self.until(lambda: False)

    def until(self, what: Callable[[], bool]) -> bool:
        """Wait until something is so, or the process has ended; says which."""
        began = time.monotonic()
        while not self.ended():
            if what():
                return True
            if time.monotonic() - began > LONGEST_S:
                raise TimeoutError("a plan hangs")
            time.sleep(0.0005)
        return False

    def kill(self) -> bool:
        """Kill it; says whether there was something to kill."""
        if self.ended():
            return False
        os.kill(self._child, signal.SIGKILL)
        os.waitpid(self._child, 0)
        self._ended = True
        return True

    def written(self) -> int:
        """Files in the folder in the making, its marker among them; nothing before it is there."""
        made = [*self.folder.parent.glob(f".{self.folder.name}.made-*")]
        return max((sum(1 for file in place.rglob("*") if file.is_file()) for place in made), default=0)

    def recorded(self) -> bool:
        """Whether the record stands in the folder in the making: all files do."""
        return any(self.folder.parent.glob(f".{self.folder.name}.made-*/{RECORD}"))

    def swapped(self) -> bool:
        """Whether another folder has the plan's name now."""
        return _inode(self.folder) not in (self._stood, None)


def _inode(folder: Path) -> int | None:
    try:
        return folder.stat().st_ino
    except FileNotFoundError:
        return None


def contents(folder: Path) -> dict[str, bytes | None]:
    """Everything below a folder: files with their content, folders without."""
    return {
        item.relative_to(folder).as_posix(): None if item.is_dir() else item.read_bytes()
        for item in folder.rglob("*")
    }


def kill_any_time(rng: random.Random, running: Running, seconds: float) -> str:
    """Kill a run at any moment of it."""
    time.sleep(rng.uniform(0, seconds))
    written = running.written()
    return (
        ("at any moment, while files were written" if written else "at any moment, before")
        if running.kill()
        else ENDED
    )


def kill_writing(rng: random.Random, running: Running, files: int, steps: "Steps") -> str:
    """Kill a run that writes so many files while it does so."""
    number = rng.randrange(files)
    moment, what, most_s = rng.choice(
        (
            ("while files were written", lambda: running.written() > number, steps.a_file),
            ("while files were written", lambda: running.written() > number, steps.a_file),
            ("as all was written", running.recorded, steps.the_swap),
            ("as the folders traded names", running.swapped, steps.the_swap),
        )
    )
    running.until(what)
    time.sleep(rng.uniform(0, most_s) * rng.random())
    return moment if running.kill() else ENDED


class Steps(NamedTuple):
    """How long the steps of a run take [s]: until it writes, to its end, each file, all after the last file."""

    begins: float
    ends: float
    a_file: float
    the_swap: float


def measured(file: Path, folder: Path) -> Steps:
    """Let a run come to its end and measure it."""
    began = time.monotonic()
    running = Running(file, folder)
    running.until(lambda: running.written() > 0)
    begins = time.monotonic() - began
    running.until(running.recorded)
    recorded = time.monotonic() - began
    running.wait()
    ends = time.monotonic() - began
    files = sum(1 for item in folder.rglob("*") if item.is_file())
    return Steps(begins, ends, (recorded - begins) / files, ends - recorded)


def main() -> int:
    """Kill as often as asked and print what was found."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=100)
    options = parser.parse_args()
    rng = random.Random(options.seed)
    jobs = [(name, job(name, width)) for name, width in (("hall", 1200), ("attic", 1500))]
    warm_up(text for _, text in jobs)
    found, moments, faults, began = Counter[str](), Counter[str](), 0, time.monotonic()
    with tempfile.TemporaryDirectory() as base:
        folder, files, whole = Path(base, "plan"), [], []
        times: list[Steps] = []
        for name, text in jobs:
            file = Path(base, f"{name}.yaml")
            file.write_text(text, encoding="utf-8")
            times += [measured(file, Path(base, name)) for _ in range(3)]
            files.append(file)
            whole.append(contents(Path(base, name)))
        steps = Steps(*(median(column) for column in zip(*times, strict=True)))
        print(
            f"a run begins to write after {steps.begins:.2f} s, takes {steps.a_file:.3f} s a file and "
            f"{steps.the_swap:.3f} s after the last, and ends after {steps.ends:.2f} s (medians of {len(times)})"
        )
        measured(files[0], folder)
        (folder / SOMEBODYS).write_bytes(HIS)
        expected = {"plan", "hall", "attic", "hall.yaml", "attic.yaml"}
        held_before = killed = 0
        while killed < options.count:
            # Always the job whose plan is not there, so that the old plan and the new one differ.
            which = 1 - held_before
            running = Running(files[which], folder)
            count = sum(content is not None for content in whole[which].values())
            if killed % 2 == 0:
                moment = kill_writing(rng, running, count, steps)
            else:
                moment = kill_any_time(rng, running, steps.ends)
            killed += moment != ENDED
            moments[moment] += 1
            held = contents(folder)
            his = held.pop(SOMEBODYS, None)
            kept = next((k for k in (0, 1) if held == whole[k]), None)
            kind = "a mixture" if kept is None else "the old plan" if kept == held_before else "the new plan"
            held_before = held_before if kept is None else kept
            strangers = [
                item.name
                for item in Path(base).iterdir()
                if item.name not in expected and not item.name.startswith(".plan.made-")
            ]
            if his != HIS or strangers:
                kind = f"somebody's file lost or strangers beside: {strangers}"
            if moment != ENDED:
                found[kind] += 1
            if killed % 100 == 0 and moment != ENDED:
                print(f"{killed} kills, {time.monotonic() - began:.0f} s, faults: {faults}", flush=True)
            if kept is None or his != HIS or strangers:
                faults += 1
                print(f"kill {killed}, {moment}: {kind}: {sorted(held)}", flush=True)
        left = len([*folder.parent.glob(".plan.made-*")])
        measured(files[0], folder)
        after = [*folder.parent.glob(".plan.made-*")]
        if after or contents(folder).keys() - {SOMEBODYS} != whole[0].keys() or RECORD not in whole[0]:
            faults += 1
            print(f"a run that ended left {[item.name for item in after]}")
    for title, counted in (("killed", moments), ("the folder then held", found)):
        print(f"{title}: " + ", ".join(f"{kind} {number}" for kind, number in counted.most_common()))
    print(f"left beside by the last kills: {left}; {time.monotonic() - began:.0f} s in all; faults: {faults}")
    return int(faults > 0)


if __name__ == "__main__":
    sys.exit(main())
