"""Change job documents at random, plan each with papers, and count what becomes of them.

    python benchmarks/changed_jobs.py --seed 1 --count 500
    python benchmarks/changed_jobs.py --seed 1 --count 10000 --log changed.tsv

Copy number k is made from seed + k alone (`changing.py`), so any one of them is made again with
`--seed N --count 1 --show`. A copy is planned, or refused with a message (exit 2); a failure of ours (exit 3),
more than 60 s of processor or more than 1.5 GB is a fault, is listed with its seed, and the exit code is 1.

Each goes through the command `plan` in a process of its own, forked from one that has loaded the program, and
every plan is verified. As the papers take as long as the plan, only every third seed gets some: the site pack, in
letter and A4 by turns, and by turns the office pack, the workbook or all drawings; every twentieth seed gets all
papers, story poles at full size too.

With `--log` a line is added to that file for each copy: seed, commit, what became of it, seconds of processor, kB.
Seeds that stand there without a fault are passed over, so that a long run may be broken off and goes on.
"""

import argparse
import io
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

from changing import Changer, typed
from warm import MOST_CPU_S, MOST_MEMORY_KB, apart, warm_up

from firstcourse.app import papers
from firstcourse.cli import run
from firstcourse.drawings import draw_heights, draw_surface, draw_tiling, to_dxf, to_svg
from firstcourse.job import job_schema
from firstcourse.papers.office_pack import office_data, print_office_pack
from firstcourse.papers.papers import (
    OFFICE_PACK_A4,
    OFFICE_PACK_LETTER,
    SITE_PACK_A4,
    SITE_PACK_LETTER,
    SITE_PACK_PHONE,
    WORKBOOK,
    Paper,
    file_names,
)
from firstcourse.papers.phone_pack import phone_pack, plan_digest
from firstcourse.papers.site_pack import pack_data, print_pack
from firstcourse.papers.workbook import workbook
from firstcourse.plan import Plan

SOME_PAPERS_EVERY, ALL_PAPERS_EVERY = 3, 20
_ENDS = {0: "planned", 1: "planned, a finding stops the work", 2: "refused"}


def some_papers(plan: Plan, seed: int) -> Iterator[Paper]:
    """Nothing, or the site pack on one size of paper and one of the other kinds of paper."""
    if seed % SOME_PAPERS_EVERY:
        return
    even, turn = seed % 2 == 0, seed // SOME_PAPERS_EVERY % 3
    yield Paper(
        SITE_PACK_LETTER if even else SITE_PACK_A4, print_pack(pack_data(plan), "letter" if even else "a4")
    )
    if turn == 0:
        name = OFFICE_PACK_A4 if even else OFFICE_PACK_LETTER
        yield Paper(name, print_office_pack(office_data(plan), "a4" if even else "letter"))
    elif turn == 1:
        yield Paper(WORKBOOK, workbook(plan))
        yield Paper(SITE_PACK_PHONE, phone_pack(plan, digest=plan_digest(plan), drawn={}))
    else:
        yield from _drawings(plan)


def _drawings(plan: Plan) -> Iterator[Paper]:
    names = file_names([surface.id for surface in plan.surfaces])
    for surface, name in zip(plan.surfaces, names, strict=True):
        drawn = [draw_surface(plan, surface)] if surface.boarded else []
        drawn += [draw_tiling(plan, surface)] if surface.tiled else []
        drawn += [draw_heights(plan, surface)] if surface.heights else []
        for number, drawing in enumerate(drawn):
            yield Paper(f"{name}-{number}.svg", to_svg(drawing).encode())
            yield Paper(f"{name}-{number}.dxf", to_dxf(drawing).encode())


