"""How few sheets, or how little money, pieces can be proved to take, by area and by functions finer than area.

The sides of pieces are replaced by values that add up along any line across a sheet to no more than the value of
the sheet's side. Then pieces that fill a sheet have no more of the product of two such values than the sheet has,
however they are cut. Functions and proof: Fekete & Schepers 2001, Carlier, Clautiaux & Moukrim 2007; from memory.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from math import gcd
from typing import NamedTuple

from firstcourse.units import floor_to
from firstcourse.verify.structure import Document

Size = tuple[int, int]
_Function = Callable[[int], int]


class Offer(NamedTuple):
    """A sheet that can be bought: its size and its cost in whole units."""

    size: Size
    cost: int


def proves(pieces: Sequence[Size], offers: Sequence[Offer], kept: Sequence[Size], least: int) -> bool:
    """Whether pieces, turned as they may be, cannot be cut from sheets that cost less than `least` together.

    Args:
        pieces: Their blanks.
        offers: Sheets that they may be cut from.
        kept: Offcuts that cost nothing.
        least: In the unit of the costs.
    """
    if least <= 0:
        return True
    if not pieces or not offers:
        return False
    sizes = [offer.size for offer in offers] + list(kept)
    wanted = Counter((min(piece), max(piece)) for piece in pieces)
    wide, high = max(w for w, _ in sizes), max(h for _, h in sizes)
    ways = {(low, long): [way for way in ((low, long), (long, low)) if _fits(way, sizes)] for low, long in wanted}
    if not all(ways.values()):
        return False
    sides = {side for piece in wanted for side in piece}
    for across in _functions(wide, sides):
        for up in _functions(high, sides):

            def value(size: Size, across: _Function = across, up: _Function = up) -> int:
                return across(size[0]) * up(size[1])

            need = sum(number * min(map(value, ways[piece])) for piece, number in wanted.items())
            if _cost(need - sum(map(value, kept)), [(value(o.size), o.cost) for o in offers]) >= least:
                return True
    return False


def _fits(piece: Size, sizes: Sequence[Size]) -> bool:
    return any(piece[0] <= w and piece[1] <= h for w, h in sizes)


def _cost(need: int, offers: Sequence[tuple[int, int]]) -> int:
    """The least that so much of a value costs at the best rate, in whole sheets."""
    rates = [-(-need * cost // worth) for worth, cost in offers if worth > 0]
    if need <= 0 or not rates:
        return 0
    step = gcd(*(cost for _, cost in offers))
    return -(-min(rates) // step) * step


def _functions(whole: int, sides: set[int]) -> Iterator[_Function]:
    """A side itself; in parts of the whole; none where it is small; a number of small ones."""
    yield lambda side: side
    for parts in (1, 2, 3):

        def counted(side: int, parts: int = parts) -> int:
            number, rest = divmod((parts + 1) * side, whole)
            return number * whole if rest else parts * side

        yield counted
    for least in sorted({min(side, whole - side) for side in sides if 0 < side < whole}, reverse=True):

        def large(side: int, least: int = least) -> int:
            return 0 if side < least else whole if side > whole - least else side

        def units(side: int, least: int = least) -> int:
            if 2 * side == whole:
                return whole // least
            return 2 * (whole // least - (whole - side) // least) if 2 * side > whole else 2 * (side // least)

        yield large
        yield units


def proves_sheets(plan: Document, stock: str, least: int) -> bool:
    """Whether so many sheets of a stock are needed for the pieces that may be cut from no other."""
    pieces = [blank for blank, stocks in _pieces(plan) if stocks == {stock}]
    return proves(pieces, [Offer(_marked(plan.stock[stock], plan), 1)], _kept(plan, {stock}), least)


def proves_cost(plan: Document, counts: dict[str, int], least: int) -> bool:
    """Whether all pieces cannot be cut for less; `counts` are the fewest sheets of each stock, proved apart.

    Args:
        plan: With every sheet's price.
        counts: By stock.
        least: In hundredths.
    """
    price = {name: max(1, round(100 * (item.price or 0))) for name, item in plan.shopping.sheet_stock.items()}
    found, groups = _pieces(plan), _groups([stocks for _, stocks in _pieces(plan)])
    alone = sum(counts.get(name, 0) * price[name] for group in groups if len(group) == 1 for name in group)
    several = [group for group in groups if len(group) > 1]
    if not several:
        return least <= alone
    if len(several) > 1:
        # What each takes is not told apart: area alone is asked of each.
        return least <= alone + sum(_by_area(plan, found, group, price) for group in several)
    (group,) = several
    pieces = [blank for blank, stocks in found if stocks <= group]
    offers = [Offer(_marked(plan.stock[name], plan), price[name]) for name in sorted(group)]
    return proves(pieces, offers, _kept(plan, group), least - alone)


def _by_area(plan: Document, found: list[tuple[Size, set[str]]], group: set[str], price: dict[str, int]) -> int:
    need = sum(w * h for (w, h), stocks in found if stocks <= group) - sum(w * h for w, h in _kept(plan, group))
    sheets = [(_marked(plan.stock[name], plan), price[name]) for name in group]
    return _cost(need, [(w * h, cost) for (w, h), cost in sheets])


def _groups(asked: Sequence[set[str]]) -> list[set[str]]:
    """Stocks in sets of which no piece may be cut from more than one."""
    groups: list[set[str]] = []
    for stocks in asked:
        joined = set(stocks).union(*(group for group in groups if group & stocks))
        groups = [group for group in groups if not group & stocks] + [joined]
    return groups


def _pieces(plan: Document) -> list[tuple[Size, set[str]]]:
    """Every blank to be cut, and the stocks of its thickness and family, large enough, that it may be cut from."""
    surface_of = {board.id: surface for surface in plan.surfaces for board in surface.boards}
    by_id = {surface.id: surface for surface in plan.surfaces}
    used_for = {
        node.text("id"): {kind for kind, _ in node.rows("for", ())} for node in plan.job.nodes("stock", ())
    }
    found = []
    for piece in plan.to_cut:
        surface, own = surface_of[piece.board], plan.shopping.sheet_stock[piece.stock]
        # Boards of a window's sill and head are cut from what its wall is boarded with.
        kind = by_id.get(surface.part_of, surface).kind
        stocks = {
            name
            for name, item in plan.shopping.sheet_stock.items()
            if (item.thickness, item.kind) == (own.thickness, own.kind)
            and min(piece.blank) <= min(item.size)
            and max(piece.blank) <= max(item.size)
            and (not surface.board_stock or name in surface.board_stock)
            and (not used_for.get(name) or kind in used_for[name])
        }
        # The rule book's floor and wall boards serve floors, and walls and ceilings.
        found.append((piece.blank, stocks if used_for else {piece.stock}))
    return found


def _kept(plan: Document, stocks: set[str]) -> list[Size]:
    return [
        _marked(offcut.size("size"), plan)
        for offcut in plan.job.nodes("offcuts", ())
        if offcut.text("stock") in stocks
    ]


def _marked(size: Size, plan: Document) -> Size:
    """In whole marks of the tape: what a sheet has beyond its last mark is never cut off."""
    return floor_to(size[0], plan.tape.graduation), floor_to(size[1], plan.tape.graduation)
