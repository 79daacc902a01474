"""Board and cut 1, 4, 16, 64 and 256 bathrooms that share stock: seconds and memory for each number.

    .venv/bin/python benchmarks/growth.py [--effort 0..3] [--workers N] [--most N]

Bathroom number k is made from seed k alone: a tub across the far end, three wet walls round it and the floor;
sizes, studs and openings are invented within what is common. Rooms are shared out to processes; all pieces are
then cut from shared sheets. Each number of rooms runs in a process of its own, so that its memory is its own;
survey, boards and cutting are timed, compiling and loading are not. Where the machine has other work, the
processor time says more than the time passed.
"""

import argparse
import random
import resource
import subprocess
import sys
import time
from typing import Any

import yaml

from firstcourse.app.processes import Processes
from firstcourse.boards import practice_layout
from firstcourse.cutting.kernels import warm
from firstcourse.job import Job, read_job_text
from firstcourse.plan import SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.sheets.cut import allowed_stock, cut_pieces, job_stock
from firstcourse.sheets.seams import board, demand
from firstcourse.sheets.together import Surfaced
from firstcourse.survey import survey_job

NUMBERS = (1, 4, 16, 64, 256)


def inches(sixteenths: int) -> str:
    """A length as an inch tape shows it."""
    return f"{sixteenths // 16} {sixteenths % 16}/16 in"


def bathroom(seed: int) -> dict[str, Any]:
    """One bathroom with its tub across the far end."""
    rng = random.Random(seed)
    wide, long = rng.randint(59 * 16, 62 * 16), rng.randint(84 * 16, 120 * 16)
    high, rim, top = rng.randint(95 * 16, 97 * 16), rng.randint(14 * 16, 21 * 16), rng.randint(80 * 16, 90 * 16)
    deep, diagonal = rng.randint(30 * 16, 33 * 16), round((wide**2 + long**2) ** 0.5)
    niche = {
        "id": "niche",
        "kind": "niche",
        "left": "17 in",
        "bottom": "48 in",
        "width": "14 in",
        "height": "20 in",
    }

    def wall(name: str, **more: Any) -> dict[str, Any]:
        boards = {"bottom": inches(rim), "top": inches(top)} | more.pop("boards", {})
        framing = {"spacing": "16 in", "first": inches(rng.randint(2 * 16, 16 * 16))}
        return {"wall": name, "foot": "tub", "boards": boards, "framing": framing, **more}

    tub = {"id": "tub", "kind": "tub", "side": "A-B", "left": "0 in", "out": "0 in", "width": inches(wide),
           "depth": inches(deep)}  # fmt: skip
    flange = {"id": "flange", "kind": "flange", "side": "D-A", "left": "40 in", "out": "12 in", "diameter": "4 in"}
    joists = {"parallel_to": "A-B", "spacing": "16 in", "first": "15 in"}
    return {
        "name": f"bath {seed}",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": inches(wide), "B-C": inches(long), "C-D": inches(wide), "D-A": inches(long)},
        "diagonals": {"A-C": inches(diagonal), "B-D": inches(diagonal)},
        "heights": {corner: inches(high) for corner in "ABCD"},
        "floor": {"framing": joists, "openings": [tub, flange]},
        "walls": [
            wall("A-B", **({"openings": [niche]} if rng.random() < 0.5 else {})),
            wall("B-C", boards={"right": inches(deep + 16)}),
            wall("D-A", boards={"left": inches(long - deep - 16)}),
        ],
    }  # fmt: skip


def bathrooms(number: int) -> Job:
    """A job of so many bathrooms that share stock."""
    stock = [
        {"id": "floor board", "size": ["36 in", "60 in"], "thickness": "1/4 in", "for": ["floor"]},
        {"id": "wall board", "size": ["36 in", "60 in"], "thickness": "0.42 in", "for": ["wall"]},
    ]
    job = {"name": f"{number} bathrooms", "date": "2026-11-25", "tape": "inch", "stock": stock}
    return read_job_text(yaml.safe_dump(job | {"rooms": [bathroom(seed) for seed in range(1, number + 1)]}))


def measure(number: int, effort: int, workers: int) -> str:
    """One line of the table."""
    job = bathrooms(number)
    rules = load_rules(job.date, job.practice, ())
    by_kind = job_stock(job, rules)
    stock = tuple({item.id: item for kind in SurfaceKind for item in by_kind[kind]}.values())
    warm()
    began, used_before = time.perf_counter(), processor_seconds()
    surfaces = tuple(
        Surfaced(surface, f"S{n}", allowed_stock(surface, by_kind))
        for n, surface in enumerate(survey_job(job, rules).surfaces)
    )
    boarded = board(surfaces, stock, job, rules, effort=effort, share=Processes(workers, least=2))
    seconds, used_seconds = time.perf_counter() - began, processor_seconds() - used_before
    peak = sum(resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    used = sum(found.used for found in boarded.cutting.counts.values())
    least = sum(found.bound.value for found in boarded.cutting.counts.values())
    pieces = sum(len(layout.pieces) for layout in boarded.layouts)
    practice = practice_sheets(surfaces, stock, job)
    figures = (
        number,
        pieces,
        used,
        least,
        practice,
        f"{seconds:.1f}",
        f"{used_seconds:.1f}",
        f"{peak / 1024:.0f}",
    )
    return "| " + " | ".join(map(str, figures)) + " |"


def processor_seconds() -> float:
    """Processor time of this process and of those that ended under it."""
    used = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return sum(one.ru_utime + one.ru_stime for one in used)


def practice_sheets(surfaces: tuple[Surfaced, ...], stock: tuple[Any, ...], job: Job) -> int:
    """Sheets of plain practice, room by room."""
    rules = load_rules(job.date, job.practice, ())
    total = 0
    for room in dict.fromkeys(item.surface.room for item in surfaces):
        items = [item for item in surfaces if item.surface.room == room]
        layouts = [practice_layout(i.surface, i.stock, rules, job.tape, mark=i.mark) for i in items]
        cutting = cut_pieces(*demand(items, layouts), stock, job, effort=0)
        total += sum(found.used for found in cutting.counts.values())
    return total


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--effort", type=int, default=1, choices=range(4))
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--most", type=int, default=NUMBERS[-1], help="leave out larger numbers")
    parser.add_argument("--only", type=int, help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.only:
        print(measure(given.only, given.effort, given.workers), flush=True)
        return
    print(
        "| rooms | pieces | sheets | bound, these pieces | practice, room by room | seconds | processor s | MB |"
    )
    print("|---|---|---|---|---|---|---|---|", flush=True)
    for number in NUMBERS:
        if number <= given.most:
            more = ["--effort", str(given.effort), "--workers", str(given.workers), "--only", str(number)]
            subprocess.run([sys.executable, __file__, *more], check=True)


if __name__ == "__main__":
    main()
