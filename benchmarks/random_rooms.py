"""Plan random jobs, shaped as rooms are found on site, and count what becomes of them.

    python benchmarks/random_rooms.py --seed 1 --count 500
    python benchmarks/random_rooms.py --seed 1 --count 50 --tiled

Job number k is made from seed + k alone, so any one of them is made again with `--seed N --count 1`; `--show`
prints its document. A job is planned and verified, or refused with a message for the setter; anything else is our
fault, and the exit code is 1.

Shapes, areas and how far rooms are out of square follow published floor plans of flats; studs, openings and ranges
are invented to be awkward.
"""

import argparse
import math
import random
import sys
import time
import traceback
from collections import Counter
from dataclasses import dataclass
from statistics import median
from typing import Any

import yaml
from random_shapes import Corners, Taper, outline
from random_surfaces import floor, joists, round_on_floor, wall
from random_tiles import tiled
from shapely import LineString, Polygon

from firstcourse.errors import JobError, PlanRefusedError
from firstcourse.findings import Severity
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job

_STOCKS = {
    "inch": (("36 in", "60 in"), ("48 in", "96 in"), ("32 in", "48 in"), ("48 in", "60 in")),
    "mm": (("900 mm", "1500 mm"), ("1200 mm", "2400 mm"), ("600 mm", "1200 mm"), ("800 mm", "1250 mm")),
}


def random_job(seed: int) -> str:
    """A random job document."""
    rng = random.Random(seed)
    tape = rng.choice(["inch", "inch", "mm"])
    taper = Taper(tape)
    job: dict[str, Any] = {"name": f"random {seed}", "date": "2026-11-25", "tape": tape}
    stocks = _stocks(rng, tape)
    if stocks:
        job["stock"] = stocks
        if rng.random() < 0.2:
            size = [taper.text(rng.uniform(150, 500)), taper.text(rng.uniform(300, 900))]
            job["offcuts"] = [{"id": "rack 1", "stock": stocks[0]["id"], "size": size}]
    job["rooms"] = [_room(rng, taper, f"room {number + 1}") for number in range(1 + (rng.random() < 0.1))]
    return yaml.safe_dump(job, sort_keys=False)


def _stocks(rng: random.Random, tape: str) -> list[dict[str, Any]]:
    if rng.random() < 0.25:
        return []
    sizes = rng.sample(_STOCKS[tape], rng.randint(1, 2))
    return [
        {"id": f"board {number + 1}", "size": list(size), "thickness": "12 mm", "price": rng.randint(12, 60)}
        for number, size in enumerate(sizes)
    ]


def _room(rng: random.Random, taper: Taper, name: str) -> dict[str, Any]:
    corners = outline(rng)
    names = [chr(ord("A") + index) for index in range(len(corners))]
    pairs = [(index, (index + 1) % len(corners)) for index in range(len(corners))]
    lengths = {f"{names[i]}-{names[j]}": math.dist(corners[i], corners[j]) for i, j in pairs}
    room: dict[str, Any] = {
        "name": name,
        "corners": names,
        "sides": {pair: _read(rng, taper, length) for pair, length in lengths.items()},
        "diagonals": _diagonals(rng, taper, corners, names),
    }
    height = rng.uniform(2250, 2750)
    if rng.random() < 0.5:
        room["heights"] = {corner: taper.text(height + rng.uniform(-8, 8)) for corner in names}
        if rng.random() < 0.4:
            room["levels"] = {corner: taper.text(rng.uniform(0, 12)) for corner in names}
    else:
        room["height"] = taper.text(height)
    if rng.random() < 0.75:
        room["floor"] = floor(rng, taper, corners, lengths)
    walls = [pair for pair, length in lengths.items() if length > 120 and rng.random() < 0.5]
    if walls or "floor" not in room:
        walls = walls or [max(lengths, key=lambda pair: lengths[pair])]
        room["walls"] = [wall(rng, taper, pair, lengths[pair], height) for pair in walls]
    if rng.random() < 0.2:
        room["ceiling"] = {"framing": joists(rng, taper, corners, lengths)}
        if rng.random() < 0.5:
            room["ceiling"]["openings"] = [round_on_floor(rng, taper, corners, lengths, "fan", "box")]
    return room


