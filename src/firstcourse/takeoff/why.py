"""Why a plan buys so many sheets and not fewer, from the plan alone: statements by code, and workings."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product
from math import ceil

from firstcourse.plan import LayoutBound, Part, Plan, Sheet, Stock
from firstcourse.takeoff.sheet_fills import SheetFill, fill_of, left_over, marks_of
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import (
    Measure,
    Name,
    Ref,
    Statement,
    Value,
    Word,
    currency_of,
    measure,
    money,
    statement,
)
from firstcourse.workings import Working

Reason = Statement | Working
"""A sentence by its code, or a working whose argument it is."""
_TICKS_PER_M = 1000 * TICKS_PER_MM
_EVERY = "bounds-every_layout"
_MOST_NAMED = 8
"""More boards than this are not named one by one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StockWhy:
    """One stock: how many sheets, how few are possible, and the argument.

    Attributes:
        practice: Sheets that plain practice would have bought; None where the plan does not say, or where the plan
            takes other sheets than practice for the same boards: the reasons compare them all then.
        every_layout: Fewest over every layout the rules allow; None where other sheets serve the same boards.
        answer: The argument in short.
        reasons: The argument step by step.
        sheets: Every sheet and offcut of the stock, in the order of the plan.
    """

    stock: str
    used: int
    lower_bound: int
    proven: bool
    practice: int | None
    every_layout: int | None
    answer: tuple[Statement, ...]
    reasons: tuple[Reason, ...]
    sheets: tuple[SheetFill, ...]


def why_sheets(plan: Plan) -> tuple[StockWhy, ...]:
    """Say for each stock the plan cuts why there are not fewer sheets.

    Args:
        plan: A verified plan.

    Returns:
        In the order of the plan's counts; stocks of which no sheet is cut are left out.
    """
    stock = {item.id: item for item in plan.stock}
    return tuple(
        _why(plan, stock[name], [sheet for sheet in plan.sheets if sheet.stock == name])
        for name in plan.counts
        if any(sheet.stock == name for sheet in plan.sheets)
    )


def _why(plan: Plan, stock: Stock, sheets: list[Sheet]) -> StockWhy:
    count = plan.counts[stock.id]
    fills = tuple(fill_of(plan, sheet) for sheet in sheets)
    return StockWhy(
        stock=stock.id,
        used=count.used,
        lower_bound=count.lower_bound,
        proven=count.proven,
        practice=None if _mixed(plan, stock) else _bought(plan, stock).get(stock.id),
        every_layout=_every_layout(plan, stock.id),
        answer=tuple(_answer(plan, stock.id)),
        reasons=(
            *_argument(plan, stock, sheets),
            *_other_layouts(plan, stock.id),
            *_practice(plan, stock),
            left_over(fills, {sheet.id: sheet.size[0] * sheet.size[1] for sheet in sheets}),
        ),
        sheets=fills,
    )


def _bound(plan: Plan, name: str) -> LayoutBound | None:
    return next((bound for bound in plan.bounds if name in bound.stocks), None)


def _every_layout(plan: Plan, name: str) -> int | None:
    bound = _bound(plan, name)
    return bound.lower_bound if bound is not None and len(bound.stocks) == 1 else None


def _other_layouts(plan: Plan, name: str) -> tuple[Working, ...]:
    """The argument over every layout, once for all stocks that share it."""
    bound = _bound(plan, name)
    cut = {sheet.stock for sheet in plan.sheets}
    if bound is None or name != next(stock for stock in plan.counts if stock in bound.stocks and stock in cut):
        return ()
    about = tuple(f"stock/{stock}" for stock in bound.stocks)
    return tuple(one for one in plan.workings.values() if one.formula.startswith(_EVERY) and one.at == about)


