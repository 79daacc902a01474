"""Quantities counted again from what the drawings show, and the claims that workings must stand behind."""

from collections import Counter
from collections.abc import Iterator

from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM
from firstcourse.verify.structure import Document, Quantity
from firstcourse.verify.verdict import Objection

_FEET = ("ft", "feet")
_WALL_KINDS = ("wall", "ceiling", "counter")


def check_quantities(plan: Document) -> Iterator[Objection]:
    """Object to a quantity that the sheets, fasteners and seams do not bear out, or that buys too little."""
    counts = _recounted(plan)
    for name in sorted(n for n, k in Counter(q.item for q in plan.quantities).items() if k > 1):
        yield Objection("VER-803", name, "is listed twice")
    for quantity in plan.quantities:
        if quantity.exact < 0 or (quantity.exact > 0 and quantity.buy == 0):
            yield Objection("VER-802", quantity.item, "is less than nothing, or is needed and not bought")
        if quantity.item in counts and quantity.exact != counts[quantity.item]:
            yield Objection("VER-801", quantity.item, f"{quantity.exact} said, {counts[quantity.item]} counted")
        if quantity.item in counts and quantity.item.startswith("sheets ") and quantity.buy < quantity.exact:
            yield Objection("VER-802", quantity.item, "buys fewer sheets than are cut")
        if quantity.item == "seam tape":
            yield from _tape(plan, quantity)
        if quantity.working and quantity.working not in plan.workings:
            yield Objection("VER-902", quantity.item, f"working '{quantity.working}' does not exist")


def _recounted(plan: Document) -> dict[str, int]:
    sheets = Counter(sheet.stock for sheet in plan.sheets if sheet.source == "new")
    found = {f"sheets {stock}": sheets[stock] for stock in sorted(plan.stock)}
    loose = [(surface.kind, board) for surface in plan.surfaces for board in surface.boards if not board.fixed]
    found["fasteners floor"] = sum(len(board.fasteners) for kind, board in loose if kind == "floor")
    found["fasteners wall"] = sum(len(board.fasteners) for kind, board in loose if kind in _WALL_KINDS)
    tiles = [tile for surface in plan.surfaces for tile in surface.tiles if not tile.fixed]
    for stock in sorted(plan.tile_stock):
        own = [tile for tile in tiles if tile.stock == stock]
        sources = {tile.source for tile in own if not tile.whole}
        found[f"tiles {stock}"] = sum(tile.whole for tile in own) + len(sources)
    found["fasteners"] = found["fasteners floor"] + found["fasteners wall"]
    return found


def _tape(plan: Document, quantity: Quantity) -> Iterator[Objection]:
    """Tape covers at least every taped seam; corners between surfaces come on top."""
    length = 0.0
    for surface in plan.surfaces:
        for seam in surface.seams:
            if seam.tape:
                (au, av), (bu, bv) = seam.line
                length += ((bu - au) ** 2 + (bv - av) ** 2) ** 0.5
    per_unit = TICKS_PER_FOOT if quantity.unit in _FEET else TICKS_PER_MM * 1000
    if quantity.exact * per_unit < length * 0.999:
        yield Objection("VER-801", quantity.item, "is shorter than the seams that it covers")
