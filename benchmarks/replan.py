"""How long a session takes to plan again after a change, beside a plan from nothing.

    .venv/bin/python benchmarks/replan.py [--effort 0..3] [--moves N]

The example bathroom with a tub: planned, renamed, and its niche with the blocking round it moved N times to places
where it has not been. Without papers, verified each time; every plan is compared byte by byte with a plan from
nothing. Times are the median, of the wall clock and of the processor.
"""

import argparse
import statistics
import time
from collections.abc import Callable

import firstcourse
from firstcourse.steps.plan import PlanResult

NICHE = "openings[1].left", "blocking[1].left", "blocking[2].left"
RIGHT = "blocking[1].right", "blocking[2].right"
WIDTH_16THS = 29 * 8


def inches(sixteenths: int) -> str:
    whole, part = divmod(sixteenths, 16)
    return f"{whole} {part}/16 in" if part else f"{whole} in"


def moved(session: firstcourse.Session, left: int) -> None:
    """Move the niche and what frames it [1/16 in]."""
    for field in NICHE:
        session.edit(f"rooms[1].walls[1].{field}", inches(left))
    for field in RIGHT:
        session.edit(f"rooms[1].walls[1].{field}", inches(left + WIDTH_16THS))


def measured(plan: Callable[[], PlanResult]) -> tuple[float, float, PlanResult]:
    wall, used = time.perf_counter(), time.process_time()
    result = plan()
    return time.perf_counter() - wall, time.process_time() - used, result


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--effort", type=int, default=0)
    parser.add_argument("--moves", type=int, default=8)
    given = parser.parse_args()
    session = firstcourse.open(firstcourse.example_job("tub-bathroom"))
    session.plan(effort=given.effort)  # libraries are loaded by now
    rows: dict[str, list[tuple[float, float]]] = {"from nothing": [], "renamed": [], "niche moved": []}
    for number in range(given.moves):
        changes = (
            ("renamed", lambda number=number: session.edit("name", f"Bathroom {number}")),
            ("niche moved", lambda number=number: moved(session, 16 * 18 + 4 * (number + 1))),
        )
        for what, change in changes:
            change()
            wall, used, result = measured(lambda: session.plan(effort=given.effort))
            rows[what].append((wall, used))
            fresh = firstcourse.Session(session.text)
            wall, used, anew = measured(lambda fresh=fresh: fresh.plan(effort=given.effort))
            rows["from nothing"].append((wall, used))
            assert result.document == anew.document, f"{what}: other bytes than from nothing"
    print("| plan | wall clock [s] | processor [s] |\n|---|---|---|")
    for what, times in rows.items():
        wall, used = (statistics.median(column) for column in zip(*times, strict=True))
        print(f"| {what} | {wall:.2f} | {used:.2f} |")


if __name__ == "__main__":
    main()
