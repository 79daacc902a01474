"""Time the demo and the help, and measure the demo's memory.

    python benchmarks/demo.py --runs 5

The first run warms the disk and is not counted; modules are kept compiled, as where the program is installed.
The demo plans, verifies and writes every paper of the first example; goals are 5 s for it, 0.4 s for the help and
500 MB of memory, warm, on two cores.
"""

import argparse
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path


def seconds_of(command: Sequence[str], *, runs: int, folder: str) -> list[float]:
    """Wall-clock seconds of each run of a command after one that is not counted."""
    taken = []
    env = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    for number in range(runs + 1):
        start = time.perf_counter()
        subprocess.run(
            command, cwd=folder, check=True, env=env, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
        )
        if number:
            taken.append(time.perf_counter() - start)
    return taken


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description="Time the demo and the help, and measure the demo's memory.")
    parser.add_argument("--runs", type=int, default=5)
    runs = parser.parse_args().runs
    program = str(Path(sys.executable).with_name("firstcourse"))
    print(f"python {sys.version.split()[0]}, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}")
    with tempfile.TemporaryDirectory() as folder:
        for name, command in (("help", [program, "--help"]), ("demo", [program, "demo", "plan"])):
            taken = seconds_of(command, runs=runs, folder=folder)
            print(f"{name}: median {statistics.median(taken):.2f} s, longest {max(taken):.2f} s of {runs}")
        peak_kb = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
        print(f"memory: {peak_kb / 1024:.0f} MB at most")


if __name__ == "__main__":
    main()
