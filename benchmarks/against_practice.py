"""Stock that plans buy beside plain practice, on the examples and on random jobs, by effort.

    .venv/bin/python benchmarks/against_practice.py [--seed 1] [--count 30] [--effort 0 1]

Practice lays full sheets from a corner and cuts the rest as it comes; it is not held to the rules, the plan is.
Cost is by price, or by area where a sheet has none.
"""

import argparse
import time
from pathlib import Path

from random_rooms import random_job

from firstcourse.boards import practice_layout
from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.plan import SurfaceKind
from firstcourse.rules import Override, load_rules
from firstcourse.sheets.cut import allowed_stock, cut_pieces, job_stock
from firstcourse.sheets.seams import board, demand
from firstcourse.sheets.together import Surfaced
from firstcourse.survey import survey_job

EXAMPLES = Path(__file__).parents[1] / "examples"


def figures(text: str, efforts: list[int]) -> list[tuple[int, int, int, float]]:
    """Cost, sheets, cuts and processor seconds of practice, then of each effort; none where the job is refused."""
    try:
        job = read_job_text(text)
        rules = load_rules(
            job.date, job.practice, tuple(Override(rule=c.rule, value=c.value, reason=c.reason) for c in job.rules)
        )
        found = survey_job(job, rules).surfaces
    except JobError:
        return []
    by_kind = job_stock(job, rules)
    stock = tuple({item.id: item for kind in SurfaceKind for item in by_kind[kind]}.values())
    surfaces = tuple(Surfaced(s, f"S{n}", allowed_stock(s, by_kind)) for n, s in enumerate(found))
    layouts = [practice_layout(i.surface, i.stock, rules, job.tape, mark=i.mark) for i in surfaces]
    plans = [(cut_pieces(*demand(surfaces, layouts), stock, job, effort=0), 0.0)]
    for effort in efforts:
        began = time.process_time()
        cutting = board(surfaces, stock, job, rules, effort=effort).cutting
        plans.append((cutting, time.process_time() - began))
    return [
        (
            cutting.cost,
            sum(used.used for used in cutting.counts.values()),
            sum(len(s.cuts) for s in cutting.sheets),
            seconds,
        )
        for cutting, seconds in plans
    ]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=30)
    parser.add_argument("--effort", type=int, nargs="+", default=[0, 1])
    given = parser.parse_args()
    texts = [path.read_text(encoding="utf-8") for path in sorted(EXAMPLES.glob("*/job.yaml"))]
    texts += [random_job(seed) for seed in range(given.seed, given.seed + given.count)]
    rows = [row for text in texts if (row := figures(text, given.effort)) and row[0][0] > 0]
    print(
        "| plan | jobs | sheets | cuts | cost by practice's, mean | dearer | cheaper | processor s per job, mean |"
    )
    print("|---|---|---|---|---|---|---|---|")
    for column, name in enumerate(["practice", *(f"effort {effort}" for effort in given.effort)]):
        shares = [row[column][0] / row[0][0] for row in rows]
        sheets, cuts = (sum(row[column][figure] for row in rows) for figure in (1, 2))
        seconds = sum(row[column][3] for row in rows) / len(rows)
        dearer, cheaper = sum(share > 1 for share in shares), sum(share < 1 for share in shares)
        mean = sum(shares) / len(shares)
        print(f"| {name} | {len(rows)} | {sheets} | {cuts} | {mean:.3f} | {dearer} | {cheaper} | {seconds:.2f} |")


if __name__ == "__main__":
    main()
