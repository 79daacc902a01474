"""Shower floors: rise, bed, largest tile, levels and drops, from their planes, layers and the rules."""

import math
from collections.abc import Callable, Iterator, Mapping
from functools import partial

from firstcourse.units import TICKS_PER_MM, to_mm
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fall_geometry import TICKS3_PER_LITRE, folds_of, open_heights, volume
from firstcourse.verify.fall_given import shelves_of, shower_of, step_between_tiles
from firstcourse.verify.fall_rise import Rise
from firstcourse.verify.floor_heights import kerb_drop
from firstcourse.verify.formulas.proving import CODE, Prove, holds, just, key_of, limited, long, only, rests_on
from firstcourse.verify.layers import cover
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_RISE, _BED, _TILE, _RECESS, _DROP = (
    f"showers-{name}" for name in ("rise", "bed", "largest_tile", "recess", "drop")
)
_ON_BED, _BY_ENTRY = "showers-drain_on_bed", "showers-drain_by_entry"
_TICKS2_PER_M2 = (1000.0 * TICKS_PER_MM) ** 2
_FINE, _ROUNDED, _SHARE = 1e-8, 1e-4, 1e-4
"""What keeping nine figures, rounding a rise to ticks, and rounding all heights of planes may do to a number."""
Of = Callable[[Document, Surface, Fall, Working], Iterator[Objection]]


def expected(plan: Document) -> Iterator[str]:
    """What is worked out of every floor that falls."""
    for surface in plan.surfaces:
        fall = surface.fall
        if fall is None:
            continue
        yield key_of(_RISE, surface.id)
        yield key_of(_BED, surface.id)
        yield key_of(_ON_BED if _entry(surface, fall) is None else _BY_ENTRY, surface.id)
        if fall.largest_tile is not None:
            yield key_of(_TILE, surface.id)
        if fall.recess is not None:
            yield key_of(_RECESS, surface.id)
        if fall.kerb_width is not None:
            yield key_of(_DROP, f"{surface.id}/kerb")
        yield from (key_of(_DROP, ref) for ref in _shelves(surface, plan))


def _shelves(surface: Surface, plan: Document) -> dict[str, int]:
    """Depth of each shelf that the job gives in a shower [ticks], by its reference."""
    shower = shower_of(surface, plan)
    shelves = {} if shower is None else shelves_of(surface, shower)
    return {ref: shelf.length("depth") for ref, shelf in shelves.items()}


def _entry(surface: Surface, fall: Fall) -> int | None:
    """Rise where a floor meets the room's level; None where it does not [ticks]."""
    heights = open_heights(surface, fall)
    return max(heights) if heights and fall.room_floor is not None else None


def _rests(working: Working, rule: str = "") -> Iterator[Objection]:
    """Object unless a working rests on that rule; none of these has a limit."""
    yield from rests_on(working, rule)
    yield from limited(working)


def _of_floor(prove: Of, plan: Document, working: Working) -> Iterator[Objection]:
    for surface in plan.surfaces:
        if surface.id == working.at[0] and surface.fall is not None:
            yield from prove(plan, surface, surface.fall, working)


def _rise(plan: Document, surface: Surface, fall: Fall, working: Working) -> Iterator[Objection]:
    rules, rise = plan.rules, Rise.of(fall, plan.rules)
    used, names = ["fall.min"], ["least", "rise_planes", "rise_valleys", "least_plane", "least_flow", "steepest"]
    yield from holds(working, "least", rules.number("fall.min"), "", _FINE)
    yield from holds(working, "rise_planes", rise.planes / TICKS_PER_MM, "mm", _ROUNDED)
    if math.isinf(rise.valleys):
        yield from just(working, "rise_valleys", {"word": "no_limit"})
    else:
        yield from holds(working, "rise_valleys", rise.valleys / TICKS_PER_MM, "mm", _ROUNDED)
    yield from holds(working, "least_plane", fall.least_plane_fall, "", _FINE)
    yield from holds(working, "least_flow", fall.least_fall, "", _FINE)
    yield from holds(working, "steepest", fall.greatest_fall, "", _FINE)
    if rules.has("fall.max"):
        used.append("fall.max")
        names += ["greatest", "rise_allowed"]
        yield from holds(working, "greatest", rules.number("fall.max"), "", _FINE)
        yield from holds(working, "rise_allowed", rise.allowed / TICKS_PER_MM, "mm", _ROUNDED)
    yield from just(working, "rules", [{"ref": f"rule/{rule}"} for rule in used])
    yield from only(working, *names, "rules")
    yield from long(working, "result", fall.rise)
    yield from _rests(working, "fall.min")


