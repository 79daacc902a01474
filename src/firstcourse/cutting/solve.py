"""Cutting blanks from sheets at least cost: construct, improve by a counted number of tries, bound.

The objective, in order: cost of sheets bought, cuts that take off too thin a strip, number of cuts, largest
rectangle left over.
"""

from collections.abc import Sequence
from itertools import combinations
from random import Random

from firstcourse.cutting.bounds import least_cost, least_sheets
from firstcourse.cutting.cheaper import cheaper
from firstcourse.cutting.model import (
    Blank,
    Bound,
    CannotCutError,
    CutSheet,
    CuttingPlan,
    KeptSize,
    StockCount,
    StockSize,
)
from firstcourse.cutting.packing import MANNERS, Filling, Room, in_order, manners, pack
from firstcourse.cutting.patterns import least_by_patterns
from firstcourse.errors import InputValueError

TRIES = (0, 150, 600, 2_400)
"""Rebuilding tries for a list of up to 50 blanks, by effort; longer lists get fewer, as each try costs more."""
STEPS = (0, 20_000, 200_000, 2_000_000)
"""Steps of the search for cheaper sheets, by effort."""
MANY_BLANKS = 400
"""Above this, only the first manners are tried: the work grows with the square of the list."""
SEED = 1
PROOFS = ("none", "area", "dual_functions", "pattern_prices")
"""Arguments of bounds, the plainest first."""

Fillings = list[Filling]
Known = dict[tuple[str, tuple[str, ...]], Filling | None]
"""By stock and blanks: how they are cut from one sheet of it; None where they do not fit."""
Value = tuple[int, int, int, int]
MANNERS_OF_ONE = tuple(manner for manner in MANNERS if manner.fit == "area")


