"""What each alternative takes, which is best at what, and which another beats in all."""

import hashlib
import math
from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Literal, NamedTuple

from shapely import Polygon

from firstcourse.alternatives.asked import Change
from firstcourse.findings import Severity
from firstcourse.plan import Frozen, Plan, Ring
from firstcourse.plan.base import Ticks
from firstcourse.pricing import Offer
from firstcourse.pricing.offer import Amount
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import kept

_M = TICKS_PER_MM * 1000
_UNDER_BOARDS = ("board", "board_mortar")


class Figures(Frozen):
    """What a plan takes.

    Attributes:
        sheets: New ones; `cuts` are those across sheets, `tile_cuts` the tiles that are cut.
        smallest_cut: Least side of any cut tile where tile starts as planned; None where none is cut.
        waste_m2: Area of new sheets that is neither hung nor kept.
        kg: Mass of boards and tile with the mortar and beds they lie in, without grout and fasteners.
        height: Greatest height that is built on a floor.
        hours: By the rates of a price book; None without one, likewise `cost`, with tax, in its currency.
        complete: Everything to buy and to do has its price.
        days: From the first to the last day on the calendar; None where the job has no schedule.
    """

    sheets: int
    cuts: int
    tile_cuts: int
    smallest_cut: Ticks | None
    waste_m2: float
    kg: float
    height: Ticks
    hours: Amount | None = None
    cost: Amount | None = None
    complete: bool = True
    days: int | None = None


class Row(Frozen):
    """One alternative; the first of a comparison is the job as it stands and has no name.

    Attributes:
        plan: SHA-256 of its plan.json; empty where it cannot be planned.
        price: SHA-256 of its price.json; empty without one.
        stops: Codes of its findings that stop the work: such a one is best at nothing and beats none.
        problem: Why it cannot be planned, as the reader of jobs says it; else empty.
        beaten_by: Numbers of those that are no worse in anything and better in something, counted from 0.
    """

    name: str
    changes: tuple[Change, ...] = ()
    plan: str = ""
    price: str = ""
    figures: Figures | None = None
    stops: tuple[str, ...] = ()
    problem: str = ""
    beaten_by: tuple[int, ...] = ()


class Comparison(Frozen):
    """Alternatives side by side.

    Attributes:
        currency: Of what they cost; empty without a price book.
        invented: The price book is made up for an example.
        best: By `cheapest`, `lightest`, `quickest`, `fewest_cuts` and `least_waste`: numbers of the rows that are.
    """

    format: Literal["firstcourse-comparison"] = "firstcourse-comparison"
    version: Literal[1] = 1
    job: str
    currency: str = ""
    invented: bool = False
    rows: tuple[Row, ...]
    best: dict[str, tuple[int, ...]]


def figures_of(plan: Plan, offer: Offer | None) -> Figures:
    """What a plan takes.

    Args:
        plan: A plan.
        offer: Its order and price, where there is a price book.
    """
    areas = [area for surface in plan.surfaces for area in surface.tiled if area.starts]
    least = [area.starts[0].smallest_cut for area in areas if area.starts[0].smallest_cut]
    days = None
    if (calendar := plan.schedule) is not None:
        first = min(date.fromisoformat(task.starts[:10]) for task in calendar.tasks)
        days = (date.fromisoformat(calendar.ends[:10]) - first).days + 1
    floors = [surface for surface in plan.surfaces if surface.kind == "floor"]
    return Figures(
        sheets=sum(sheet.source == "new" for sheet in plan.sheets),
        cuts=sum(len(sheet.cuts) for sheet in plan.sheets),
        tile_cuts=sum(not tile.whole for surface in plan.surfaces for tile in surface.tiles),
        smallest_cut=min(least) if least else None,
        waste_m2=_waste(plan),
        kg=_mass(plan),
        height=max((sum(layer.thickness for layer in floor.layers) for floor in floors), default=0),
        hours=None if offer is None else sum((task.hours for task in offer.tasks), Decimal(0)),
        cost=None if offer is None else offer.total,
        complete=offer is None or offer.complete,
        days=days,
    )


def _area(outline: Ring, holes: Sequence[Ring] = ()) -> float:
    return float(Polygon(outline, holes).area) / _M**2


