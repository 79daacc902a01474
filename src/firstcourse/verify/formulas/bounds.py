"""The fewest sheets and the least cost: what is said of them, held against counts, prices and bounds."""

from collections.abc import Iterator, Mapping

from firstcourse.units import TICKS_PER_MM, ceil_to
from firstcourse.verify.bound_fields import FieldBound, LayoutBound
from firstcourse.verify.fewest import proves_cost, proves_sheets
from firstcourse.verify.formulas.proving import (
    CODE,
    Prove,
    column,
    holds,
    just,
    key_of,
    limited,
    only,
    ref,
    refs,
    rests_on,
    several,
)
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_SHEETS, _COST, _COST_SHEETS, _COST_TILES = "bounds-sheets", "bounds-cost", "cost-sheets", "cost-tiles"
_EVERY, _EVERY_BY_COST = "bounds-every_layout", "bounds-every_layout_by_cost"
_PROOFS = ("none", "area", "dual_functions", "pattern_prices")
_SQ = TICKS_PER_MM**2
_GROUND = (
    "surfaces", "ground", "board", "seam", "narrowest", "most_on", "courses", "alone", "pair", "staggered",
    "offcuts", "kept", "new", "used",
)  # fmt: skip
_NUMBER = ("kinds", "largest", "sheet", "sheets", "open", "one_fewer")
_MONEY = (
    "offered", "sheet", "price", "named", "best", "best_numbers", "cost", "least_cost", "over", "cheapest",
    "currency",
)  # fmt: skip


def _sheets(plan: Document, working: Working) -> Iterator[Objection]:
    count = next(count for count in plan.counts if f"stock/{count.stock}" == "+".join(working.at))
    yield from _alone(working, "used", "proof")
    yield from just(working, "used", count.used)
    yield from just(working, "result", count.lower_bound)
    yield from _by_a_proof(working)
    if not _by_prices(working) and not proves_sheets(plan, count.stock, count.lower_bound):
        yield Objection("VER-602", working.key, f"says that {count.lower_bound} are needed, which nothing proves")


def _cost(plan: Document, working: Working) -> Iterator[Objection]:
    """What is paid for new sheets; the least of it may not lie above."""
    prices = {name: item.price or 0.0 for name, item in plan.shopping.sheet_stock.items()}
    cost = sum(count.used * max(1, round(100 * prices.get(count.stock, 0.0))) for count in plan.counts) / 100
    yield from _alone(working, "cost", "proof", "currency")
    yield from holds(working, "cost", cost, "money")
    yield from just(working, "currency", _currency(plan))
    yield from _by_a_proof(working)
    least = working.comes_to
    yield from holds(working, "result", 0.0 if least is None else least, "money")
    if least is None or not 0 <= least <= cost + 1e-6:
        yield Objection("VER-602", working.key, f"says that {least} is the least where {cost:.2f} is paid")
    elif not proves_cost(plan, {count.stock: count.lower_bound for count in plan.counts}, round(100 * least)):
        yield Objection("VER-602", working.key, f"says that {least:.2f} is the least, which nothing proves")


def _by_a_proof(working: Working) -> Iterator[Objection]:
    proof = working.inputs.get("proof")
    if proof not in [{"word": word} for word in _PROOFS]:
        yield Objection(CODE, working.key, f"is proved by {proof}, which is no proof")


def _by_prices(working: Working) -> bool:
    """Whether the bound rests on prices of pieces, which the plan does not hold: it is not proved again."""
    return bool(working.inputs.get("proof") == {"word": "pattern_prices"})