def cut(
    demand: Sequence[Blank],
    stock: Sequence[StockSize],
    kept: Sequence[KeptSize] = (),
    *,
    effort: int = 1,
    known: Sequence[CutSheet] = (),
    prove: bool = True,
    limit: int | None = None,
) -> CuttingPlan:
    """Cut all blanks from sheets and kept rectangles.

    Blanks that share no stock are separate problems and never share a sheet. The plan is never worse than one
    with less effort. It never costs more than the effort-0 plan without `kept`, nor, with up to four stocks that
    share blanks, than the effort-0 plan with fewer of them.

    Args:
        demand: Ids must be distinct.
        stock: Sheets that can be bought in any number; ids must be distinct.
        kept: Rectangles at hand; ids must be distinct.
        effort: Level 0 to 3, counted in tries and so the same on every machine.
        known: Sheets that all of `demand` is cut from, found before; the search starts there and is never worse.
        prove: Whether all patterns are weighed where the plainer bounds are not met; the sheets are the same.
        limit: What the sheets may cost, for a caller to whom more is of no use; unheeded where some are `known`.

    Returns:
        Sheets in order of stock, kept rectangles first, with bounds for each stock and for the cost.

    Raises:
        CannotCutError: If a blank fits none of the sheets it is allowed on, or the first packings found cost more
            than `limit`.
        InputValueError: If ids repeat, a stock is unknown or the effort is outside 0 to 3.

    Example:
        >>> plan = cut([Blank("p", 30, 50, ("s",)), Blank("q", 30, 10, ("s",))], [StockSize("s", 36, 60, 10)])
        >>> plan.cost, plan.proven, len(plan.sheets[0].cuts)
        (10, True, 2)
    """
    _check(demand, stock, kept, effort)
    fillings: Fillings = []
    bound, proofs = 0, set()
    of_stock: dict[str, Bound] = {}
    for blanks, stocks in _separate(demand, stock):
        ids = {s.id for s in stocks}
        own = [k for k in kept if k.stock in ids]
        least = least_cost(blanks, stocks, own, effort=effort)
        made = _solve(blanks, stocks, own, least.value, effort, known, limit)
        fillings += made
        if len(stocks) == 1:
            if prove and sum(f.room.cost for f in made) > least.value:
                priced = least_by_patterns(blanks, stocks[0], own, made, effort=effort)
                least = max(least, Bound(priced.value * stocks[0].cost, priced.proof), key=lambda b: b.value)
            of_stock[stocks[0].id] = Bound(least.value // stocks[0].cost, least.proof)
        bound += least.value
        proofs.add(least.proof)
    place = {s.id: number for number, s in enumerate(stock)}
    fillings.sort(key=lambda f: (place[f.room.stock], f.room.kept is None, f.room.kept or "", -f.filled))
    counts = {}
    for s in stock:
        used = sum(f.room.stock == s.id and f.room.kept is None for f in fillings)
        least = of_stock.get(s.id) or least_sheets(demand, s, kept, effort=effort)
        counts[s.id] = StockCount(used, least)
    proof = max(proofs, key=PROOFS.index, default="none")
    return CuttingPlan(
        tuple(f.sheet() for f in fillings), counts, sum(f.room.cost for f in fillings), Bound(bound, proof)
    )


def _check(demand: Sequence[Blank], stock: Sequence[StockSize], kept: Sequence[KeptSize], effort: int) -> None:
    if not 0 <= effort < len(TRIES):
        raise InputValueError(f"'effort' must be 0 to {len(TRIES) - 1}: {effort}")
    for name, ids in (
        ("demand", [b.id for b in demand]),
        ("stock", [s.id for s in stock]),
        ("kept", [k.id for k in kept]),
    ):
        if len(set(ids)) != len(ids):
            raise InputValueError(f"'{name}' has an id twice")
    known = {s.id for s in stock}
    unknown = [k.stock for k in kept if k.stock not in known]
    unknown += [a for b in demand for a in b.allowed if a not in known]
    if unknown:
        raise InputValueError(f"stock '{unknown[0]}' does not exist")
    rooms = _bought(stock) + _at_hand(stock, kept)
    for blank in demand:
        if not any(room.holds(blank) for room in rooms):
            raise CannotCutError(blank.id)


def _separate(demand: Sequence[Blank], stock: Sequence[StockSize]) -> list[tuple[list[Blank], list[StockSize]]]:
    """Groups of blanks that can share no sheet with another group, with the stocks of each."""
    groups: list[set[str]] = []
    for blank in demand:
        joined = set(blank.allowed)
        apart = [g for g in groups if not g & joined]
        groups = [*apart, joined.union(*(g for g in groups if g & joined))]
    groups.sort(key=lambda g: min(number for number, s in enumerate(stock) if s.id in g))
    return [
        ([b for b in demand if b.allowed[0] in group], [s for s in stock if s.id in group]) for group in groups
    ]


def _bought(stock: Sequence[StockSize]) -> list[Room]:
    return [Room(s.id, None, s.w, s.h, s.cost, s.may_turn, s.least_cut) for s in stock]


def _at_hand(stock: Sequence[StockSize], kept: Sequence[KeptSize]) -> list[Room]:
    of = {s.id: s for s in stock}
    return [Room(k.stock, k.id, k.w, k.h, 0, of[k.stock].may_turn, of[k.stock].least_cut) for k in kept]


def _value(fillings: Fillings) -> Value:
    """What is to be least: cost, thin strips, then cuts, then the largest rectangle left over (negated)."""
    return (
        sum(f.room.cost for f in fillings),
        sum(f.thin for f in fillings),
        sum(len(f.cuts) for f in fillings),
        -max((f.largest_left for f in fillings), default=0),
    )


def _solve(
    blanks: Sequence[Blank],
    stocks: Sequence[StockSize],
    kept: Sequence[KeptSize],
    bound: int,
    effort: int,
    known: Sequence[CutSheet],
    limit: int | None,
) -> Fillings:
    rooms, at_hand = _bought(stocks), _at_hand(stocks, kept)
    begun = _begun(blanks, rooms, at_hand, known)
    if begun is None or (effort > 0 and len(blanks) <= MANY_BLANKS):
        begun = _construct(blanks, rooms, at_hand, begun, limit)
    best = cheaper(begun, rooms, at_hand, bound=bound, steps=STEPS[effort])
    return _improve(best, rooms, at_hand, bound, TRIES[effort] * 50 // max(50, len(blanks)))


def _begun(
    blanks: Sequence[Blank], rooms: Sequence[Room], at_hand: Sequence[Room], known: Sequence[CutSheet]
) -> Fillings | None:
    """The sheets known that hold these blanks; None if not all blanks are on them."""
    by_id = {blank.id: blank for blank in blanks}
    room_of = {(room.stock, room.kept): room for room in (*rooms, *at_hand)}
    ours = [
        Filling.of(sheet, room_of[sheet.stock, sheet.kept], by_id)
        for sheet in known
        if any(part.blank in by_id for part in sheet.parts)
    ]
    return ours if sum(len(filling.placed) for filling in ours) == len(blanks) else None


def _construct(
    blanks: Sequence[Blank],
    rooms: Sequence[Room],
    at_hand: Sequence[Room],
    begun: Fillings | None,
    limit: int | None,
) -> Fillings:
    """Best of all manners, over subsets of the stocks, with and without the kept rectangles.

    None may be found that is better than what was begun with; then that is returned.

    Raises:
        CannotCutError: Nothing was begun with, and nothing found that costs no more than `limit`.
    """
    some_manners = MANNERS if len(blanks) <= MANY_BLANKS else MANNERS[:2]
    sizes = range(1, len(rooms) + 1) if len(rooms) <= 4 else (1, 2, len(rooms))
    known: Known = {}
    ordered = list(manners(blanks, some_manners))
    best, best_value = begun, None if begun is None else _value(begun)
    # Where all sheets cost the same, none is exchanged for a cheaper one after packing.
    alike = len({room.cost for room in rooms}) == 1
    for size in sizes:
        for some in combinations(rooms, size):
            for hand in [at_hand, []] if at_hand else [[]]:
                for listed, manner in ordered:
                    most = limit if best_value is None else best_value[0]
                    try:
                        found = pack(listed, some, hand, manner, limit=most if alike else None)
                    except CannotCutError:
                        continue
                    found = [_reduced(filling, rooms, known) for filling in found]
                    value = _value(found)
                    if best_value is None or value < best_value:
                        best, best_value = found, value
    if best is None or (begun is None and limit is not None and _value(best)[0] > limit):
        raise CannotCutError(blanks[0].id)
    return best


def _repacked(blanks: Sequence[Blank], room: Room) -> Filling | None:
    """The blanks in this one room with the fewest cuts and the largest rectangle left; None if they do not fit."""
    if sum(b.w * b.h for b in blanks) > room.w * room.h or not all(room.holds(b) for b in blanks):
        return None
    best: Filling | None = None
    best_value: Value | None = None
    # A single blank has but one place to go, however that is chosen.
    for listed, manner in manners(blanks, MANNERS if len(blanks) > 1 else MANNERS_OF_ONE):
        try:
            found = pack(listed, (), (), manner, (Filling(room),))
        except CannotCutError:
            continue
        value = _value(found)
        if best is None or best_value is None or value < best_value:
            best, best_value = found[0], value
        if len(best.free) <= 1:
            # All that is left lies together: no other way leaves a larger rectangle or takes fewer cuts.
            break
    return best


def recut(sheet: CutSheet, blanks: Sequence[Blank], stock: Sequence[StockSize]) -> CutSheet | None:
    """A sheet cut into other blanks; None where they do not fit it.

    Args:
        sheet: What was cut; only its size matters.
        blanks: What it is to be cut into.
        stock: Holds the sheet's stock.
    """
    of = {s.id: s for s in stock}[sheet.stock]
    cost = 0 if sheet.kept else of.cost
    found = _repacked(blanks, Room(of.id, sheet.kept, sheet.w, sheet.h, cost, of.may_turn, of.least_cut))
    return None if found is None else found.sheet()


def _reduced(filling: Filling, rooms: Sequence[Room], known: Known) -> Filling:
    """The same blanks from the cheapest sheet that holds them; `known` remembers what was tried."""
    if filling.room.kept is not None:
        return filling
    blanks = [blank for *_, blank in filling.placed]
    for room in sorted(rooms, key=lambda room: (room.cost, room.stock)):
        if room.cost >= filling.room.cost:
            break
        tried = (room.stock, tuple(sorted(blank.id for blank in blanks)))
        if tried not in known:
            known[tried] = _repacked(blanks, room)
        found = known[tried]
        if found is not None:
            return found
    return filling


def _improve(best: Fillings, rooms: Sequence[Room], at_hand: Sequence[Room], bound: int, tries: int) -> Fillings:
    """Empty a few sheets, pack their blanks again in a shuffled order, keep what is no worse.

    More tries continue the same sequence, so they never end worse.
    """
    random = Random(SEED)
    tidied: dict[tuple[str, ...], Filling | None] = {}
    now, tidiest = best, _tidied(best, tidied)
    known: Known = {}
    for _ in range(tries):
        if _value(best)[0] <= bound:
            break
        emptied = set(random.sample(range(len(now)), min(len(now), random.randint(2, 4))))
        emptied.add(min(range(len(now)), key=lambda index: (now[index].filled, index)))
        manner = random.choice(MANNERS)
        blanks = in_order([b for index in sorted(emptied) for *_, b in now[index].placed], manner.order)
        for index in range(len(blanks) - 1):
            if random.random() < 0.2:
                blanks[index], blanks[index + 1] = blanks[index + 1], blanks[index]
        stays = [filling for index, filling in enumerate(now) if index not in emptied]
        taken = {filling.room.kept for filling in stays}
        hand = [room for room in at_hand if room.kept not in taken]
        some = random.sample(list(rooms), random.randint(1, len(rooms)))
        try:
            fresh = [_reduced(filling, rooms, known) for filling in pack(blanks, some, hand, manner)]
        except CannotCutError:
            continue
        found = stays + fresh
        if _promise(found) >= _promise(now):
            now = found
            if _value(now) < _value(best):
                best, tidiest = now, min(tidiest, _tidied(now, tidied), key=_value)
    return tidiest


def _tidied(fillings: Fillings, known: dict[tuple[str, ...], Filling | None]) -> Fillings:
    """The same blanks on each sheet, with fewer cuts or more left over in one; only if that is better in all.

    Args:
        fillings: The sheets.
        known: By sheet and blanks, how they were cut before; added to.
    """
    tidy = []
    for filling in fillings:
        blanks = [blank for *_, blank in filling.placed]
        same = (filling.room.stock, filling.room.kept or "", *sorted(blank.id for blank in blanks))
        if same not in known:
            known[same] = _repacked(blanks, filling.room)
        tidy.append(known[same] or filling)
    return min(fillings, tidy, key=_value)


def _promise(fillings: Fillings) -> tuple[int, int]:
    """Cheaper is better; at equal cost, uneven sheets are: the emptiest is the next to go."""
    return -sum(f.room.cost for f in fillings), sum(f.filled**2 for f in fillings)
