"""How many soft joints there are, how many tiles are cut, and how high kerbs and sills lie."""

import math
from collections.abc import Iterator, Mapping

import numpy as np
from shapely import Geometry, Polygon
from shapely.affinity import rotate
from shapely.ops import unary_union

from firstcourse.geometry import bounds, sides
from firstcourse.units import TICKS_PER_MM, ceil_to, ticks_from_mm, to_mm
from firstcourse.verify.formulas.proving import CODE, Prove, just, key_of, limited, long, only, rests_on
from firstcourse.verify.shopping_fields import Given, Working, number_of
from firstcourse.verify.soft_joints import asked_of
from firstcourse.verify.soft_reasons import lines_across
from firstcourse.verify.structure import Document, Opening, Surface
from firstcourse.verify.tiles import blank
from firstcourse.verify.verdict import Objection

SOFT, CUT, KERB, SILL = "tiles-soft_joints", "tiles-cut", "tiles-kerb_face", "tiles-sill"
_WAYS = (
    [{"word": "level"}, {"word": "upright"}],
    [{"word": "upright"}, {"word": "level"}],
    [{"word": "slanted"}] * 2,
)
_ROUNDED = 4
"""Outlines are rounded to ticks, slanting ones twice [ticks]."""
_MANY = 50
"""Tiles whose sides show every way in which a pattern's lie."""
_CONCAVE_MM2 = 1e-3
_SAME = 1e-6


def expected(plan: Document) -> Iterator[str]:
    """One for the soft joints of every tiled surface, for every kind of tile, each kerb and each lined sill."""
    yield from (key_of(SOFT, surface.id) for surface in plan.surfaces if surface.tiled)
    yield from (key_of(CUT, f"tile_stock/{name}") for name in plan.tile_stock)
    for surface in plan.surfaces:
        if _kerb_top(surface, plan) is not None:
            yield key_of(KERB, surface.id)
        for window in surface.openings:
            if _sill(surface, window, plan) is not None:
                yield key_of(SILL, f"{surface.id}/opening/{window.id}")


def _kerb_top(floor: Surface, plan: Document) -> Surface | None:
    """The tiled top of a shower floor's kerb, where the heights of both floors are known."""
    fall = floor.fall
    if fall is None or fall.drain_height is None or fall.room_floor is None:
        return None
    tops = (one for one in plan.surfaces if one.part_of == floor.id and one.kind == "counter" and one.tiled)
    return next(tops, None)


def _sill(wall: Surface, window: Opening, plan: Document) -> Surface | None:
    if window.kind != "window" or wall.kind != "wall" or not window.depth:
        return None
    return next((one for one in plan.surfaces if one.id == f"{wall.id}/{window.id}/sill"), None)


def _soft(plan: Document, working: Working) -> Iterator[Objection]:
    surface = next(one for one in plan.surfaces if one.id == working.at[0])
    asked = asked_of(surface, plan)
    yield from only(working, "spacing", "edge", "width", "ways", "across", "extents", "rules")
    yield from long(working, "spacing", asked.spacing)
    for name, least in (("edge", asked.edge), ("width", asked.width)):
        given = working.number(name)
        if not asked.by_heat:
            yield from long(working, name, least)
        elif given is None or given * TICKS_PER_MM < least - 0.5:
            yield Objection(CODE, working.key, f"says {name} is {given} mm, narrower than the rules ask")
    for joint in surface.soft_joints:
        wide = working.number("edge" if joint.place == "edge" else "width")
        if wide is None or abs(joint.width - wide * TICKS_PER_MM) > 0.5:
            yield Objection(CODE, working.key, f"has a joint of {joint.width / TICKS_PER_MM} mm, not of {wide} mm")
    yield from _across(surface, working)
    yield from just(working, "rules", [{"ref": f"rule/{rule}"} for rule in asked.rules])
    yield from just(working, "result", len(surface.soft_joints))
    yield from rests_on(working, asked.rule)
    yield from limited(working)