def _every_layout(plan: Document, working: Working) -> Iterator[Objection]:
    bound = _bound_of(plan, working)
    yield from _alone(working, *_GROUND, *_NUMBER)
    yield from _ground(plan, working, bound)
    areas = _areas(plan, bound)
    largest = max(areas, key=lambda name: areas[name])
    rest = max(0, sum(field.least for field in bound.surfaces) - bound.kept)
    yield from just(working, "kinds", len(bound.stocks))
    found = next(iter(refs(working, "largest")), "")
    if areas.get(found.removeprefix("stock/")) != areas[largest]:
        yield Objection(CODE, working.key, f"calls {found} the largest sheet, which is {largest}")
    yield from holds(working, "sheet", areas[largest] / 1e6, "m2")
    yield from holds(working, "sheets", rest / areas[largest], "")
    yield from just(working, "open", bound.used - bound.lower_bound)
    yield from just(working, "one_fewer", bound.used - 1)


def _every_layout_by_cost(plan: Document, working: Working) -> Iterator[Objection]:
    bound = _bound_of(plan, working)
    cost, least = bound.cost or 0.0, bound.least_cost or 0.0
    areas, prices = _areas(plan, bound), {n: plan.shopping.sheet_stock[n].price or 0.0 for n in bound.stocks}
    yield from _alone(working, *_GROUND, *_MONEY)
    yield from _ground(plan, working, bound)
    offered = [name for name in plan.stock if name in bound.stocks]
    yield from just(working, "offered", [ref(f"stock/{name}") for name in offered])
    yield from column(working, "sheet", [areas[name] / 1e6 for name in offered], "m2")
    yield from column(working, "price", [prices[name] for name in offered], "money")
    yield from holds(working, "cost", cost, "money")
    yield from holds(working, "least_cost", least, "money")
    yield from holds(working, "over", cost - least, "money")
    yield from just(working, "cheapest", cost == least)
    yield from just(working, "currency", _currency(plan))
    yield from _mix(working, bound, areas, prices)


def _mix(
    working: Working, bound: LayoutBound, areas: Mapping[str, float], prices: Mapping[str, float]
) -> Iterator[Objection]:
    """The cheapest mix of sheets, where one is named: it holds enough, and costs no more than is said."""
    names = [name.removeprefix("stock/") for name in refs(working, "best")]
    numbers = several(working.inputs.get("best_numbers"))
    yield from just(working, "named", bool(names))
    whole = all(isinstance(n, int) and not isinstance(n, bool) and n > 0 for n in numbers)
    if len(names) != len(numbers) or not whole or not set(names) <= set(bound.stocks):
        yield Objection(CODE, working.key, "names a mix of sheets that is none")
        return
    rest = sum(field.least for field in bound.surfaces) - bound.kept
    area = sum(number * areas[name] for name, number in zip(names, numbers, strict=True))
    cost = sum(number * prices[name] for name, number in zip(names, numbers, strict=True))
    if names and (area < rest - 1 or abs(cost - (bound.least_cost or 0.0)) > 0.005 * sum(numbers)):
        yield Objection(CODE, working.key, f"names sheets of {area:.0f} mm² for {cost:.2f}, {rest} mm² are needed")


def _ground(plan: Document, working: Working, bound: LayoutBound) -> Iterator[Objection]:
    """What every layout has to cover, and what the gaps between its boards can take of it."""
    fields = bound.surfaces
    worst = max(fields, key=lambda field: field.gaps)
    rest = max(0, sum(field.least for field in fields) - bound.kept)
    seam = ceil_to(plan.rules.ticks("boards.gap.between"), plan.tape.graduation)
    yield from just(working, "surfaces", [ref(field.surface) for field in fields])
    for name, area in (
        ("ground", sum(field.covered for field in fields)),
        ("board", sum(field.least for field in fields)),
        ("kept", bound.kept),
        ("new", rest),
    ):
        yield from holds(working, name, area / 1e6, "m2")
    yield from holds(working, "seam", seam / TICKS_PER_MM, "mm")
    yield from holds(working, "narrowest", min(field.side for field in fields) / TICKS_PER_MM, "mm")
    yield from just(working, "most_on", ref(worst.surface))
    yield from _most(working, worst)
    yield from just(working, "offcuts", bound.kept > 0)
    yield from just(working, "used", bound.used)
    yield from just(working, "result", bound.lower_bound)


