"""Why a plan buys so many sheets and not fewer, in words, from the plan alone."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product
from math import ceil, floor

from firstcourse.plan import LayoutBound, Part, Plan, Sheet, Stock
from firstcourse.units import TICKS_PER_MM, Tape, format_length

_SQ_MM_PER_SQ_FT = 92_903.04
_WEIGHED = {
    "": "Area is not all that counts: {} are needed at least.",
    "dual feasible functions": "Weighing each piece by what it spoils beside it (wider than half a sheet counts "
    "as the whole width) asks for {}.",
    "price": "Put a price on every board such that no sheet, however it is cut, yields more than one sheet's "
    "worth: the boards are then worth {} at least.",
}
"""The argument behind a bound above the area's, by a word in its name."""


_MOST_NAMED = 8
"""More boards than this are not named one by one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """One part of a sheet and its share of the sheet's area.

    Attributes:
        name: The board's mark, or the part's id where it is an offcut to keep.
        size: As cut, in words.
        share: 0 to 1.
        kept: It is left over and large enough to keep.
    """

    name: str
    size: str
    share: float
    kept: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFill:
    """What one sheet is used for.

    Attributes:
        source: `new`, or the name of the kept offcut it is.
        parts: Pieces by falling share, then offcuts to keep; what is missing to 1 is waste.
    """

    id: str
    source: str
    size: str
    parts: tuple[Share, ...]

    @property
    def used(self) -> float:
        """Share that becomes boards."""
        return sum(part.share for part in self.parts if not part.kept)

    @property
    def kept(self) -> float:
        """Share that is kept."""
        return sum(part.share for part in self.parts if part.kept)

    @property
    def waste(self) -> float:
        """Share that is neither used nor kept."""
        return max(0.0, 1 - self.used - self.kept)

    @property
    def percents(self) -> tuple[int, ...]:
        """The shares of the parts, and last the waste, in whole percents that make 100."""
        return whole_percents([*(part.share for part in self.parts), self.waste])


@dataclass(frozen=True, slots=True, kw_only=True)
class StockWhy:
    """One stock: how many sheets, how few are possible, and the argument.

    Attributes:
        practice: Sheets that plain practice would have bought; None where the plan does not say, or where the plan
            takes other sheets than practice for the same boards: the reasons compare them all then.
        every_layout: Fewest over every layout the rules allow; None where other sheets serve the same boards.
        answer: The argument in one sentence.
        reasons: The argument step by step, in plain sentences.
        sheets: Every sheet and offcut of the stock, in the order of the plan.
    """

    stock: str
    used: int
    lower_bound: int
    proven: bool
    practice: int | None
    every_layout: int | None
    answer: str
    reasons: tuple[str, ...]
    sheets: tuple[SheetFill, ...]


def whole_percents(shares: Sequence[float]) -> tuple[int, ...]:
    """Shares that make 1 as whole percents that make 100: those cut off most are rounded up.

    Example:
        >>> whole_percents([0.913, 0.083, 0.004])
        (91, 8, 1)
    """
    found = [floor(100 * share) for share in shares]
    by_rest = sorted(range(len(found)), key=lambda n: (found[n] - 100 * shares[n], n))
    for n in by_rest[: max(0, 100 - sum(found))]:
        found[n] += 1
    return tuple(found)


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
    fills = tuple(_fill(plan, sheet) for sheet in sheets)
    return StockWhy(
        stock=stock.id,
        used=count.used,
        lower_bound=count.lower_bound,
        proven=count.proven,
        practice=None if _mixed(plan, stock) else _bought(plan, stock).get(stock.id),
        every_layout=_every_layout(plan, stock.id),
        answer=_answer(plan, stock.id),
        reasons=(
            *_argument(plan, stock, sheets),
            *_other_layouts(plan, stock.id),
            *_practice(plan, stock),
            *_left(fills, {sheet.id: sheet.size[0] * sheet.size[1] for sheet in sheets}),
        ),
        sheets=fills,
    )


def _fill(plan: Plan, sheet: Sheet) -> SheetFill:
    boards = _marks(plan)
    whole = sheet.size[0] * sheet.size[1]

    def share(part: Part) -> Share:
        return Share(
            name=boards.get(part.piece or "", "") or part.piece or part.id,
            size=_size(part.size, plan.job.tape),
            share=part.size[0] * part.size[1] / whole,
            kept=part.piece is None,
        )

    shown = [share(part) for part in sheet.parts if part.piece is not None or part.keep]
    return SheetFill(
        id=sheet.id,
        source=sheet.source.removeprefix("offcut:"),
        size=_size(sheet.size, plan.job.tape),
        parts=tuple(sorted(shown, key=lambda part: (part.kept, -part.share, part.name))),
    )


def _bound(plan: Plan, name: str) -> LayoutBound | None:
    return next((bound for bound in plan.bounds if name in bound.stocks), None)


def _every_layout(plan: Plan, name: str) -> int | None:
    bound = _bound(plan, name)
    return bound.lower_bound if bound is not None and len(bound.stocks) == 1 else None


def _other_layouts(plan: Plan, name: str) -> tuple[str, ...]:
    """The argument over every layout, once for all stocks that share it."""
    bound = _bound(plan, name)
    cut = {sheet.stock for sheet in plan.sheets}
    if bound is None or name != next(stock for stock in plan.counts if stock in bound.stocks and stock in cut):
        return ()
    working = plan.workings.get(f"every layout {', '.join(bound.stocks)}")
    return working.argument if working is not None else ()


def _answer(plan: Plan, name: str) -> str:
    count, bound = plan.counts[name], _bound(plan, name)
    least = _every_layout(plan, name)
    if count.used == 0:
        return "Kept offcuts give every piece of it: nothing is bought."
    if least == count.used:
        return f"{_sheets(count.used)}: no layout that keeps the rules takes fewer. This is proven."
    by_cost = _answer_by_cost(bound)
    these = f"{_sheets(count.used)}. Where the seams lie now, fewer cannot give these boards: that is proven."
    if count.proven and least is not None:
        return (
            f"{these} With other seams fewer than {least} are impossible; whether "
            f"{_least_open(least, count.used)} can do is not known."
        )
    if count.proven:
        return these + by_cost
    if count.lower_bound == 0:
        return (
            f"{_sheets(count.used)}. Other sheets of the job serve the same boards, so there is no fewest number "
            f"of this one alone.{by_cost}"
        )
    return (
        f"{_sheets(count.used)}. Fewer than {count.lower_bound} are impossible. Whether "
        f"{_least_open(count.lower_bound, count.used)} can do is not known: the search found no way, and no "
        "argument rules it out."
    )


def _answer_by_cost(bound: LayoutBound | None) -> str:
    """What is known of the cost over every layout, where one is known."""
    if bound is None or bound.cost is None or bound.least_cost is None:
        return ""
    if bound.cost == bound.least_cost:
        return " No other layout, whatever its seams and sheets, costs less."
    return (
        f" With other seams or sheets no layout costs less than {bound.least_cost:.2f}; these sheets cost "
        f"{bound.cost:.2f}, and whether anything between does is not known."
    )


def _least_open(least: int, used: int) -> str:
    return f"{least}" if used - least == 1 else f"{least} to {used - 1}"


def _argument(plan: Plan, stock: Stock, sheets: list[Sheet]) -> list[str]:
    tape, count = plan.job.tape, plan.counts[stock.id]
    parts = [part for sheet in sheets for part in sheet.parts if part.piece is not None]
    reused = [p for sheet in sheets if sheet.source != "new" for p in sheet.parts if p.piece is not None]
    fresh = _area(parts) - _area(reused)
    one = stock.size[0] * stock.size[1]
    least = ceil(fresh / one)
    bound = _bound(plan, stock.id)
    said = [
        f"This plan has {_boards(len(parts))} of it. They take {_area_text(_area(parts), tape)} of sheet, "
        "what tapers, notches and holes then take out of them included."
    ]
    if bound is not None and bound.proven:
        # What holds for every layout holds for these boards.
        return said
    if reused:
        said.append(
            f"Kept offcuts give {_area_text(_area(reused), tape)} of that, and {_area_text(fresh, tape)} is left."
        )
    if fresh:
        said.append(
            f"One sheet has {_area_text(one, tape)}. If nothing were wasted these boards would take "
            f"{fresh / one:.2f} sheets, and no part of a sheet can be bought: {_sheets(least)} at least."
        )
    working = plan.workings.get(f"bound {stock.id}")
    if count.lower_bound > least:
        marks = _marks(plan)
        apart = _apart([(marks.get(part.piece or "", part.id), part.size) for part in parts], stock)
        if len(apart) > 1:
            said.append(
                f"No two of {_names(apart)} come out of one sheet, whichever way they are turned"
                + (
                    f": {_sheets(len(apart))} at least."
                    if len(apart) >= count.lower_bound and not reused
                    else f", so each of these {len(apart)} needs its own."
                )
            )
        if len(apart) < count.lower_bound or reused:
            proof = working.values.get("argument", "") if working is not None else ""
            said.append(_WEIGHED[max(p for p in _WEIGHED if p in proof)].format(_sheets(count.lower_bound)))
    return [*said, *(working.argument if working is not None and bound is None else ())]


def _bought(plan: Plan, stock: Stock) -> dict[str, int]:
    """What plain practice buys of every stock that could serve the same boards."""
    alike = [s.id for s in plan.stock if (s.thickness, s.kind) == (stock.thickness, stock.kind)]
    told = {name: plan.workings.get(f"practice {name}") for name in alike if name in plan.counts}
    return {name: int(str(working.result)) for name, working in told.items() if working is not None}


def _mixed(plan: Plan, stock: Stock) -> bool:
    """Whether practice takes other sheets than the plan, so that one stock alone says nothing."""
    bought = _bought(plan, stock)
    return len(bought) > 1 and any(plan.counts[name].used != number for name, number in bought.items())


def _practice(plan: Plan, stock: Stock) -> list[str]:
    bought = _bought(plan, stock)
    if stock.id not in bought:
        return []
    manner = "Plain practice (full sheets from a corner, the rest from what is left)"
    faults = plan.workings[f"practice {stock.id}"].argument
    ours = {name: plan.counts[name].used for name in bought}
    if _mixed(plan, stock):
        return [beside_practice(plan, stock.id, manner), *_least_cost(plan)]
    saved = bought[stock.id] - ours[stock.id]
    than = f"{saved} more than" if saved > 0 else "as many as" if saved == 0 else f"{-saved} fewer than"
    return [" ".join((f"{manner} buys {bought[stock.id]}: {than} this plan.", *faults))]


def beside_practice(plan: Plan, name: str, manner: str = "Plain practice") -> str:
    """What plain practice buys beside this plan, over all sheets that serve the same boards.

    Args:
        plan: A verified plan.
        name: One of those sheets.
        manner: Plain practice in words.

    Returns:
        A sentence; empty where the stock's own count says as much.
    """
    stock = next(item for item in plan.stock if item.id == name)
    if not _mixed(plan, stock):
        return ""
    bought = _bought(plan, stock)
    ours = {one: plan.counts[one].used for one in bought}
    faults = sorted({said for one in bought for said in plan.workings[f"practice {one}"].argument})
    told = (
        f"{manner} buys {_each(bought)} for the same surfaces{_cost(plan, bought)}; "
        f"this plan buys {_each(ours)}{_cost(plan, ours)}."
    )
    return " ".join((told, *faults))


def _cost(plan: Plan, bought: dict[str, int]) -> str:
    """What sheets cost, in brackets; nothing where one has no price."""
    price = {item.id: item.price for item in plan.stock}
    parts = [number * (price[name] or 0.0) for name, number in bought.items()]
    if any(price[name] is None for name, number in bought.items() if number):
        return ""
    return f" ({math.fsum(parts):.2f} {plan.job.currency or 'money'})"


def _least_cost(plan: Plan) -> list[str]:
    """How near the cost of all sheets is to the least possible, where sheets have prices."""
    bound = plan.workings.get("bound cost")
    if bound is None:
        return []
    together = f"All sheets of the job cost {bound.values['cost']} {bound.unit} together"
    if bound.values["cost"] == bound.result:
        return [f"{together}, and {bound.formula}: this is proven."]
    return [f"{together}; no cutting of these pieces costs less than {bound.result}."]


def _each(bought: dict[str, int]) -> str:
    return " and ".join(f"{number} × {name}" for name, number in bought.items() if number) or "none"


def _left(fills: tuple[SheetFill, ...], area: dict[str, int]) -> list[str]:
    kept = [f"{part.name} ({part.size})" for fill in fills for part in fill.parts if part.kept]
    whole = sum(area[fill.id] for fill in fills)
    used = sum(fill.used * area[fill.id] for fill in fills) / whole
    left = sum(fill.kept * area[fill.id] for fill in fills) / whole
    boards, keep, waste = whole_percents([used, left, max(0.0, 1 - used - left)])
    if not kept:
        return [f"Of all that is cut up, {boards}% becomes boards and {waste}% is waste."]
    return [
        f"Of all that is cut up, {boards}% becomes boards, {keep}% is kept and {waste}% is waste. "
        f"To keep: {', '.join(kept)}."
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


def _names(names: list[str]) -> str:
    if len(names) > _MOST_NAMED:
        return f"{', '.join(names[: _MOST_NAMED - 1])} and {len(names) - _MOST_NAMED + 1} others"
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _marks(plan: Plan) -> dict[str, str]:
    return {board.piece: board.mark for surface in plan.surfaces for board in surface.boards}


def _area(parts: list[Part]) -> int:
    return sum(part.size[0] * part.size[1] for part in parts)


def _area_text(square_ticks: int, tape: Tape) -> str:
    square_mm = square_ticks / TICKS_PER_MM**2
    return f"{square_mm / 1e6:.3f} m²" if tape is Tape.MM else f"{square_mm / _SQ_MM_PER_SQ_FT:.2f} sq ft"


def _size(size: tuple[int, int], tape: Tape) -> str:
    return " × ".join(format_length(side, tape, feet=False) for side in size)


def _sheets(number: int) -> str:
    return "1 sheet" if number == 1 else f"{number} sheets"


def _boards(number: int) -> str:
    return "1 board" if number == 1 else f"{number} boards"
