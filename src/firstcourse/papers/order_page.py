"""The order and the price on paper: packs by supplier, cut lists, what is carried, hours, and the total."""

from collections.abc import Iterator
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from firstcourse.papers.pages import HERE, PAGE_SIZES, Paper
from firstcourse.plan import Plan
from firstcourse.pricing import Offer
from firstcourse.pricing.offer import OrderLine, Packs, Step
from firstcourse.values import Word, measure
from firstcourse.words import Speaker, buying

_CENT = Decimal("0.01")
Rows = list[list[str]]


def order_paper(paper: Paper, plan: Plan, offer: Offer, speaker: Speaker) -> bytes:
    """The order and the price as a PDF.

    Args:
        paper: Page size.
        plan: The plan that was priced.
        offer: Its order and price.
        speaker: In whose words and units it is printed.
    """
    said = [
        f"{one.code} {one.where}: {one.message} {one.remedy}".rstrip() for one in speaker.findings(offer.findings)
    ]
    data = {"paper": PAGE_SIZES[paper], "tongue": speaker.tongue, "job": plan.job.name, "findings": said}
    return HERE.compiled(("order.typ",), {**data, **speaker.fields(order_page(plan, offer, speaker))})


def order_page(plan: Plan, offer: Offer, speaker: Speaker) -> dict[str, Any]:
    """What the paper and the terminal print: a title, cautions, and tables with their heads and rows.

    Args:
        plan: The plan that was priced.
        offer: Its order and price.
        speaker: In whose words and units it is said.
    """
    invented = any(rate.basis == "invented" for rate in offer.book.rates)
    say = speaker.text
    tables = [
        *(
            _table(say("price-order", supplier=supplier), _heads(speaker, "order"), rows)
            for supplier, rows in _orders(plan, offer, speaker)
        ),
        _table(say("price-cuts"), _heads(speaker, "cut"), list(_cuts(plan, offer, speaker))),
        _table(say("price-carried"), [], [[line] for line in _carried(plan, offer, speaker)]),
        _table(say("price-hours"), _heads(speaker, "hours"), list(_hours(offer, speaker))),
        _table(
            say("price-working"), _heads(speaker, "working"), [_step(one, offer, speaker) for one in offer.steps]
        ),
    ]
    return {
        "title": say("price-title", job=plan.job.name, book=offer.book.book.name, currency=offer.currency),
        "invented": say("price-invented") if invented else "",
        "tables": [table for table in tables if table["rows"]],
        "incomplete": "" if offer.complete else say("price-incomplete"),
    }


def _table(title: str, heads: list[str], rows: Rows) -> dict[str, Any]:
    return {"title": title, "heads": heads, "rows": rows}


def _heads(speaker: Speaker, table: str) -> list[str]:
    return list(speaker.labels(f"price-{table}_heads").values())


def _money(amount: Decimal) -> str:
    return f"{amount.quantize(_CENT, ROUND_HALF_UP):,.2f}"


def _named(plan: Plan, line: OrderLine, speaker: Speaker) -> str:
    quantity = next(one for one in plan.quantities if one.item == line.item)
    return speaker.words(speaker.quantity(quantity).item)


def _much(amount: Decimal, unit: str, speaker: Speaker) -> str:
    """How much, in the reader's unit."""
    value, name = buying.amount(float(amount), unit, speaker.tape)
    named = speaker.text(f"quantities-unit-{unit}", number=value) if unit in _COUNTED else name
    return f"{value:,.4g} {named}" if value < 1000 else f"{value:,.0f} {named}"


_COUNTED = ("sheet", "fastener", "tile", "chip", "spacer", "piece")


def _orders(plan: Plan, offer: Offer, speaker: Speaker) -> Iterator[tuple[str, Rows]]:
    suppliers = sorted({packs.supplier for line in offer.order for packs in line.bought})
    for supplier in suppliers:
        rows = []
        for line in offer.order:
            rows += [_row(plan, line, one, speaker) for one in line.bought if one.supplier == supplier]
        yield supplier, rows


def _row(plan: Plan, line: OrderLine, one: Packs, speaker: Speaker) -> list[str]:
    parts = [_much(amount, line.unit, speaker) for amount in (line.exact, line.breakage, line.spares)]
    thumb = (
        "" if line.thumb is None else speaker.text("price-thumb", straight=line.thumb[0], diagonal=line.thumb[1])
    )
    lot = speaker.text("price-one_lot") if line.one_lot else ""
    notes = [note for note in (lot, thumb) if note]
    return [
        _named(plan, line, speaker),
        speaker.text("price-need", exact=parts[0], breakage=parts[1], spares=parts[2]),
        speaker.text("price-packs", packs=one.packs, holds=_much(one.holds, line.unit, speaker)),
        _money(one.each),
        _money(one.cost),
        "; ".join(notes),
    ]


def _cuts(plan: Plan, offer: Offer, speaker: Speaker) -> Iterator[list[str]]:
    for line in offer.order:
        for number, cut in enumerate(line.cuts, start=1):
            pieces = [speaker.say(_length(piece, speaker)) for piece in cut.pieces]
            holds = _length(line.bought[0].holds, speaker)
            least = speaker.text("price-least", number=line.least or 0) if number == 1 else ""
            yield [_named(plan, line, speaker), f"{number}: {holds}", ", ".join(pieces), least]


def _length(mm: Decimal, speaker: Speaker) -> str:
    return speaker.text("price-length", length=measure(float(mm), "mm"))


def _carried(plan: Plan, offer: Offer, speaker: Speaker) -> Iterator[str]:
    load = offer.load
    yield speaker.text("price-mass", kg=measure(float(load.kg), "kg"))
    if load.unknown:
        unknown = [_named(plan, line, speaker) for line in offer.order if line.item in load.unknown]
        yield speaker.text("price-unknown", items=", ".join(unknown))
    if load.trips is not None:
        yield speaker.text("price-trips", trips=load.trips, steps=load.climbed or 0)
    waste = measure(float(load.waste_kg), "kg")
    yield speaker.text("price-waste", kg=waste, litres=f"{load.waste_litres:.1f}")
    if load.by:
        yield speaker.text("price-away", number=load.number, by=Word(word=load.by))


def _hours(offer: Offer, speaker: Speaker) -> Iterator[list[str]]:
    for task in offer.tasks:
        # The rate is said for the unit in which the amount is: pounds and feet, or kilograms and metres.
        lengths = task.unit == "m"
        one, unit = buying.amount(1000.0 if lengths else 1.0, "mm" if lengths else task.unit, speaker.tape)
        basis = speaker.text(f"price-basis-{task.basis}")
        yield [
            speaker.text("price-task", task=task.task.replace("_", " ")),
            f"{float(task.amount) * one:,.4g} {unit}",
            speaker.text(
                "price-rate",
                rate=f"{float(task.rate) / one:.3g}",
                spread=f"{float(task.spread) / one:.2g}",
                jobs=task.jobs,
            ),
            f"{basis}: {task.source}",
            f"{task.hours:.2f}",
            _money(task.each),
            _money(task.cost),
        ]


def _step(step: Step, offer: Offer, speaker: Speaker) -> list[str]:
    values = {name: _money(value) for name, value in step.inputs.items() if name.isidentifier()}
    name = speaker.text(step.formula, of=step.of)
    how = speaker.text(step.formula, "formula", of=step.of, **values)
    return [name, how, _money(step.result)]
