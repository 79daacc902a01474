"""An order and a price for a plan by a price book."""

import hashlib
import json
from collections.abc import Iterator, Sequence
from datetime import date

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.plan import Plan
from firstcourse.pricing.book import PriceBook
from firstcourse.pricing.hours import tasks
from firstcourse.pricing.load import load, way_in
from firstcourse.pricing.offer import Offer, OrderLine
from firstcourse.pricing.order import order
from firstcourse.pricing.total import price_steps
from firstcourse.pricing.work import work
from firstcourse.values import Name


def offer(plan: Plan, document: str, book: PriceBook) -> Offer:
    """An order and a price.

    Args:
        plan: A verified plan.
        document: Its plan.json.
        book: Prices, rates and all else that money needs.

    Raises:
        InputValueError: The book's currency is not the job's, or a price does not go with what the plan counts.
    """
    if plan.job.currency and plan.job.currency != book.book.currency:
        raise InputValueError(
            f"the price book is in {book.book.currency} and the job in {plan.job.currency}; give both in one"
        )
    lines = order(plan, book)
    carried = load(plan, lines, book)
    done, without = tasks(work(plan, carried.kg), book)
    steps, price, total = price_steps(lines, done, carried, book)
    unpriced = tuple(line.item for line in lines if not line.bought)
    return Offer(
        plan=hashlib.sha256(document.encode()).hexdigest(),
        on=plan.job.date,
        currency=book.book.currency,
        digest=seal(book),
        book=book,
        order=lines,
        load=carried,
        tasks=done,
        steps=steps,
        findings=(*_stale(lines, plan.job.date, book), *_missing(unpriced, without), *way_in(plan, book)),
        complete=not unpriced and not without,
        price=price,
        total=total,
    )


def seal(book: PriceBook) -> str:
    """SHA-256 of a price book as JSON, keys sorted, without spaces."""
    values = book.model_dump(mode="json")
    text = json.dumps(values, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return hashlib.sha256(text.encode()).hexdigest()


def _stale(lines: Sequence[OrderLine], on: str, book: PriceBook) -> Iterator[Finding]:
    """Prices that rest on a quote which does not hold on the day of the plan."""
    day = date.fromisoformat(on)
    for line in lines:
        used = {(one.supplier, one.holds) for one in line.bought}
        rows = [one for one in book.materials if one.item == line.item and (one.supplier, one.holds) in used]
        for supplier in sorted({one.supplier for one in rows}):
            own = [one for one in rows if one.supplier == supplier]
            last = min(one.valid_until for one in own)
            if last < day:
                oldest = next(one for one in own if one.valid_until == last)
                yield Finding(
                    code="PRI-101",
                    severity=Severity.FIX,
                    at=(line.item,),
                    remedies=("ask",),
                    values={
                        "supplier": Name(name=supplier),
                        "by": Name(name=oldest.quoted_by),
                        "quoted": Name(name=oldest.quoted_on.isoformat()),
                        "until": Name(name=last.isoformat()),
                    },
                )


def _missing(unpriced: Sequence[str], without: Sequence[str]) -> Iterator[Finding]:
    for item in unpriced:
        yield Finding(code="PRI-102", severity=Severity.FIX, at=(item,), remedies=("price",))
    for task in without:
        yield Finding(
            code="PRI-103",
            severity=Severity.FIX,
            at=("job",),
            remedies=("rate",),
            values={"task": Name(name=task)},
        )
