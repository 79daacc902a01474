"""The order and the price on paper: packs by supplier, cut lists, what is carried, hours, and the total."""

import math
from collections.abc import Iterator, Mapping, Sequence
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from firstcourse.findings import Finding
from firstcourse.papers.pages import HERE, PAGE_SIZES, Paper
from firstcourse.plan import Plan, Quantity
from firstcourse.pricing import Offer
from firstcourse.pricing.offer import OrderLine, Packs, Step
from firstcourse.values import Word, measure
from firstcourse.words import Speaker, buying

_WAY_IN = "PRI-104"
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
    return _compiled(paper, order_page(plan, offer, speaker), offer.findings, plan, speaker)


def supply_paper(paper: Paper, plan: Plan, offer: Offer, speaker: Speaker) -> bytes:
    """The order without prices as a PDF; for what the arguments are see `order_paper`."""
    return _compiled(paper, supply_page(plan, offer, speaker), way_in_of(offer), plan, speaker)


def way_in_of(offer: Offer) -> tuple[Finding, ...]:
    """What an order has to say that is no matter of prices."""
    return tuple(one for one in offer.findings if one.code == _WAY_IN)


def _compiled(
    paper: Paper, page: Mapping[str, Any], findings: Sequence[Finding], plan: Plan, speaker: Speaker
) -> bytes:
    said = [f"{one.code} {one.where}: {one.message} {one.remedy}".rstrip() for one in speaker.findings(findings)]
    data = {"paper": PAGE_SIZES[paper], "tongue": speaker.tongue, "job": plan.job.name, "findings": said}
    return HERE.compiled(("order.typ",), {**data, **speaker.fields(page)})


def order_page(plan: Plan, offer: Offer, speaker: Speaker) -> dict[str, Any]:
    """What the paper and the terminal print: a title, cautions, and tables with their heads and rows.

    Args:
        plan: The plan that was priced.
        offer: Its order and price.
        speaker: In whose words and units it is said.
    """
    say = speaker.text
    tables = [
        *(
            _table("order", speaker, rows, title=say("price-order", supplier=supplier))
            for supplier, rows in _orders(plan, offer, speaker)
        ),
        _table("cuts", speaker, list(_cuts(plan, offer, speaker))),
        _table("carried", speaker, [[line] for line in _carried(plan, offer, speaker)]),
        _table("hours", speaker, list(_hours(offer, speaker)), note=_sources(offer, speaker)),
        _table("working", speaker, [_step(one, offer, speaker) for one in offer.steps]),
    ]
    return {
        "title": say("price-title", job=plan.job.name, book=offer.book.book.name, currency=offer.currency),
        "invented": say("price-invented") if offer.book.is_invented else "",
        "tables": [table for table in tables if table["rows"]],
        "incomplete": "" if offer.complete else say("price-incomplete"),
    }


def supply_page(plan: Plan, offer: Offer, speaker: Speaker) -> dict[str, Any]:
    """What a supplier may see: packs, cut lists and what is carried, without money or hours.

    What nobody's packs are in the book for is listed in the packs that the plan counts in.

    Args:
        plan: The plan that is ordered.
        offer: Its order.
        speaker: In whose words and units it is said.
    """
    say = speaker.text
    without = [line for line in offer.order if not line.bought]
    open_rows = [_open_row(plan, line, speaker) for line in without if _quantity(plan, line).buy]
    carried = list(_carried(plan, offer, speaker)) if len(without) < len(offer.order) else []
    if plan.schedule is not None and plan.schedule.tile_by:
        carried.append(say("schedule-labels", "tile_by", text=plan.schedule.tile_by))
    tables = [
        *(
            _table("supply", speaker, [row[:-2] for row in rows], title=say("price-order", supplier=supplier))
            for supplier, rows in _orders(plan, offer, speaker)
        ),
        _table("supply", speaker, open_rows, title=say("price-open")),
        _table("cuts", speaker, list(_cuts(plan, offer, speaker))),
        _table("carried", speaker, [[line] for line in carried]),
    ]
    return {
        "title": say("price-supply_title", job=plan.job.name),
        "invented": say("price-invented") if offer.book.book.invented else "",
        "tables": [table for table in tables if table["rows"]],
        "incomplete": "",
    }


def _open_row(plan: Plan, line: OrderLine, speaker: Speaker) -> list[str]:
    """A line that nobody in the book sells: the plan's own packs."""
    quantity = _quantity(plan, line)
    return [
        "\n".join((_named(plan, line, speaker), *_notes(line, speaker))),
        *(_much(amount, line.unit, speaker) for amount in (line.exact, line.breakage, line.spares)),
        speaker.text("price-packs", packs=quantity.buy, holds=speaker.words(speaker.quantity(quantity).pack)),
    ]


def _quantity(plan: Plan, line: OrderLine) -> Quantity:
    return next(one for one in plan.quantities if one.item == line.item)


