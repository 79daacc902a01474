"""Plan so many like bathrooms with all their papers: seconds, the memory of all processes together, and pages.

    .venv/bin/python benchmarks/many_rooms.py --rooms 16 [--effort 0]

Every room is the bathroom of `examples/tub-bathroom` under a name of its own. Memory that processes share is
counted once (PSS of Linux), twice a second, so that a shorter peak may be missed.
"""

import argparse
import resource
import subprocess
import sys
import tempfile
import time
from copy import deepcopy
from pathlib import Path

import yaml
from pypdf import PdfReader

ROOT = Path(__file__).parents[1]


def job(rooms: int) -> str:
    """The example's bathroom so many times."""
    document = yaml.safe_load((ROOT / "examples" / "tub-bathroom" / "job.yaml").read_text())
    (room,) = document["rooms"]
    document["rooms"] = [deepcopy(room) | {"name": f"bath {number}"} for number in range(1, rooms + 1)]
    return yaml.safe_dump(document, sort_keys=False)


def together(pid: int) -> int:
    """Memory of a process and all it started [bytes]."""
    total, found = 0, [pid]
    while found:
        one = found.pop()
        try:
            rolled = Path(f"/proc/{one}/smaps_rollup").read_text()
            found += [int(child) for child in Path(f"/proc/{one}/task/{one}/children").read_text().split()]
        except (FileNotFoundError, ProcessLookupError):
            continue
        total += sum(int(line.split()[1]) * 1024 for line in rolled.splitlines() if line.startswith("Pss:"))
    return total


def main() -> int:
    """Plan the rooms and print what that took."""
    parser = argparse.ArgumentParser(description="Plan many like bathrooms and measure it.")
    parser.add_argument("--rooms", type=int, default=16)
    parser.add_argument("--effort", type=int, default=0, choices=range(4))
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        path, out = Path(folder) / "job.yaml", Path(folder) / "out"
        path.write_text(job(asked.rooms))
        begun = time.monotonic()
        words = ["plan", str(path), "--out", str(out), "--effort", str(asked.effort)]
        program = "import sys; from firstcourse.cli import main; sys.exit(main())"
        run = subprocess.Popen([sys.executable, "-c", program, *words], stdout=subprocess.DEVNULL)
        most = 0
        while run.poll() is None:
            most = max(most, together(run.pid))
            time.sleep(0.5)
        if run.returncode not in (0, 1):
            return run.returncode
        used = resource.getrusage(resource.RUSAGE_CHILDREN)
        pages = {file.relative_to(out): len(PdfReader(file).pages) for file in sorted(out.rglob("*-letter.pdf"))}
        print(f"{asked.rooms} rooms at effort {asked.effort}: {used.ru_utime + used.ru_stime:.0f} s of processor, "
              f"{time.monotonic() - begun:.0f} s by the clock, {most / 1e6:.0f} MB")  # fmt: skip
        whole = [f"{name} {number}" for name, number in pages.items() if len(name.parts) == 1]
        first = [f"{name} {number}" for name, number in pages.items() if len(name.parts) > 1][:2]
        print(f"pages on Letter: {sum(pages.values())} in all; {', '.join([*whole, *first])}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
