"""What to order: whole packs from exact need, breakage and spares; the cheapest of what is offered."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from fractions import Fraction
from itertools import groupby
from math import ceil

from firstcourse.errors import InputValueError
from firstcourse.plan import Plan, Quantity
from firstcourse.pricing.book import Material, PriceBook
from firstcourse.pricing.lengths import Cutting, cut_lengths
from firstcourse.pricing.offer import Cut, OrderLine, Packs, exact
from firstcourse.pricing.packs import Offer, cheapest
from firstcourse.units import ticks_from_mm, to_mm
from firstcourse.values import Measure, Value
from firstcourse.workings import Working

_DUST = Fraction(1, 10**9)
"""Share of a need that is dust of nine figures; no pack is bought for it."""
_ONE_LOT = ("tile_stock/", "grout")
_JOINED = "edge_trim"
"""What may be longer than a stock length and is then pieced together."""


def order(plan: Plan, book: PriceBook) -> tuple[OrderLine, ...]:
    """Everything that a plan buys, priced where the book has a price.

    Args:
        plan: A plan.
        book: Prices.

    Raises:
        InputValueError: A price is for another unit than the plan counts in, or packs are absurdly small.
    """
    return tuple(_line(plan, quantity, book) for quantity in plan.quantities if quantity.exact > 0)


def _line(plan: Plan, quantity: Quantity, book: PriceBook) -> OrderLine:
    working = plan.workings[quantity.working]
    need = exact(quantity.exact)
    breakage, spares = _beyond(quantity, working)
    offered = [one for one in book.materials if one.item == quantity.item]
    for one in offered:
        if one.unit != quantity.unit:
            raise InputValueError(
                f"{one.item} of {one.supplier} is priced by the {one.unit}; the plan counts by the {quantity.unit}"
            )
    line = OrderLine(
        item=quantity.item,
        unit=quantity.unit,
        exact=need,
        breakage=breakage,
        spares=spares,
        need=need + breakage + spares,
        thumb=_thumb(working),
        one_lot=quantity.item.startswith(_ONE_LOT),
    )
    pieces = _pieces(working)
    bought, cutting = _cut(pieces, offered, quantity.item) if pieces else (_packs(line, offered), None)
    kg = None
    if bought:
        each = {(one.supplier, one.holds): _pack_kg(plan, one) for one in offered}
        masses = [each[one.supplier, one.holds] for one in bought]
        known = [mass for mass in masses if mass is not None]
        if len(known) == len(masses):
            kg = sum((mass * one.packs for mass, one in zip(known, bought, strict=True)), Decimal(0))
    return line.model_copy(
        update={
            "bought": bought,
            "cost": sum((one.cost for one in bought), Decimal(0)),
            "cuts": () if cutting is None else _cuts(cutting, pieces),
            "least": None if cutting is None else cutting.least,
            "kg": kg,
        }
    )


def _beyond(quantity: Quantity, working: Working) -> tuple[Decimal, Decimal]:
    """Allowance for breakage, of tiles in whole ones; and spares."""
    spare = _number(working.inputs.get("spare"))
    kept = _number(working.inputs.get("kept"))
    if quantity.unit in ("tile", "chip"):
        spare = Decimal(ceil(spare - Decimal("1e-9")))
    return spare, kept


def _number(value: Value | None) -> Decimal:
    return exact(value.value) if isinstance(value, Measure) else Decimal(0)


def _thumb(working: Working) -> tuple[int, int] | None:
    straight, diagonal = (working.inputs.get(f"by_thumb_{way}") for way in ("straight", "diagonal"))
    return (straight, diagonal) if isinstance(straight, int) and isinstance(diagonal, int) else None


def _pieces(working: Working) -> list[int]:
    """Lengths that are cut from stock lengths [ticks]; none where the thing is not bought by lengths."""
    found = working.inputs.get("edge", working.inputs.get("each"))
    listed = found if isinstance(found, tuple) else ()
    return [ticks_from_mm(one.value) for one in listed if isinstance(one, Measure) and one.unit == "mm"]


def _grouped(offered: Sequence[Material]) -> Iterator[tuple[Material, Offer]]:
    """Rows of one supplier and size as one offer with its tiers."""

    def key(one: Material) -> tuple[str, Decimal]:
        return one.supplier, one.holds

    for _, same in groupby(sorted(offered, key=key), key):
        rows = sorted(same, key=lambda one: one.from_packs)
        if rows[0].from_packs != 1:
            raise InputValueError(
                f"{rows[0].item} of {rows[0].supplier} has a price from {rows[0].from_packs} packs and none from 1"
            )
        tiers = tuple((row.from_packs, Fraction(row.price)) for row in rows)
        yield rows[0], Offer(holds=Fraction(rows[0].holds), tiers=tiers)


def _packs(line: OrderLine, offered: Sequence[Material]) -> tuple[Packs, ...]:
    groups = list(_grouped(offered))
    if not groups:
        return ()
    need = Fraction(line.need) * (1 - _DUST)
    suppliers = sorted({row.supplier for row, _ in groups})
    choices = (
        [[one for one in groups if one[0].supplier == name] for name in suppliers] if line.one_lot else [groups]
    )
    found = []
    for choice in choices:
        taken = cheapest(need, [offer for _, offer in choice])
        packs = tuple(
            _bought(row, offer, number) for (row, offer), number in zip(choice, taken, strict=True) if number
        )
        found.append((sum(one.cost for one in packs), sum(one.packs for one in packs), packs))
    return min(found, key=lambda one: one[:2])[2]


def _bought(row: Material, offer: Offer, number: int) -> Packs:
    cost = offer.cost(number) / number
    each = Decimal(cost.numerator) / Decimal(cost.denominator)
    return Packs(supplier=row.supplier, holds=row.holds, packs=number, each=each, cost=each * number)


def _cut(
    pieces: Sequence[int], offered: Sequence[Material], item: str
) -> tuple[tuple[Packs, ...], Cutting | None]:
    """The stock length that costs least in all, and its cut list; lengths are not mixed."""
    best: tuple[tuple[Decimal, int], Packs, Cutting] | None = None
    for row, offer in _grouped(offered):
        stock = ticks_from_mm(float(row.holds))
        if item != _JOINED and max(pieces) > stock:
            continue
        cutting = cut_lengths(pieces, stock)
        bought = _bought(row, offer, len(cutting.lengths))
        rank = (bought.cost, bought.packs)
        if best is None or rank < best[0]:
            best = rank, bought, cutting
    return ((best[1],), best[2]) if best else ((), None)


def _cuts(cutting: Cutting, pieces: Sequence[int]) -> tuple[Cut, ...]:
    return tuple(Cut(pieces=tuple(exact(to_mm(pieces[index])) for index in length)) for length in cutting.lengths)


def _pack_kg(plan: Plan, row: Material) -> Decimal | None:
    if row.kg is not None:
        return row.kg
    if row.unit == "kg":
        return row.holds
    sheet = plan.workings.get(f"quantities-sheet_mass@{row.item}")
    if sheet is not None and isinstance(sheet.result, Measure):
        return exact(sheet.result.value) * row.holds
    return None