def _bed(plan: Document, surface: Surface, fall: Fall, working: Working) -> Iterator[Objection]:
    area, held = volume(fall.planes)
    names = ["membrane", "area", "falls", "bed"]
    yield from just(working, "membrane", {"word": fall.membrane})
    yield from holds(working, "area", area / _TICKS2_PER_M2, "m2", _SHARE)
    yield from holds(working, "falls", held / TICKS3_PER_LITRE, "l", _SHARE)
    yield from long(working, "bed", fall.bed)
    if fall.membrane == "liner":
        names += ["slope", "slope_volume"]
        yield from long(working, "slope", fall.pre_slope)
        yield from holds(working, "slope_volume", fall.pre_slope_litres, "l", _FINE)
    yield from only(working, *names)
    yield from holds(working, "result", fall.bed_litres, "l", _FINE)
    yield from _rests(working)


def _tile(plan: Document, surface: Surface, fall: Fall, working: Working) -> Iterator[Objection]:
    """Step, turn and rule; that the largest tile follows from them is proved with the falls."""
    turn = max((fold.turn for fold in folds_of(fall)), default=0.0)
    rules, step = plan.rules, fall.tile_step or 0
    by_rule = rules.has("fall.tile.max") and bool(turn) and rules.ticks("fall.tile.max") < int(4 * step / turn)
    yield from long(working, "step", step)
    yield from holds(working, "turn", turn, "")
    yield from just(working, "by_rule", by_rule)
    yield from only(working, "step", "turn", "by_rule")
    yield from long(working, "result", fall.largest_tile or 0)
    shower = shower_of(surface, plan)
    by_step = "" if shower is None else step_between_tiles(shower, plan)[1]
    yield from _rests(working, "fall.tile.max" if by_rule else by_step)


def _drain(plan: Document, surface: Surface, fall: Fall, working: Working) -> Iterator[Objection]:
    room = {} if fall.room_floor is None else {"room_floor": fall.room_floor}
    entry = _entry(surface, fall)
    if entry is None:
        rows = room | _on_bed(plan, surface, fall)
        comes_to = sum(rows.values()) - room.get("room_floor", 0)
    else:
        rows = room | {"entry": entry}
        comes_to = room["room_floor"] - entry
    yield from _lengths(working, rows)
    if comes_to != fall.drain_height:
        yield Objection(CODE, working.key, f"puts the drain at {to_mm(comes_to)} mm, and the plan elsewhere")
    yield from long(working, "result", fall.drain_height or 0)


def _recess(plan: Document, surface: Surface, fall: Fall, working: Working) -> Iterator[Objection]:
    heights = open_heights(surface, fall) or [level.height for level in fall.levels]
    rows = {"entry": max(heights), **_on_bed(plan, surface, fall)}
    yield from _lengths(working, rows)
    mark = plan.tape.graduation
    needed = math.ceil(sum(rows.values()) / mark) * mark
    if fall.recess != needed:
        yield Objection(CODE, working.key, f"comes to a recess of {to_mm(needed)} mm, and the plan asks another")
    yield from long(working, "result", needed)


def _on_bed(plan: Document, surface: Surface, fall: Fall) -> dict[str, int]:
    tile, mortar = cover(surface, plan)
    return {"under": fall.bed + fall.pre_slope, "mortar": mortar, "tile": tile}


def _lengths(working: Working, rows: Mapping[str, int]) -> Iterator[Objection]:
    for name, ticks in rows.items():
        yield from long(working, name, ticks)
    yield from only(working, *rows)
    yield from _rests(working)


def _drop(plan: Document, working: Working) -> Iterator[Objection]:
    rules = plan.rules
    depths: dict[str, int] = {}
    for surface in plan.surfaces:
        depths |= _shelves(surface, plan)
        if surface.fall is not None and surface.fall.kerb_width is not None:
            depths[f"{surface.id}/kerb"] = surface.fall.kerb_width
    depth = depths[working.at[0]]
    names = ["depth", "least"]
    yield from long(working, "depth", depth)
    yield from holds(working, "least", rules.number("fall.shelf.min"), "", _FINE)
    if rules.has("fall.shelf.max"):
        names += ["greatest", "most"]
        yield from holds(working, "greatest", rules.number("fall.shelf.max"), "", _FINE)
        yield from holds(working, "most", to_mm(depth) * rules.number("fall.shelf.max"), "mm", _FINE)
    yield from only(working, *names)
    yield from long(working, "result", kerb_drop(depth, plan))
    yield from _rests(working, "fall.shelf.min")


FORMULAS: dict[str, Prove] = {
    _RISE: partial(_of_floor, _rise),
    _BED: partial(_of_floor, _bed),
    _TILE: partial(_of_floor, _tile),
    _ON_BED: partial(_of_floor, _drain),
    _BY_ENTRY: partial(_of_floor, _drain),
    _RECESS: partial(_of_floor, _recess),
    _DROP: _drop,
}
