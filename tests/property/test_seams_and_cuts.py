"""Seams and cuts chosen together on small random rooms: what must hold whatever the room.

More effort never costs more, nor does another sheet to choose from or an offcut at hand; plain practice that keeps
the rules is never cheaper; and every plan made so verifies.
"""

import random
from typing import Any

import pytest
import yaml

from firstcourse.app.processes import Processes
from firstcourse.boards import practice_layout
from firstcourse.job import Job, read_job_text
from firstcourse.plan import SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.share import in_turn
from firstcourse.sheets.cut import allowed_stock, cut_pieces, job_stock
from firstcourse.sheets.seams import Boarded, board, demand
from firstcourse.sheets.together import Surfaced
from firstcourse.steps import plan_job
from firstcourse.survey import survey_job

SIZES = (("36 in", "60 in", 14), ("48 in", "96 in", 33), ("32 in", "48 in", 11))


def room_job(seed: int, *, stocks: int = 1, offcuts: int = 0) -> Job:
    """A small room with its floor and two walls, alike for a seed whatever there is to cut from."""
    rng = random.Random(seed)
    wide, long, high = (rng.randint(low * 16, high * 16) for low, high in ((40, 70), (50, 90), (60, 90)))
    offcut_size = [f"{rng.randint(12, 36)} in", f"{rng.randint(24, 60)} in"]

    def inches(sixteenths: int) -> str:
        return f"{sixteenths // 16} {sixteenths % 16}/16 in"

    diagonal = inches(round((wide**2 + long**2) ** 0.5))
    walls = [
        {"wall": name, "framing": {"spacing": "16 in", "first": inches(rng.randint(32, 256))}}
        for name in ("A-B", "B-C")
    ]
    room = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": inches(wide), "B-C": inches(long), "C-D": inches(wide), "D-A": inches(long)},
        "diagonals": {"A-C": diagonal, "B-D": diagonal},
        "heights": {corner: inches(high) for corner in "ABCD"},
        "floor": {"framing": {"parallel_to": "A-B", "spacing": "16 in", "first": "15 in"}},
        "walls": walls,
    }
    job: dict[str, Any] = {"name": f"room {seed}", "date": "2026-11-25", "tape": "inch", "rooms": [room]}
    job["stock"] = [
        {"id": f"board {a} x {b}", "size": [a, b], "thickness": "1/2 in", "price": price}
        for a, b, price in SIZES[:stocks]
    ]
    job["offcuts"] = [
        {"id": f"rack {n}", "stock": "board 36 in x 60 in", "size": offcut_size} for n in range(offcuts)
    ]
    return read_job_text(yaml.safe_dump(job))


def surfaces_of(job: Job) -> tuple[Surfaced, ...]:
    rules = load_rules(job.date, job.practice, ())
    by_kind = job_stock(job, rules)
    return tuple(
        Surfaced(surface, f"S{n}", allowed_stock(surface, by_kind))
        for n, surface in enumerate(survey_job(job, rules).surfaces)
    )


def boarded(job: Job, effort: int) -> Boarded:
    rules = load_rules(job.date, job.practice, ())
    by_kind = job_stock(job, rules)
    stock = tuple({item.id: item for kind in SurfaceKind for item in by_kind[kind]}.values())
    return board(surfaces_of(job), stock, job, rules, effort=effort)


def num_findings(found: Boarded) -> int:
    return sum(len(layout.findings) for layout in found.layouts)


@pytest.mark.parametrize("seed", range(1, 3))
def test_more_effort_never_costs_more(seed: int) -> None:
    job = room_job(seed)
    costs = [boarded(job, effort).cutting.cost for effort in (0, 1, 2)]
    assert costs == sorted(costs, reverse=True)


@pytest.mark.parametrize(("seed", "effort"), [(1, 0), (2, 0), (3, 0), (4, 0), (1, 1), (6, 1)])
def test_another_stock_never_costs_more(seed: int, effort: int) -> None:
    few, more = (boarded(room_job(seed, stocks=stocks), effort) for stocks in (1, 2))
    assert num_findings(more) <= num_findings(few)
    if num_findings(more) == num_findings(few):
        assert more.cutting.cost <= few.cutting.cost


@pytest.mark.parametrize(("seed", "effort"), [(1, 0), (2, 0), (3, 0), (4, 0), (1, 1), (5, 1)])
def test_an_offcut_at_hand_never_costs_more(seed: int, effort: int) -> None:
    without, with_one = (boarded(room_job(seed, offcuts=offcuts), effort) for offcuts in (0, 1))
    assert with_one.cutting.cost <= without.cutting.cost


@pytest.mark.parametrize("seed", range(1, 9))
def test_practice_that_keeps_the_rules_is_never_cheaper(seed: int) -> None:
    job = room_job(seed, stocks=2)
    rules, items = load_rules(job.date, job.practice, ()), surfaces_of(job)
    found = boarded(job, 0)
    layouts = [practice_layout(i.surface, i.stock, rules, job.tape, mark=i.mark) for i in items]
    if sum(len(layout.findings) for layout in layouts) <= num_findings(found):
        stock = tuple({s.id: s for item in items for s in item.stock}.values())
        practice = cut_pieces(*demand(items, layouts), stock, job, effort=0)
        assert found.cutting.cost <= practice.cost


def rooms_job(*seeds: int) -> Job:
    """Several small rooms that share sheets."""
    jobs = [room_job(seed) for seed in seeds]
    rooms = tuple(
        job.rooms[0].model_copy(update={"name": f"room {seed}"}) for seed, job in zip(seeds, jobs, strict=True)
    )
    return jobs[0].model_copy(update={"rooms": rooms})


@pytest.mark.parametrize("first", [1, 8, 13])
def test_practice_over_several_rooms_is_never_cheaper(first: int) -> None:
    job = rooms_job(*range(first, first + 3))
    rules, items = load_rules(job.date, job.practice, ()), surfaces_of(job)
    found = boarded(job, 0)
    layouts = [practice_layout(i.surface, i.stock, rules, job.tape, mark=i.mark) for i in items]
    mixed = [
        practice if len(practice.findings) <= len(own.findings) else own
        for practice, own in zip(layouts, found.layouts, strict=True)
    ]
    practice = cut_pieces(*demand(items, mixed), items[0].stock, job, effort=0)
    assert found.cutting.cost <= practice.cost


def test_processes_change_nothing() -> None:
    job = room_job(1)
    two = job.model_copy(update={"rooms": (job.rooms[0], job.rooms[0].model_copy(update={"name": "other"}))})
    rules, items = load_rules(job.date, job.practice, ()), surfaces_of(two)
    stock = items[0].stock
    alone, shared = (
        board(items, stock, two, rules, effort=1, share=share) for share in (in_turn, Processes(2, least=2))
    )
    assert alone == shared


@pytest.mark.parametrize("seed", range(1, 3))
def test_every_plan_verifies(seed: int) -> None:
    # A plan that does not verify is refused by the planner itself.
    assert plan_job(room_job(seed, stocks=2, offcuts=1), effort=1).plan.sheets
