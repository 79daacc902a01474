"""Kill `plan` at random moments, half of them while it writes, and look at what its folder holds.

    python benchmarks/kills.py --seed 1 --count 1000

Two small jobs are planned by turns into one folder, which also holds a file of somebody else's. After each kill
the folder must hold the one plan or the other, whole, every file of it and nothing else; anything else is a fault
and the exit code is 1. What a kill leaves beside the folder must be gone after the next run that ends.
"""

import argparse
import os
import random
import signal
import sys
import tempfile
import time
from collections import Counter
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

import firstcourse.app.papers
import firstcourse.app.session
import firstcourse.cutting.kernels  # noqa: F401  # loaded here once, not in each process
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
    sides: {{A-B: {width} mm, B-C: 1500 mm, C-D: {width} mm, D-A: 1500 mm}}
    diagonals: {{A-C: {diagonal:.0f} mm}}
    floor: {{framing: {{parallel_to: A-B, spacing: 400 mm, first: 200 mm}}}}
"""
SOMEBODYS = "notes.txt"


def job(name: str, width: int) -> str:
    """A small job; its name stands in its drawings' names, so that the two sets differ in their files."""
    return JOB.format(name=name, width=width, diagonal=(width**2 + 1500**2) ** 0.5)


def started(file: Path, folder: Path) -> int:
    """Begin a plan in a process of its own, without a word; this one never plans, so that it may be forked."""
    child = os.fork()
    if child:
        return child
    with open(os.devnull, "w") as nowhere, redirect_stdout(nowhere), redirect_stderr(nowhere):
        run(["plan", str(file), "--out", str(folder), "--effort", "0"])
    os._exit(0)


def plan(file: Path, folder: Path) -> None:
    """Plan to the end."""
    os.waitpid(started(file, folder), 0)


def contents(folder: Path) -> dict[str, bytes]:
    """Every file below a folder with its content."""
    return {
        file.relative_to(folder).as_posix(): file.read_bytes() for file in folder.rglob("*") if not file.is_dir()
    }


def kill_one(rng: random.Random, file: Path, folder: Path, seconds: float, *, writing: bool) -> None:
    """Start a plan and kill it, at any moment or once it has begun to write."""
    child = started(file, folder)
    if writing:
        while not [*folder.parent.glob(f".{folder.name}.made-*")] and not _ended(child):
            time.sleep(0.0002)
        time.sleep(rng.uniform(0, 0.6 * seconds) * rng.random())
    else:
        time.sleep(rng.uniform(0, seconds))
    if not _ended(child):
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)


def _ended(child: int) -> bool:
    try:
        return os.waitpid(child, os.WNOHANG)[0] != 0
    except ChildProcessError:
        return True


def main() -> int:
    """Kill as often as asked and print what was found."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=100)
    options = parser.parse_args()
    rng, found, faults = random.Random(options.seed), Counter[str](), 0
    with tempfile.TemporaryDirectory() as base:
        folder, files, whole = Path(base, "plan"), [], []
        seconds = 0.0
        for name, width in (("hall", 2000), ("attic", 2600)):
            file = Path(base, f"{name}.yaml")
            file.write_text(job(name, width), encoding="utf-8")
            began = time.monotonic()
            plan(file, Path(base, name))
            seconds = time.monotonic() - began
            files.append(file)
            whole.append(contents(Path(base, name)))
        plan(files[0], folder)
        (folder / SOMEBODYS).write_bytes(b"somebody's")
        for number in range(options.count):
            kill_one(rng, files[(number + 1) % 2], folder, seconds, writing=number % 2 == 0)
            held = contents(folder)
            somebodys = held.pop(SOMEBODYS, None)
            kind = next((f"plan {k + 1}, whole" for k in (0, 1) if held == whole[k]), "a mixture")
            if somebodys != b"somebody's":
                kind = "somebody's file lost"
            found[kind] += 1
            if not kind.endswith("whole"):
                faults += 1
                print(f"{number}: {kind}: {sorted(held)}", flush=True)
        left = len([*folder.parent.glob(".plan.made-*")])
        plan(files[0], folder)
        after = [*folder.parent.glob(".plan.made-*")]
        if after or contents(folder).keys() - {SOMEBODYS} != whole[0].keys() or RECORD not in whole[0]:
            faults += 1
            print(f"a run that ended left {[item.name for item in after]}")
        print(
            ", ".join(f"{kind}: {number}" for kind, number in found.items()), f"; left by the last kills: {left}"
        )
    return int(faults > 0)


if __name__ == "__main__":
    sys.exit(main())
