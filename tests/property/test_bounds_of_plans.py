"""The bound over every layout on real surfaces: never above what any layout takes, whatever the room."""

import random
from itertools import product
from pathlib import Path

import pytest
from test_seams_and_cuts import room_job
from test_whole_jobs import ROOMS

from firstcourse.boards import build_layout, layout_alternatives, open_stacks
from firstcourse.boards.stacks import OpenCourse
from firstcourse.cutting import StockSize
from firstcourse.job import Job, read_job, read_job_text
from firstcourse.plan import Surface
from firstcourse.rules import load_rules
from firstcourse.sheets.bounds import field_bound, least_price
from firstcourse.sheets.cut import allowed_stock, job_stock
from firstcourse.steps import plan_job
from firstcourse.survey import survey_job
from firstcourse.units import TICKS_PER_MM

EXAMPLES = Path(__file__).parents[2] / "examples"
TRIES = 4
"""Random layouts of each surface."""


def random_breaks(course: OpenCourse, rng: random.Random) -> tuple[int, ...]:
    """A random legal way from the first edge to the last, by many seams as often as by few."""
    last = len(course.edges) - 1
    steps: dict[int, list[int]] = {}
    for start, end, _ in course.boards:
        steps.setdefault(start, []).append(end)
    leads = {last}
    for start in sorted(steps, reverse=True):
        if any(end in leads for end in steps[start]):
            leads.add(start)
    shortest = rng.random() < 0.5
    path = [0]
    while path[-1] != last:
        choices = [end for end in steps[path[-1]] if end in leads]
        path.append(min(choices) if shortest else rng.choice(choices))
    return tuple(path)


def checked(job: Job, seed: int) -> int:
    """Lay every surface in random ways that keep every rule; the number of layouts that were compared."""
    rng = random.Random(seed)
    rules = load_rules(job.date, job.practice, ())
    by_kind = job_stock(job, rules)
    compared = 0
    for surface in survey_job(job, rules).surfaces:
        stock = allowed_stock(surface, by_kind)
        stacks = open_stacks(surface, stock, rules, job.tape)
        layouts = [
            build_layout(surface, choice, stock, rules, job.tape)
            for choice in layout_alternatives(surface, stock, rules, job.tape)[:4]
        ]
        for _ in range(TRIES if stacks else 0):
            stack = rng.choice(stacks)
            largest = max(stock, key=lambda sheet: sheet.size[0] * sheet.size[1])
            choice = stack.choice(largest.id, tuple(random_breaks(course, rng) for course in stack.courses))
            layouts.append(build_layout(surface, choice, stock, rules, job.tape))
        for layout in layouts:
            if not layout.boards:
                continue
            laid: Surface = surface.model_copy(
                update={"boards": layout.boards, "supports": (*surface.supports, *layout.added_supports)}
            )
            bound = field_bound(laid, max(max(s.size) for s in stock), layout.findings, rules, job.tape)
            cut = sum(piece.blank[0] * piece.blank[1] for piece in layout.pieces) / TICKS_PER_MM**2
            assert bound.least <= cut, (surface.id, bound, cut)
            compared += 1
    return compared


@pytest.mark.parametrize("name", sorted(path.parent.name for path in EXAMPLES.glob("*/job.yaml")))
def test_no_random_layout_of_an_example_takes_less_board(name: str) -> None:
    assert checked(read_job(EXAMPLES / name / "job.yaml"), 1) > 0


@pytest.mark.parametrize("seed", [3, 7, 92])
def test_no_random_layout_of_a_random_room_takes_less_board(seed: int) -> None:
    assert checked(read_job_text(ROOMS.document(seed)), seed) > 0


@pytest.mark.parametrize(("seed", "stocks", "offcuts"), [(1, 1, 0), (2, 2, 1)])
def test_the_bound_is_no_more_than_any_plan_takes(seed: int, stocks: int, offcuts: int) -> None:
    job = room_job(seed, stocks=stocks, offcuts=offcuts)
    plans = [plan_job(job, effort=effort).plan for effort in (0, 1)]
    for bounds in zip(*(plan.bounds for plan in plans), strict=True):
        assert max(bound.lower_bound for bound in bounds) <= min(bound.used for bound in bounds)
        costs, least = [bound.cost for bound in bounds], [bound.least_cost for bound in bounds]
        assert None not in costs and None not in least
        assert max(cost or 0 for cost in least) <= min(cost or 0 for cost in costs)


@pytest.mark.parametrize("area", [0, 1, 40, 61, 100, 129])
def test_no_mix_of_sheets_of_that_area_costs_less(area: int) -> None:
    sizes = [StockSize("small", 3, 5, 14), StockSize("large", 4, 8, 33), StockSize("odd", 4, 3, 11)]
    mixes = product(range(12), repeat=3)
    costs = [
        sum(number * size.cost for number, size in zip(mix, sizes, strict=True))
        for mix in mixes
        if sum(number * size.w * size.h for number, size in zip(mix, sizes, strict=True)) >= area
    ]
    cost, mix = least_price(area, sizes)
    assert cost == min(costs)
    by_name = {size.id: size for size in sizes}
    assert sum(by_name[name].cost * number for name, number in mix.items()) == cost
    assert sum(by_name[name].w * by_name[name].h * number for name, number in mix.items()) >= area
