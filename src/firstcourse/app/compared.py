"""Plan, verify and price the alternatives of a job, and put them side by side."""

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from firstcourse.alternatives import (
    LARGEST_BYTES,
    Alternative,
    Change,
    Comparison,
    Tried,
    comparison,
    read_alternatives,
)
from firstcourse.app.files import COMPARISON
from firstcourse.app.pricing import price_document, priced
from firstcourse.errors import InputProblem, InputValueError, JobError, PlanRefusedError
from firstcourse.files import read_file
from firstcourse.papers.compare_page import compare_page, compare_paper
from firstcourse.papers.pages import PAGE_SIZES
from firstcourse.papers.papers import Paper
from firstcourse.pricing import Offer, PriceBook
from firstcourse.steps import PlanResult
from firstcourse.verify import verify_comparison
from firstcourse.words import Speaker, speaker_for


class Compared(NamedTuple):
    """A comparison with what it compares: by its rows, each plan and its price; None where there is none."""

    comparison: Comparison
    plans: tuple[tuple[PlanResult, Offer | None] | None, ...]


def alternatives(path: Path | str) -> tuple[Alternative, ...]:
    """Read alternatives from a file (YAML or JSON).

    Raises:
        JobError: It cannot be read, or names fewer than two or more than six alternatives.
    """
    try:
        data = read_file(Path(path), most_bytes=LARGEST_BYTES, what="a list of alternatives")
    except InputValueError as error:
        raise JobError((InputProblem(file=str(path), line=0, column=0, field="", message=str(error)),)) from None
    return read_alternatives(data, str(path))


def compared(
    planned: Callable[[Sequence[Change]], PlanResult], asked: Sequence[Alternative], book: PriceBook | None
) -> Compared:
    """Alternatives side by side, the table proved again from the plans.

    Args:
        planned: Plans the job with some fields changed.
        asked: The alternatives.
        book: Prices, where there are any.

    Raises:
        JobError: The job as it stands cannot be planned.
        PlanRefusedError: The table does not follow from the plans; this is our fault.
    """
    base = planned(())
    plans: list[tuple[PlanResult, Offer | None] | None] = [(base, priced(base, book) if book else None)]
    problems = [""]
    for one in asked:
        try:
            found = planned(one.changes)
            plans.append((found, priced(found, book) if book else None))
            problems.append("")
        except (JobError, InputValueError) as error:
            plans.append(None)
            problems.append(str(error))
    names: list[tuple[str, tuple[Change, ...]]] = [("", ()), *((one.name, one.changes) for one in asked)]
    tried = [
        Tried(name, changes, problem=problem)
        if plan is None
        else Tried(name, changes, plan[0].plan, plan[0].document, plan[1], _price(plan[1]))
        for (name, changes), plan, problem in zip(names, plans, problems, strict=True)
    ]
    made = comparison(base.plan.job.name, tried)
    texts = [None if plan is None else (plan[0].document, _price(plan[1])) for plan in plans]
    objections = verify_comparison(made.model_dump_json(), texts)
    if objections:
        raise PlanRefusedError(tuple(f"{one.code} {one.where}: {one.message}" for one in objections))
    return Compared(made, tuple(plans))


def _price(offer: Offer | None) -> str:
    return "" if offer is None else price_document(offer)


def compared_lines(made: Compared) -> list[str]:
    """What the terminal says of a comparison."""
    page = compare_page(made.comparison, _speaker(made))
    rows = [" | ".join(cell or "–" for cell in row) for row in (page["heads"], *page["rows"])]
    told = [page["title"], *([page["invented"]] if page["invented"] else []), ""]
    return [*told, *(f"  {row}" for row in rows), "", *page["best"], *page["notes"], *page["problems"]]


def _speaker(made: Compared) -> Speaker:
    assert made.plans[0] is not None
    return speaker_for(made.plans[0][0].plan)


def comparison_papers(made: Compared) -> Iterator[Paper]:
    """The comparison as data and on paper, with the plans it is of: plan-0.json is the job as it stands."""
    yield Paper(COMPARISON, (made.comparison.model_dump_json(indent=1) + "\n").encode())
    for number, plan in enumerate(made.plans):
        if plan is not None:
            yield Paper(f"plan-{number}.json", plan[0].document.encode())
            if plan[1] is not None:
                yield Paper(f"price-{number}.json", price_document(plan[1]).encode())
    speaker = _speaker(made)
    for size in PAGE_SIZES:
        yield Paper(f"compare-{size}.pdf", compare_paper(size, made.comparison, speaker))
