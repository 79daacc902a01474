"""How much of each task a plan asks for, counted from what is drawn."""

import math
from collections import Counter
from collections.abc import Iterator
from decimal import Decimal

from shapely import Polygon

from firstcourse.geometry import sides
from firstcourse.plan import Plan, Ring, SurfaceKind
from firstcourse.pricing.offer import figures
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Measure, Word
from firstcourse.workings import Working

_M = TICKS_PER_MM * 1000
LARGE_MM = 381.0
"""A tile with a side of 15 in or more is large (ANSI A108.02, 4.2.2): flatness and offsets are asked otherwise."""
_MIXED = ("bedding_mortar", "tile_mortar", "large_tile_mortar", "grout")

Work = dict[str, tuple[Decimal, str]]
"""By task, how much of it there is and in which unit."""


def work(plan: Plan, carried_kg: Decimal) -> Work:
    """Tasks with their amounts; what there is none of is left out.

    Args:
        plan: A plan.
        carried_kg: Mass of the order [kg].
    """
    found: Work = {}
    for task, amount, unit in (*_rooms(plan), *_boards(plan), *_tiles(plan), *_bought(plan)):
        if amount > 0:
            found[task] = (figures(amount), unit)
    if carried_kg:
        found["carry"] = (carried_kg, "kg")
    return found


def _rooms(plan: Plan) -> Iterator[tuple[str, float, str]]:
    yield "set_up_room", len({surface.room for surface in plan.surfaces}), "room"
    floors = [surface for surface in plan.surfaces if surface.kind is SurfaceKind.FLOOR]
    yield "protect_and_clean", math.fsum(Polygon(one.outline).area for one in floors) / _M**2, "m2"


def _boards(plan: Plan) -> Iterator[tuple[str, float, str]]:
    up = {board.piece for surface in plan.surfaces for board in surface.boards if board.fixed}
    boards: Counter[str] = Counter()
    fasteners = 0
    for surface in plan.surfaces:
        own = [board for board in surface.boards if not board.fixed]
        boards[_place(surface.kind)] += len(own)
        fasteners += sum(len(board.fasteners) for board in own)
    for place in sorted(boards):
        yield f"set_board_{place}", boards[place], "board"
    yield "fasten", fasteners, "fastener"
    yield "cut_board", _cut_length(plan) / _M, "m"
    pieces = [piece for piece in plan.pieces if piece.id not in up]
    yield "cut_board_hole", sum(len(piece.holes) for piece in pieces), "hole"
    yield "cut_board_notch", sum(_inner_corners(piece.outline) for piece in pieces), "notch"


def _cut_length(plan: Plan) -> int:
    """Edge-to-edge cuts through sheets and kept offcuts [ticks]."""
    total = 0
    for sheet in plan.sheets:
        size = {sheet.id: sheet.size}
        for cut in sheet.cuts:
            wide, high = size.pop(cut.of)
            total += wide if cut.along == "x" else high
            halves = (
                ((wide, cut.at), (wide, high - cut.at))
                if cut.along == "x"
                else ((cut.at, high), (wide - cut.at, high))
            )
            size.update(zip(cut.gives, halves, strict=True))
    return total


def _inner_corners(ring: Ring) -> int:
    """Corners that turn inwards by more than a tenth of a right angle."""
    count = 0
    lines = list(sides(ring))
    for (a, b), (_, c) in zip(lines, [*lines[1:], lines[0]], strict=True):
        first, second = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
        cross = first[0] * second[1] - first[1] * second[0]
        count += cross < -math.sin(math.radians(9)) * math.hypot(*first) * math.hypot(*second)
    return count


def _tiles(plan: Plan) -> Iterator[tuple[str, float, str]]:
    size_of = {
        item.id: "mosaic" if item.sheet else "large_tile" if max(item.size) >= LARGE_MM * TICKS_PER_MM else "tile"
        for item in plan.tile_stock
    }
    found: Counter[str] = Counter()
    for surface in plan.surfaces:
        for tile in surface.tiles:
            if not tile.fixed and tile.stock in size_of:
                found[f"set_{size_of[tile.stock]}_{_place(surface.kind)}"] += 1
    for task in sorted(found):
        yield task, found[task], "tile"
    cuts: dict[str, list[float]] = {}
    for working in plan.workings.values():
        if working.formula == "quantities-cuts":
            for kind, along in zip(_words(working, "kinds"), _measures(working, "lengths"), strict=True):
                cuts.setdefault(kind, []).append(along)
    for kind in sorted(cuts):
        yield f"cut_tile_{kind}", math.fsum(cuts[kind]) / 1000, "m"


def _bought(plan: Plan) -> Iterator[tuple[str, float, str]]:
    need = {quantity.item: quantity for quantity in plan.quantities}
    yield "mix", math.fsum(need[item].exact for item in _MIXED if item in need), "kg"
    if "seam_tape" in need:
        yield "tape_seams", need["seam_tape"].exact / 1000, "m"
    combed: list[float] = []
    grouted: list[float] = []
    sealed: list[float] = []
    for quantity in plan.quantities:
        working = plan.workings[quantity.working]
        if working.formula in ("quantities-tile_mortar", "quantities-bedding_mortar"):
            combed += _measures(working, "area")
        elif working.formula == "quantities-grout":
            grouted += _measures(working, "area")
        elif working.formula == "quantities-joint_sealant":
            sealed += _measures(working, "along")
    yield "trowel", math.fsum(combed), "m2"
    yield "grout_joints", math.fsum(grouted), "m2"
    yield "seal_joints", math.fsum(sealed) / 1000, "m"


def _place(kind: SurfaceKind) -> str:
    return "floor" if kind is SurfaceKind.FLOOR else "wall" if kind is SurfaceKind.WALL else "other"


def _measures(working: Working, name: str) -> list[float]:
    found = working.inputs.get(name, ())
    return [one.value for one in (found if isinstance(found, tuple) else (found,)) if isinstance(one, Measure)]


def _words(working: Working, name: str) -> list[str]:
    found = working.inputs.get(name, ())
    return [one.word for one in (found if isinstance(found, tuple) else (found,)) if isinstance(one, Word)]