def _answer(plan: Plan, name: str) -> list[Statement]:
    count, bound = plan.counts[name], _bound(plan, name)
    least, used = _every_layout(plan, name), count.used
    if used == 0:
        return [statement("why-nothing_bought")]
    if least == used:
        return [statement("why-no_layout_fewer", used=used)]
    if count.proven and least is not None:
        return [statement("why-these_boards", used=used), statement("why-other_seams", **_open(least, used))]
    if count.proven:
        return [statement("why-these_boards", used=used), *_answer_by_cost(plan, bound)]
    if count.lower_bound == 0:
        return [statement("why-several_serve", used=used), *_answer_by_cost(plan, bound)]
    return [statement("why-fewer_not_known", used=used, **_open(count.lower_bound, used))]


def _answer_by_cost(plan: Plan, bound: LayoutBound | None) -> list[Statement]:
    """What is known of the cost over every layout, where one is known."""
    if bound is None or bound.cost is None or bound.least_cost is None:
        return []
    if bound.cost == bound.least_cost:
        return [statement("why-no_layout_cheaper")]
    return [statement("why-cheaper_not_known", least=money(bound.least_cost), cost=money(bound.cost))]


def _open(least: int, used: int) -> dict[str, Value]:
    """The fewest that is possible, and how many numbers lie open up to one fewer than are used."""
    return {"least": least, "open": used - least, "one_fewer": used - 1}


def _argument(plan: Plan, stock: Stock, sheets: list[Sheet]) -> list[Reason]:
    parts = [part for sheet in sheets for part in sheet.parts if part.piece is not None]
    bound = _bound(plan, stock.id)
    said: list[Reason] = [statement("why-boards", boards=len(parts), area=_square(_area(parts)))]
    if bound is not None and bound.proven:
        # What holds for every layout holds for these boards.
        return said
    reused = [p for sheet in sheets if sheet.source != "new" for p in sheet.parts if p.piece is not None]
    fresh, one = _area(parts) - _area(reused), stock.size[0] * stock.size[1]
    least = ceil(fresh / one)
    if reused:
        said.append(statement("why-offcuts_give", given=_square(_area(reused)), left=_square(fresh)))
    if fresh:
        said.append(statement("why-area", sheet=_square(one), sheets=measure(fresh / one), least=least))
    working = plan.workings.get(f"bounds-sheets@stock/{stock.id}")
    if plan.counts[stock.id].lower_bound > least:
        said += _above_area(plan, stock, parts, working, with_offcuts=bool(reused))
    return [*said, *([working] if working is not None and bound is None else [])]


def _above_area(
    plan: Plan, stock: Stock, parts: list[Part], working: Working | None, *, with_offcuts: bool
) -> list[Statement]:
    """Why area alone is not all that counts."""
    marks, least = marks_of(plan), plan.counts[stock.id].lower_bound
    apart = _apart([(marks.get(part.piece or "", part.id), part.size) for part in parts], stock)
    said = []
    enough = len(apart) >= least and not with_offcuts
    if len(apart) > 1:
        named = apart if len(apart) <= _MOST_NAMED else apart[: _MOST_NAMED - 1]
        said.append(
            statement(
                "why-apart",
                boards=tuple(Name(name=name) for name in named),
                others=len(apart) - len(named),
                number=len(apart),
                enough=enough,
            )
        )
    if not enough:
        proof = None if working is None else working.inputs.get("proof")
        said.append(statement("why-weighed", proof=proof or Word(word="none"), least=least))
    return said


def _bought(plan: Plan, stock: Stock) -> dict[str, int]:
    """What plain practice buys of every stock that could serve the same boards."""
    alike = [s.id for s in plan.stock if (s.thickness, s.kind) == (stock.thickness, stock.kind)]
    told = {name: _by_practice(plan, name) for name in alike if name in plan.counts}
    return {name: int(one.result) for name, one in told.items() if one is not None and isinstance(one.result, int)}


def _by_practice(plan: Plan, name: str) -> Working | None:
    return plan.workings.get(f"boards-practice@stock/{name}")


def _mixed(plan: Plan, stock: Stock) -> bool:
    """Whether practice takes other sheets than the plan, so that one stock alone says nothing."""
    bought = _bought(plan, stock)
    return len(bought) > 1 and any(plan.counts[name].used != number for name, number in bought.items())


