"""From costs to a price: contingency, overhead, profit and tax, each a step that can be redone by hand."""

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal, localcontext

from firstcourse.pricing.book import PriceBook
from firstcourse.pricing.offer import Load, OrderLine, Step, Task

CENT = Decimal("0.01")
_HUNDRED = Decimal(100)
_NONE = Decimal(0)


def cents(amount: Decimal) -> Decimal:
    """An amount in whole cents, half a cent up."""
    return amount.quantize(CENT, ROUND_HALF_UP)


def price_steps(
    lines: Sequence[OrderLine], tasks: Sequence[Task], load: Load, book: PriceBook
) -> tuple[tuple[Step, ...], Decimal, Decimal]:
    """Every step to the total; only the price before tax and each tax are rounded, each once.

    Args:
        lines: What is ordered.
        tasks: What is done.
        load: What goes away.
        book: Everything else.

    Returns:
        The steps, the price before tax, and the total.
    """
    with localcontext(prec=60):
        steps = list(_costs(lines, tasks, load, book))
        costs = {f"{step.formula}{step.of}": step.result for step in steps}
        cost = costs["price-cost"]
        profit = book.profit
        if profit is None:
            price, share = cents(cost), _NONE
        elif profit.way == "margin":
            price, share = cents(cost * _HUNDRED / (_HUNDRED - profit.percent)), profit.percent
        else:
            price, share = cents(cost * (_HUNDRED + profit.percent) / _HUNDRED), profit.percent
        margin = _percent(price - cost, price)
        mark_up = _percent(price - cost, cost)
        inputs = {"cost": cost, "percent": share, "margin": margin, "mark_up": mark_up}
        way = profit.way if profit else "none"
        steps.append(Step(formula="price-before_tax", of=way, inputs=inputs, result=price))
        bases = {"price": price, "materials": costs["price-materials"], "labour": costs["price-labour"]}
        taxes = [
            Step(
                formula="price-tax",
                of=f"{tax.name}-{tax.on}",
                inputs={"base": bases[tax.on], "percent": tax.percent},
                result=cents(bases[tax.on] * tax.percent / _HUNDRED),
            )
            for tax in book.taxes
        ]
        tax = sum((step.result for step in taxes), _NONE)
        total = price + tax
        steps += [*taxes, Step(formula="price-total", inputs={"price": price, "tax": tax}, result=total)]
    return tuple(steps), price, total


def _percent(part: Decimal, whole: Decimal) -> Decimal:
    return (part * _HUNDRED / whole).quantize(CENT, ROUND_HALF_UP) if whole else _NONE


def _costs(lines: Sequence[OrderLine], tasks: Sequence[Task], load: Load, book: PriceBook) -> list[Step]:
    suppliers = {packs.supplier for line in lines for packs in line.bought}
    deliveries = [one for one in book.deliveries if one.supplier in suppliers]
    dump = next((one.price for one in book.disposal if one.by == load.by), _NONE)
    direct = {
        "materials": sum((line.cost for line in lines), _NONE),
        "deliveries": sum((one.price for one in deliveries), _NONE),
        "labour": sum((task.cost for task in tasks), _NONE),
        "hire": sum((one.days * one.price for one in book.hire), _NONE),
        "disposal": load.number * dump,
    }
    risks = {one.name: one.cost * one.percent / _HUNDRED for one in book.risks}
    total, set_aside = sum(direct.values(), _NONE), sum(risks.values(), _NONE)
    percent = book.overhead.percent if book.overhead else _NONE
    overhead = (total + set_aside) * percent / _HUNDRED
    return [
        *(Step(formula=f"price-{name}", result=cost) for name, cost in direct.items()),
        Step(formula="price-direct", inputs=direct, result=total),
        *(
            Step(
                formula="price-risk",
                of=one.name,
                inputs={"cost": one.cost, "percent": one.percent},
                result=risks[one.name],
            )
            for one in book.risks
        ),
        Step(formula="price-contingency", inputs=risks, result=set_aside),
        Step(
            formula="price-overhead",
            inputs={"direct": total, "contingency": set_aside, "percent": percent},
            result=overhead,
        ),
        Step(
            formula="price-cost",
            inputs={"direct": total, "contingency": set_aside, "overhead": overhead},
            result=total + set_aside + overhead,
        ),
    ]