def _across(surface: Surface, working: Working) -> Iterator[Objection]:
    """How many joints part the field each way, and how far it reaches square to them."""
    ways, across, extents = (working.inputs.get(name) for name in ("ways", "across", "extents"))
    if ways not in _WAYS:
        yield Objection(CODE, working.key, f"parts the field {ways}")
        return
    tiled = unary_union([area.shape for area in surface.tiled])
    told = _pairs(across, extents)
    found = [_parted(surface, tiled, turn) for turn in (_turns(surface) if ways == _WAYS[2] else (0.0,))]
    found = [rows[::-1] for rows in found] if ways == _WAYS[1] else found
    found += [rows[::-1] for rows in found] if ways == _WAYS[2] else []
    if not any(_as_told(told, rows, surface) for rows in found):
        said = ", ".join(f"{number} in {reach / TICKS_PER_MM:.1f} mm" for number, reach in found[0])
        yield Objection(CODE, working.key, f"tells joints across the field that are {said}")


def _turns(surface: Surface) -> list[float]:
    """By how much the slanting sides of its tiles lie turned [degrees]."""
    rings = [tile.laid or tile.outline for tile in surface.tiles[:_MANY]]
    turns = {
        round(math.degrees(math.atan2(d - b, c - a)) % 90, 1) for ring in rings for (a, b), (c, d) in sides(ring)
    }
    return sorted(turns)


def _parted(surface: Surface, tiled: Geometry, turn: float) -> list[tuple[int, float]]:
    """How many joints lie level and how many upright once the pattern is turned back, and how far it reaches."""
    left, low, right, high = rotate(tiled, -turn, origin=(0, 0)).bounds
    level, upright = lines_across(surface, turn)
    return [(level, high - low), (upright, right - left)]


def _pairs(across: Given, extents: Given) -> list[tuple[Given, Given]]:
    """Each number with its reach; none where the two are no lists of one length."""
    alike = isinstance(across, list) and isinstance(extents, list) and len(across) == len(extents)
    return list(zip(across, extents, strict=True)) if alike else []


def _as_told(told: list[tuple[Given, Given]], wanted: list[tuple[int, float]], surface: Surface) -> bool:
    gap = _ROUNDED + _left_out(surface)
    return len(told) == len(wanted) and all(
        type(number) is int and number == count and abs(_mm(reach) * TICKS_PER_MM - far) <= gap
        for (number, reach), (count, far) in zip(told, wanted, strict=True)
    )


def _left_out(surface: Surface) -> int:
    """How far the ground that is parted may reach past every tiled area: joints at a band, or open at an edge."""
    left, low, right, high = unary_union([area.shape for area in surface.tiled]).bounds
    gap = max((area.joint for area in surface.tiled if area.role == "band"), default=0)
    for joint in surface.soft_joints:
        (a, b), (c, d) = joint.line[0], joint.line[-1]
        off = (max(a, c) - left, max(b, d) - low, right - min(a, c), high - min(b, d))
        if joint.place == "field" and min(off) <= joint.width:
            gap = max(gap, joint.width)
    return gap


def _mm(given: Given) -> float:
    """A value's millimetres; what is no length lies beyond all."""
    found = number_of(given) if isinstance(given, Mapping) and given.get("unit") == "mm" else None
    return math.inf if found is None else found


def _cut(plan: Document, working: Working) -> Iterator[Objection]:
    name = working.at[0].removeprefix("tile_stock/")
    cut = [t for s in plan.surfaces for t in s.tiles if t.stock == name and not t.whole and not t.fixed]
    yield from only(working, "pieces", "kerf", "fewest")
    yield from just(working, "pieces", len(cut))
    kerf = plan.rules.ticks("tiling.kerf")
    yield from long(working, "kerf", kerf)
    yield from just(working, "result", len({tile.source for tile in cut}))
    yield from rests_on(working, "tiling.kerf")
    yield from limited(working)
    whole = _with_kerf(blank(plan.tile_stock[name]), kerf)
    shares = np.array([_with_kerf(Polygon(tile.outline), kerf) / whole for tile in cut])
    # Outlines are rounded to ticks: a piece may count as a hair less or more.
    low, high = (_fewest(shares * (1 + by)) for by in (-1e-4, 1e-4))
    fewest = working.number("fewest")
    if type(working.inputs.get("fewest")) is not int or fewest is None or not low <= fewest <= high:
        yield Objection(CODE, working.key, f"says that {fewest} whole tiles are needed; {low} to {high} are")