def _practice(plan: Plan, stock: Stock) -> list[Reason]:
    bought = _bought(plan, stock)
    if stock.id not in bought:
        return []
    if _mixed(plan, stock):
        return [*beside_practice(plan, stock.id, named=True), *_least_cost(plan)]
    saved = bought[stock.id] - plan.counts[stock.id].used
    compared = statement("why-practice", bought=bought[stock.id], more=max(0, saved), fewer=max(0, -saved))
    return [compared, *_faults(plan, [stock.id])]


def _faults(plan: Plan, names: Sequence[str]) -> list[Reason]:
    """What practice breaks, for the first of the stocks that share the same faults."""
    found: dict[str, Working] = {}
    for name in names:
        working = _by_practice(plan, name)
        if working is not None and working.inputs.get("keeps") is False:
            found.setdefault(repr((working.inputs["faults"], working.inputs["numbers"])), working)
    return list(found.values())


def beside_practice(plan: Plan, name: str, *, named: bool = False) -> tuple[Reason, ...]:
    """What plain practice buys beside this plan, over all sheets that serve the same boards.

    Args:
        plan: A verified plan.
        name: One of those sheets.
        named: Whether it is told what plain practice is.

    Returns:
        What is said of it, and what practice breaks; nothing where the stock's own count says as much.
    """
    stock = next(item for item in plan.stock if item.id == name)
    if not _mixed(plan, stock):
        return ()
    bought = _bought(plan, stock)
    ours = {one: plan.counts[one].used for one in bought}
    compared = statement(
        "why-beside_practice",
        named=named,
        currency=currency_of(plan.job.currency),
        **_sheets(plan, "practice", bought),
        **_sheets(plan, "plan", ours),
    )
    return compared, *_faults(plan, list(bought))


def _sheets(plan: Plan, who: str, bought: dict[str, int]) -> dict[str, Value]:
    """Sheets by stock and what they cost together, where each has a price."""
    price = {item.id: item.price for item in plan.stock}
    some = {name: number for name, number in bought.items() if number}
    return {
        f"{who}_kinds": len(some),
        f"{who}_numbers": tuple(some.values()),
        f"{who}_sheets": tuple(Ref(ref=f"stock/{name}") for name in some),
        f"{who}_priced": all(price[name] is not None for name in some),
        f"{who}_cost": money(math.fsum(number * (price[name] or 0.0) for name, number in some.items())),
    }


def _least_cost(plan: Plan) -> list[Statement]:
    """How near the cost of all sheets is to the least possible, where sheets have prices."""
    bound = plan.workings.get("bounds-cost@job")
    if bound is None or not isinstance(bound.result, Measure):
        return []
    cost, currency = bound.inputs["cost"], bound.inputs["currency"]
    return [
        statement("why-least_cost", cost=cost, currency=currency, proven=cost == bound.result, least=bound.result)
    ]


def _apart(pieces: list[tuple[str, tuple[int, int]]], stock: Stock) -> list[str]:
    """Many pieces of which no two come out of one sheet, by name: each in turn that goes with none before it."""
    chosen: list[tuple[str, tuple[int, int]]] = []
    for name, size in sorted(pieces, key=lambda piece: (-min(piece[1]), -max(piece[1]))):
        if not any(_together(size, other, stock.size) for _, other in chosen):
            chosen.append((name, size))
    return [name for name, _ in chosen]


def _together(one: tuple[int, int], two: tuple[int, int], sheet: tuple[int, int]) -> bool:
    """Whether a cut edge to edge can part a sheet so that one piece lies on each side of it."""
    for (a, b), (c, d) in product((one, one[::-1]), (two, two[::-1])):
        if (a + c <= sheet[0] and max(b, d) <= sheet[1]) or (b + d <= sheet[1] and max(a, c) <= sheet[0]):
            return True
    return False


def _area(parts: list[Part]) -> int:
    return sum(part.size[0] * part.size[1] for part in parts)


def _square(square_ticks: int) -> Measure:
    return measure(square_ticks / _TICKS_PER_M**2, "m2")
