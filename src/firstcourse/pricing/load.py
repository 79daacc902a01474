"""What is carried in, what fits through the way in, and what is carried out again."""

import math
from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Literal

from shapely import Polygon

from firstcourse.findings import Finding, Severity
from firstcourse.plan import Plan
from firstcourse.pricing.book import PriceBook
from firstcourse.pricing.offer import Load, OrderLine, figures
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Measure, length, measure, most

_M = TICKS_PER_MM * 1000
_TURN = 2 * math.sqrt(2)
"""Longest flat thing that is carried on edge round a square turn between ways of one width, in those widths."""


def load(plan: Plan, lines: Sequence[OrderLine], book: PriceBook) -> Load:
    """Mass, trips and waste of an order.

    Args:
        plan: A plan.
        lines: What is ordered.
        book: The way in, and how waste goes.
    """
    kg = sum((line.kg for line in lines if line.kg is not None), Decimal(0))
    unknown = tuple(line.item for line in lines if line.kg is None)
    waste = [*_board_waste(plan), *_tile_waste(plan, lines)]
    waste_kg = figures(math.fsum(mass for mass, _ in waste))
    litres = figures(1000 * math.fsum(volume for _, volume in waste))
    ways = [
        (one.price * number, number, one.by)
        for one in book.disposal
        if (number := max(math.ceil(litres / one.litres), math.ceil(waste_kg / one.most_kg)))
    ]
    by: Literal["", "skip", "bag"]
    _, number, by = min(ways) if ways else (Decimal(0), 0, "")
    trips = None if book.access is None else math.ceil(kg / book.access.trip_kg)
    return Load(
        kg=kg,
        unknown=unknown,
        trips=trips,
        climbed=None if book.access is None or trips is None else trips * book.access.steps,
        waste_kg=waste_kg,
        waste_litres=litres,
        by=by,
        number=number,
    )


def _board_waste(plan: Plan) -> Iterator[tuple[float, float]]:
    """Mass [kg] and volume [m³] of new sheets that end up neither on a surface nor on the rack."""
    for item in plan.stock:
        mass = plan.workings.get(f"quantities-sheet_mass@stock/{item.id}")
        if mass is None or not isinstance(mass.result, Measure):
            continue
        area = item.size[0] * item.size[1]
        left = 0.0
        piece_of = {piece.id: piece for piece in plan.pieces}
        for sheet in plan.sheets:
            if sheet.stock != item.id or sheet.source != "new":
                continue
            used = [piece_of[part.piece] for part in sheet.parts if part.piece is not None]
            left += sheet.size[0] * sheet.size[1]
            left -= math.fsum(Polygon(piece.outline, piece.holes).area for piece in used)
            left -= sum(part.size[0] * part.size[1] for part in sheet.parts if part.keep and part.piece is None)
        yield left / area * mass.result.value, left * item.thickness / _M**3


def _tile_waste(plan: Plan, lines: Sequence[OrderLine]) -> Iterator[tuple[float, float]]:
    """Mass and volume of what is cut off or breaks; the density is that of the plan's own layers of tile."""
    need = {line.item: float(line.exact + line.breakage) for line in lines}
    for item in plan.tile_stock:
        laid, density = 0.0, 0.0
        for surface in plan.surfaces:
            own = [tile for tile in surface.tiles if tile.stock == item.id and not tile.fixed]
            laid += math.fsum(Polygon(tile.outline, tile.holes).area for tile in own)
            for layer in surface.layers if own else ():
                if layer.of == "tile" and layer.thickness == item.thickness:
                    density = max(density, layer.density_kg_m3 or 0.0)
        face = float(item.size[0] * item.size[1])
        if item.shape == "hexagon":
            face = item.size[0] ** 2 * math.sqrt(3) / 2
        volume = max(0.0, need.get(f"tile_stock/{item.id}", 0.0) * face - laid) * item.thickness / _M**3
        yield volume * density, volume


def way_in(plan: Plan, book: PriceBook) -> Iterator[Finding]:
    """Sheets that do not go round the turn of the stair or under the lowest door, carried on either edge."""
    access = book.access
    if access is None or access.turn_wide is None:
        return
    longest = _TURN * float(access.turn_wide)
    high = math.inf if access.door_high is None else float(access.door_high)
    used = {sheet.stock for sheet in plan.sheets if sheet.source == "new"}
    for item in plan.stock:
        short, long = (side / TICKS_PER_MM for side in sorted(item.size))
        if item.id in used and not (short <= high and long <= longest) and not (long <= high and short <= longest):
            yield Finding(
                code="PRI-104",
                severity=Severity.FIX,
                at=(f"stock/{item.id}",),
                measured=length(max(item.size)),
                limit=most(measure(longest, "mm")),
                remedies=("cut",),
            )
