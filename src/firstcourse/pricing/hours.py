"""Hours of each task: the book's rate, moved by the hours that were kept on finished jobs."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from firstcourse.pricing.book import Done, PriceBook, Rate
from firstcourse.pricing.offer import Task, figures
from firstcourse.pricing.work import Work

_SHAPE = 2.0
"""Shape of the prior of the variance: as much as four jobs say of how rates differ."""
_HUNDREDTH = Decimal("0.01")


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """A rate after finished jobs: its mean, and the standard deviation of one more job's rate [h per unit]."""

    mean: float
    spread: float
    jobs: int


def learned(rate: Rate, done: Sequence[Done]) -> Learned:
    """The rate of a task after finished jobs.

    Rates of jobs are taken as normal with unknown mean and variance; the prior is normal-inverse-gamma with the
    book's rate as its mean, worth so many jobs, and the book's spread as the spread of one more job.

    Args:
        rate: As the book has it.
        done: Finished jobs of the same task.

    References:
        Normal-inverse-gamma posterior: Murphy, Conjugate Bayesian analysis of the Gaussian distribution (2007),
        section 6 (from memory).
    """
    mean, worth = float(rate.hours), float(rate.worth)
    scale = (float(rate.spread) / 100 * mean) ** 2 * worth / (worth + 1) * (_SHAPE - 1)
    rates = [float(one.hours) / float(one.amount) for one in done]
    count = len(rates)
    if count:
        average = math.fsum(rates) / count
        scale += math.fsum((one - average) ** 2 for one in rates) / 2
        scale += worth * count * (average - mean) ** 2 / (2 * (worth + count))
        mean = (worth * mean + math.fsum(rates)) / (worth + count)
    worth += count
    variance = scale * (worth + 1) / (worth * (_SHAPE + count / 2 - 1))
    return Learned(mean=mean, spread=math.sqrt(variance), jobs=count)


def tasks(amounts: Work, book: PriceBook) -> tuple[tuple[Task, ...], tuple[str, ...]]:
    """Tasks with their hours and cost, and the names of those that have no rate or no price of an hour.

    Args:
        amounts: How much of each task there is.
        book: Rates, finished jobs, and what an hour costs.
    """
    rates = {one.task: one for one in book.rates}
    each = {one.task: one.price for one in book.labour}
    found, without = [], []
    for task, (amount, unit) in amounts.items():
        price = each.get(task, each.get("any"))
        if task not in rates or price is None:
            without.append(task)
            continue
        now = learned(rates[task], [one for one in book.done if one.task == task])
        mean = figures(now.mean)
        hours = (amount * mean).quantize(_HUNDREDTH, ROUND_HALF_UP)
        found.append(
            Task(
                task=task,
                amount=amount,
                unit=unit,
                rate=mean,
                spread=figures(now.spread),
                jobs=now.jobs,
                basis=rates[task].basis,
                source=rates[task].source,
                hours=hours,
                each=price,
                cost=hours * price,
            )
        )
    return tuple(found), tuple(without)