def _with_kerf(shape: Polygon, kerf: int) -> float:
    """Area of a piece and half a saw's cut all round it; of one with a notch its own, as another may lie in it."""
    if shape.convex_hull.area - shape.area > _CONCAVE_MM2 * TICKS_PER_MM**2:
        return float(shape.area)
    return float(shape.area + shape.length * kerf / 2 + math.pi * kerf**2 / 4)


def _fewest(shares: np.ndarray) -> int:
    """Whole tiles that pieces of these shares need at the least, whatever way they are cut.

    References:
        Martello and Toth, lower bound L2 for bin packing (1990).
    """
    best = math.ceil(shares.sum() - _SAME) if len(shares) else 0
    large, rest = shares[shares > 0.5 + _SAME], shares[shares <= 0.5 + _SAME]
    for least in {0.0, *rest.tolist()}:
        beside = large[large <= 1 - least + _SAME]
        filled = rest[rest >= least - _SAME].sum() - (len(beside) - beside.sum())
        best = max(best, len(large) + max(0, math.ceil(filled - _SAME)))
    return best


def _kerb(plan: Document, working: Working) -> Iterator[Objection]:
    floor = next(one for one in plan.surfaces if one.id == working.at[0])
    top, fall = _kerb_top(floor, plan), floor.fall
    if top is None or fall is None or fall.drain_height is None or fall.room_floor is None:
        return
    yield from only(working, "drain", "kerb", "fall", "tile", "floor")
    least = to_mm(fall.kerb_width or 0) * plan.rules.number("fall.shelf.min")
    drop = ceil_to(ticks_from_mm(least), plan.tape.graduation // 2)
    rows = {
        "drain": fall.drain_height,
        "kerb": fall.kerb or 0,
        "fall": drop,
        "tile": _tile_on(top),
        "floor": -fall.room_floor,
    }
    for name, height in rows.items():
        yield from long(working, name, abs(height) if name == "floor" else height)
    outer = sum(rows.values()) - 2 * rows["tile"]
    yield from long(working, "result", outer)
    yield from rests_on(working)
    yield from limited(working)
    for face in plan.surfaces:
        if face.part_of == floor.id and face.id.endswith("/outer") and abs(_high(face) - outer) > _ROUNDED:
            yield Objection(CODE, working.key, f"is not as high as {face.id} is drawn")


def _tile_on(surface: Surface) -> int:
    return sum(thickness for kind, thickness in surface.layers if kind in ("mortar", "tile"))


def _high(face: Surface) -> int:
    _, low, _, high = bounds(face.outline)
    return high - low


def _sill_heights(plan: Document, working: Working) -> Iterator[Objection]:
    wall_id, _, name = working.at[0].rpartition("/opening/")
    wall = next(one for one in plan.surfaces if one.id == wall_id)
    window = next(one for one in wall.openings if one.id == name)
    sill = _sill(wall, window, plan)
    if sill is None or window.outline is None:
        return
    yield from only(working, "front", "fall", "tile", "at_frame")
    low, on_sill = bounds(window.outline)[1], _tile_on(sill)
    side = next((one for one in plan.surfaces if one.id == f"{wall.id}/{window.id}/left"), None)
    feet = sorted(v for _, v in side.outline)[:2] if side is not None else [0, 0]
    drop = feet[1] - feet[0]
    yield from long(working, "front", low)
    yield from long(working, "fall", drop)
    yield from long(working, "tile", on_sill)
    yield from long(working, "at_frame", low + drop + on_sill)
    yield from long(working, "result", low + on_sill)
    yield from rests_on(working)
    yield from limited(working)


FORMULAS: dict[str, Prove] = {SOFT: _soft, CUT: _cut, KERB: _kerb, SILL: _sill_heights}