def _table(kind: str, speaker: Speaker, rows: Rows, *, title: str = "", note: str = "") -> dict[str, Any]:
    heads = list(speaker.labels(f"price-{kind}_heads").values()) if kind != "carried" else []
    return {
        "kind": kind,
        "title": title or speaker.text(f"price-{kind}"),
        "heads": heads,
        "rows": rows,
        "note": note,
    }


def money_text(amount: Decimal) -> str:
    """An amount in whole cents, half a cent up."""
    return f"{amount.quantize(_CENT, ROUND_HALF_UP):,.2f}"


def _named(plan: Plan, line: OrderLine, speaker: Speaker) -> str:
    return speaker.words(speaker.quantity(_quantity(plan, line)).item)


def _much(amount: Decimal, unit: str, speaker: Speaker) -> str:
    """How much, in the reader's unit, rounded up; a dash for nothing."""
    value, name = buying.amount(float(amount), unit, speaker.tape)
    if not value:
        return "–"
    if unit in _COUNTED:
        whole = math.ceil(value - _CLOSE)
        return f"{whole:,} {speaker.text(f'quantities-unit-{unit}', number=whole)}"
    step = 10 ** (math.floor(math.log10(value)) - 2) if value < 100 else 1.0
    up = math.ceil(value / step - _CLOSE) * step
    return f"{up:.3g} {name}" if value < 100 else f"{up:,.0f} {name}"


def _holds(one: Packs, unit: str, speaker: Speaker) -> str:
    """What one pack holds, as its label has it."""
    value, name = buying.amount(float(one.holds), unit, speaker.tape)
    named = speaker.text(f"quantities-unit-{unit}", number=value) if unit in _COUNTED else name
    return f"{value:,.4g} {named}"


_COUNTED = ("sheet", "fastener", "tile", "chip", "spacer", "piece")
_CLOSE = 1e-6
"""What floating point may leave over a whole number is not rounded up."""


def _orders(plan: Plan, offer: Offer, speaker: Speaker) -> Iterator[tuple[str, Rows]]:
    suppliers = sorted({packs.supplier for line in offer.order for packs in line.bought})
    for supplier in suppliers:
        rows = []
        for line in offer.order:
            own = [one for one in line.bought if one.supplier == supplier]
            rows += [_row(plan, line, one, speaker, first=one is own[0]) for one in own]
        yield supplier, rows


def _row(plan: Plan, line: OrderLine, one: Packs, speaker: Speaker, *, first: bool) -> list[str]:
    """A line of the order; what is bought in packs of two sizes has its needs in the first."""
    needs = (line.exact, line.breakage, line.spares)
    return [
        "\n".join((_named(plan, line, speaker), *_notes(line, speaker))) if first else "",
        *(_much(amount, line.unit, speaker) if first else "" for amount in needs),
        speaker.text("price-packs", packs=one.packs, holds=_holds(one, line.unit, speaker)),
        money_text(one.each),
        money_text(one.cost),
    ]


def _notes(line: OrderLine, speaker: Speaker) -> Iterator[str]:
    if line.one_lot:
        yield speaker.text("price-one_lot")
    if line.thumb is not None:
        yield speaker.text("price-thumb", straight=line.thumb[0], diagonal=line.thumb[1])


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
        much = float(task.amount) * one
        named = speaker.text(f"price-unit-{unit}", number=much) if unit in _DONE else unit
        yield [
            speaker.text(f"price-task-{task.task}"),
            f"{much:,.0f} {named}" if unit in _DONE or much >= 100 else f"{much:,.3g} {named}",
            f"{60 * float(task.rate) / one:,.3g} ± {60 * float(task.spread) / one:,.2g} min",
            str(task.jobs),
            speaker.text(f"price-basis-{task.basis}"),
            f"{task.hours:.2f}",
            money_text(task.each),
            money_text(task.cost),
        ]


_DONE = ("room", "board", "fastener", "hole", "notch", "tile")
"""Units of work that are counted."""


def _sources(offer: Offer, speaker: Speaker) -> str:
    """Where the rates come from, each source with its tasks; of one source alone no task is named."""
    found: dict[str, list[str]] = {}
    for task in offer.tasks:
        source = f"{speaker.text(f'price-basis-{task.basis}')}: {task.source}"
        found.setdefault(source, []).append(speaker.text(f"price-task-{task.task}"))
    told = (
        list(found) if len(found) == 1 else [f"{source} ({', '.join(named)})" for source, named in found.items()]
    )
    return speaker.text("price-sources", sources="; ".join(told))


def _step(step: Step, offer: Offer, speaker: Speaker) -> list[str]:
    values = {name: money_text(value) for name, value in step.inputs.items() if name.isidentifier()}
    name = speaker.text(step.formula, of=step.of)
    how = speaker.text(step.formula, "formula", of=step.of, **values)
    return [name, how, money_text(step.result)]