def _most(working: Working, worst: FieldBound) -> Iterator[Objection]:
    yield from just(working, "courses", worst.courses)
    yield from just(working, "alone", worst.alone)
    yield from just(working, "pair", worst.pair)
    yield from just(working, "staggered", worst.pair < 2 * worst.alone)


def _paid(plan: Document, working: Working) -> Iterator[Objection]:
    """Packs by price, and their sum; what has no price is left out and named."""
    bought = dict(_bought(plan, working.formula))
    priced = {of: (buy, price) for of, (buy, price) in bought.items() if price is not None}
    without = [of for of in bought if of not in priced]
    yield from _alone(working, "of", "packs", "price", "complete", "unpriced", "currency")
    yield from just(working, "of", [ref(of) for of in priced])
    yield from just(working, "packs", [buy for buy, _ in priced.values()])
    yield from column(working, "price", [price for _, price in priced.values()], "money")
    yield from just(working, "complete", not without)
    yield from just(working, "unpriced", [ref(of) for of in without])
    yield from just(working, "currency", _currency(plan))
    yield from holds(working, "result", sum(buy * price for buy, price in priced.values()), "money")


def _bought(plan: Document, formula: str) -> Iterator[tuple[str, tuple[int, float | None]]]:
    """References to sheets or tiles that are bought, with their packs and the price of one."""
    kind, stock = (
        ("stock", plan.shopping.sheet_stock) if formula == _COST_SHEETS else ("tile_stock", plan.tile_stock)
    )
    buys = {quantity.item: quantity.buy for quantity in plan.quantities}
    for name, item in stock.items():
        if buys.get(f"{kind}/{name}"):
            yield f"{kind}/{name}", (buys[f"{kind}/{name}"], item.price)


def _alone(working: Working, *names: str) -> Iterator[Objection]:
    yield from only(working, *names)
    yield from rests_on(working)
    yield from limited(working)


def _currency(plan: Document) -> dict[str, str]:
    named = plan.job.text("currency", "")
    return {"name": named} if named else {"word": "money"}


def _bound_of(plan: Document, working: Working) -> LayoutBound:
    return next(bound for bound in plan.bounds if _key(bound) == working.key)


def _areas(plan: Document, bound: LayoutBound) -> dict[str, float]:
    """Of one sheet of each stock [mm²]."""
    return {name: plan.stock[name][0] * plan.stock[name][1] / _SQ for name in bound.stocks}


def _key(bound: LayoutBound) -> str:
    by_cost = len(bound.stocks) > 1 and bound.least_cost is not None
    return key_of(_EVERY_BY_COST if by_cost else _EVERY, *(f"stock/{name}" for name in bound.stocks))


def expected(plan: Document) -> Iterator[str]:
    """A bound for every stock and for what can share sheets; the least cost and what is paid, where prices are."""
    yield from (key_of(_SHEETS, f"stock/{count.stock}") for count in plan.counts)
    if plan.shopping.sheet_stock and all(item.price for item in plan.shopping.sheet_stock.values()):
        yield key_of(_COST, "job")
    yield from (
        _key(bound)
        for bound in plan.bounds
        if bound.stocks and bound.surfaces and set(bound.stocks) <= set(plan.stock)
    )
    for formula in (_COST_SHEETS, _COST_TILES):
        if any(price is not None for _, (_, price) in _bought(plan, formula)):
            yield key_of(formula, "job")


FORMULAS: dict[str, Prove] = {
    _SHEETS: _sheets,
    _COST: _cost,
    _EVERY: _every_layout,
    _EVERY_BY_COST: _every_layout_by_cost,
    _COST_SHEETS: _paid,
    _COST_TILES: _paid,
}