def _read(rng: random.Random, taper: Taper, length_mm: float) -> str:
    return taper.text(length_mm + rng.gauss(0, 0.4) * taper.step_mm)


def _diagonals(rng: random.Random, taper: Taper, corners: Corners, names: list[str]) -> dict[str, str]:
    """Every distance that a tape can span inside the room; one job in ten leaves some out."""
    count = len(corners)
    inside = Polygon(corners).buffer(1)
    seen = [
        (i, j)
        for i in range(count)
        for j in range(i + 2, count)
        if (i, j) != (0, count - 1) and inside.covers(LineString([corners[i], corners[j]]))
    ]
    if rng.random() < 0.1:
        seen = [pair for pair in seen if rng.random() < 0.6]
    return {f"{names[i]}-{names[j]}": _read(rng, taper, math.dist(corners[i], corners[j])) for i, j in seen}


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of one job.

    Attributes:
        kind: `planned`, `refused` (a message for the setter), `objected` (our verifier's) or `crashed`.
        text: The message; empty where planned.
        codes: Codes of the plan's findings, each once.
        stopped: Whether a finding says that work must not start.
        seconds: Time that reading and planning took.
    """

    kind: str
    text: str
    codes: frozenset[str]
    stopped: bool
    seconds: float


def document(seed: int, *, with_tile: bool = False) -> str:
    """A random job document, with tile on its surfaces where asked."""
    return tiled(random_job(seed), seed) if with_tile else random_job(seed)


def outcome(seed: int, *, effort: int = 0, with_tile: bool = False) -> Outcome:
    """Plan one random job."""
    start = time.perf_counter()
    kind, text, codes, stopped = "planned", "", frozenset[str](), False
    try:
        result = plan_job(read_job_text(document(seed, with_tile=with_tile)), effort=effort)
        codes = frozenset(finding.code for finding in result.plan.findings)
        stopped = any(finding.severity is Severity.STOP for finding in result.plan.findings)
    except JobError as error:
        kind, text = "refused", str(error)
    except PlanRefusedError as error:
        kind, text = "objected", "\n".join(error.objections)
    except Exception:
        kind, text = "crashed", traceback.format_exc(limit=-4)
    return Outcome(kind=kind, text=text, codes=codes, stopped=stopped, seconds=time.perf_counter() - start)


def main() -> int:
    """Plan the jobs and print the counts."""
    parser = argparse.ArgumentParser(description="Plan random jobs and count what becomes of them.")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--effort", type=int, default=0, choices=range(4))
    parser.add_argument("--tiled", action="store_true", help="tile some of the surfaces too")
    parser.add_argument("--show", action="store_true", help="print the documents instead of planning them")
    asked = parser.parse_args()
    seeds = range(asked.seed, asked.seed + asked.count)
    if asked.show:
        print("---\n".join(document(seed, with_tile=asked.tiled) for seed in seeds), end="")
        return 0
    outcomes = {}
    for seed in seeds:
        found = outcomes[seed] = outcome(seed, effort=asked.effort, with_tile=asked.tiled)
        if found.text:
            print(f"seed {seed} {found.kind}:\n  " + "\n  ".join(found.text.splitlines()), flush=True)
    _report(list(outcomes.values()))
    return int(any(found.kind in ("objected", "crashed") for found in outcomes.values()))


def _report(outcomes: list[Outcome]) -> None:
    kinds = Counter(found.kind for found in outcomes)
    planned = [found for found in outcomes if found.kind == "planned"]
    codes = Counter(code for found in planned for code in found.codes)
    print(f"jobs                          {len(outcomes)}")
    print(f"planned and verified          {kinds['planned']}")
    print(f"  with a finding that stops   {sum(found.stopped for found in planned)}")
    print(f"  with members to add         {codes['BRD-101']} ({codes['BRD-101'] / max(1, len(planned)):.0%})")
    print(f"refused with a message        {kinds['refused']}")
    print(f"plan refused by verification  {kinds['objected']}")
    print(f"crashed                       {kinds['crashed']}")
    print(f"findings by code, jobs        {', '.join(f'{code} {n}' for code, n in sorted(codes.items()))}")
    times = [found.seconds for found in outcomes]
    print(f"seconds a job                 median {median(times):.2f}, longest {max(times):.2f}")


if __name__ == "__main__":
    sys.exit(main())