def _waste(plan: Plan) -> float:
    piece_of = {piece.id: piece for piece in plan.pieces}
    left = []
    for sheet in plan.sheets:
        if sheet.source != "new":
            continue
        left.append(sheet.size[0] * sheet.size[1] / _M**2)
        for part in sheet.parts:
            if part.piece is not None:
                left.append(-_area(piece_of[part.piece].outline, piece_of[part.piece].holes))
            elif part.keep:
                left.append(-part.size[0] * part.size[1] / _M**2)
    return kept(round(math.fsum(left), 6))


def _mass(plan: Plan) -> float:
    masses = []
    for surface in plan.surfaces:
        boards = math.fsum(_area(board.outline, board.holes) for board in surface.boards)
        tile = math.fsum(_area(tile.outline, tile.holes) for tile in surface.tiles)
        for layer in surface.layers:
            under = boards if layer.of in _UNDER_BOARDS else tile
            masses.append(under * layer.thickness / _M * layer.density_kg_m3)
    return kept(round(math.fsum(masses), 3))


class Tried(NamedTuple):
    """An alternative as it was tried: its plan and price with their documents, or why it cannot be planned."""

    name: str
    changes: tuple[Change, ...]
    plan: Plan | None = None
    document: str = ""
    offer: Offer | None = None
    price: str = ""
    problem: str = ""


def comparison(job: str, tried: Sequence[Tried]) -> Comparison:
    """Alternatives side by side.

    Args:
        job: The job's name.
        tried: What was tried; the first is the job as it stands.
    """
    made = [_row(one) for one in tried]
    currency = next((one.offer.currency for one in tried if one.offer is not None), "")
    sound = {number: row.figures for number, row in enumerate(made) if row.figures is not None and not row.stops}
    beaten = [
        row.model_copy(update={"beaten_by": _beaten_by(row.figures, sound)}) if row.figures is not None else row
        for row in made
    ]
    invented = any(one.offer is not None and one.offer.book.is_invented for one in tried)
    return Comparison(job=job, currency=currency, invented=invented, rows=tuple(beaten), best=_best(sound))


def _row(one: Tried) -> Row:
    if one.plan is None:
        return Row(name=one.name, changes=one.changes, problem=one.problem)
    return Row(
        name=one.name,
        changes=one.changes,
        plan=hashlib.sha256(one.document.encode()).hexdigest(),
        price="" if one.offer is None else hashlib.sha256(one.price.encode()).hexdigest(),
        figures=figures_of(one.plan, one.offer),
        stops=tuple(sorted({found.code for found in one.plan.findings if found.severity is Severity.STOP})),
    )


def _worth(found: Figures) -> dict[str, float | Decimal]:
    """Figures of which less is better, by name; those that are not there are left out."""
    smallest = math.inf if found.smallest_cut is None else found.smallest_cut
    asked = {
        "sheets": found.sheets,
        "cuts": found.cuts,
        "tile_cuts": found.tile_cuts,
        "smallest_cut": -smallest,
        "waste_m2": found.waste_m2,
        "kg": found.kg,
        "height": found.height,
        "hours": found.hours if found.complete else None,
        "cost": found.cost if found.complete else None,
        "days": found.days,
    }
    return {name: value for name, value in asked.items() if value is not None}


def _beaten_by(own: Figures, sound: Mapping[int, Figures]) -> tuple[int, ...]:
    """Who is no worse in anything; only whoever has the same figures can be compared in all of them."""
    mine = _worth(own)
    found = []
    for number, other in sound.items():
        theirs = _worth(other)
        if theirs.keys() == mine.keys() and theirs != mine and all(theirs[name] <= mine[name] for name in mine):
            found.append(number)
    return tuple(found)


def _best(sound: Mapping[int, Figures]) -> dict[str, tuple[int, ...]]:
    whole = {number: one for number, one in sound.items() if one.complete}
    by_days = all(one.days is not None for one in sound.values())
    asked: dict[str, dict[int, float | Decimal]] = {
        "cheapest": {number: one.cost for number, one in whole.items() if one.cost is not None},
        "lightest": {number: one.kg for number, one in sound.items()},
        "quickest": (
            {number: one.days for number, one in sound.items() if one.days is not None}
            if by_days
            else {number: one.hours for number, one in whole.items() if one.hours is not None}
        ),
        "fewest_cuts": {number: one.cuts + one.tile_cuts for number, one in sound.items()},
        "least_waste": {number: one.waste_m2 for number, one in sound.items()},
    }
    return {
        name: tuple(number for number, value in values.items() if value == min(values.values()))
        for name, values in asked.items()
        if values
    }