def planned(text: str, seed: int, folder: str) -> tuple[int, str]:
    """Run `plan` on a document: its exit code and what it said to the setter's error stream."""
    file = Path(folder, "job.yaml")
    file.write_text(text, encoding="utf-8")
    heard = io.StringIO()
    words = ["plan", str(file), "--out", str(Path(folder, "plan")), "--effort", "0"]
    if seed % ALL_PAPERS_EVERY == 0:
        words.append("--poles")
    else:
        papers.all_papers = lambda plan, *, poles=False: some_papers(plan, seed)
    with redirect_stdout(io.StringIO()), redirect_stderr(heard):
        code = run(words)
    if code == 2 and Path(folder, "plan").exists():
        return 71, "refused, and something was written"
    return code, heard.getvalue()


def outcome(text: str, seed: int) -> tuple[str, str, float, int]:
    """What became of a document: kind, what was said, processor time [s] and most memory [kB]."""
    ended = apart(lambda folder: planned(text, seed, folder))
    kind, said = _ENDS.get(ended.code, f"exit {ended.code}"), ended.said
    if ended.hung:
        kind = "ended, as it took too long or too much memory"
    elif ended.code < 0:
        kind = f"ended by signal {-ended.code}"
    elif ended.memory > MOST_MEMORY_KB:
        kind = "too much memory"
    elif ended.cpu > MOST_CPU_S:
        kind = "too much processor time"
    elif ended.code == 2 and (not said.strip() or "Traceback" in said):
        kind = "refused without a message"
    return kind, said, ended.cpu, ended.memory


def commit() -> str:
    """The commit of the program that runs, with a plus where files differ from it."""
    here = Path(__file__).parent
    name = subprocess.run(["git", "rev-parse", "--short", "HEAD"], cwd=here, capture_output=True, text=True).stdout
    changes = subprocess.run(
        ["git", "status", "--porcelain", "--", "../src", "."], cwd=here, capture_output=True, text=True
    ).stdout
    return name.strip() + ("+" if changes.strip() else "")


def done_before(log: Path | None) -> set[int]:
    """Seeds that stand in a log without a fault."""
    if log is None or not log.exists():
        return set()
    rows = [line.split("\t") for line in log.read_text(encoding="utf-8").splitlines()]
    return {int(row[0]) for row in rows if row[2] in _ENDS.values()}


def main() -> int:
    """Run the copies and print what became of them."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--log", type=Path, help="add a line for each copy, and pass over those that stand there")
    parser.add_argument("--show", action="store_true", help="print each document and what was said of it")
    options = parser.parse_args()
    changer, passed_over, version = Changer(job_schema()), done_before(options.log), commit()
    warm_up(typed(job) for job in changer.small)
    kinds: Counter[str] = Counter()
    most_cpu, most_memory, faults, began, cpu_in_all = (0.0, 0), (0, 0), 0, time.monotonic(), 0.0
    for seed in range(options.seed, options.seed + options.count):
        if seed in passed_over:
            continue
        text = typed(changer.job(seed))
        if options.show:
            print(text)
        kind, said, cpu, memory = outcome(text, seed)
        kinds[kind] += 1
        cpu_in_all += cpu
        most_cpu, most_memory = max(most_cpu, (cpu, seed)), max(most_memory, (memory, seed))
        if options.log:
            with options.log.open("a", encoding="utf-8") as log:
                log.write(f"{seed}\t{version}\t{kind}\t{cpu:.2f}\t{memory}\n")
        if kind not in _ENDS.values():
            faults += 1
            print(f"{seed}: {kind}: {said.strip()[:600]}", flush=True)
        elif options.show:
            print(kind, said)
    for kind, number in kinds.most_common():
        print(f"{number:6} {kind}")
    count = max(1, sum(kinds.values()))
    seconds = time.monotonic() - began
    print(
        f"longest {most_cpu[0]:.1f} s of processor (seed {most_cpu[1]}), {cpu_in_all / count:.2f} s a job; "
        f"most memory {most_memory[0] / 1000:,.0f} MB (seed {most_memory[1]}); {seconds:.0f} s in all"
    )
    return int(faults > 0)


if __name__ == "__main__":
    sys.exit(main())
