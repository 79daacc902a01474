"""What makes a floor or a wall's studs flat: how much at each reading, what it takes, whether it then passes."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import shapely

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.derived import Derived, Number, Wanted, word
from firstcourse.verify.formulas.parts import Part, boarded_m2, part_of
from firstcourse.verify.formulas.proving import (
    CODE,
    Prove,
    column,
    holds,
    just,
    key_of,
    limited,
    only,
    rests_on,
    several,
    unit_of,
)
from firstcourse.verify.formulas.readings import (
    MM_PER_IN,
    Readings,
    Spot,
    edges_for,
    narrowest,
    readings_of,
)
from firstcourse.verify.formulas.stance import furring
from firstcourse.verify.shopping_fields import Working, number_of
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

FLOOR_WAYS = ("patch", "level_out", "grind")
WALL_WAYS = ("shim", "plane_down")
_PACKING, _REMEDY = "ground-packing", "ground-remedy"
_NOTHING_MM = 0.05
_NEAR_MM = 1e-4
"""Planes are found to this [mm]."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to flatten a surface.

    Attributes:
        changes: What each reading gains, in the order of the job [mm].
        failing: What still fails with it, by code.
        height: What it adds to the surface [mm].
        material: Relative material, or bags.
        labour: Relative labour [h].
    """

    name: str
    changes: tuple[float, ...]
    failing: tuple[str, ...]
    height: float
    material: float
    labour: float


def ways(plan: Document, part: Part, read: Readings) -> list[Way]:
    """Ways to flatten what is not flat, ranked: those that pass first, the least height, material and labour."""
    if not read.uneven:
        return []
    names = FLOOR_WAYS if part.surface.kind == "floor" else WALL_WAYS
    found = [_way(plan, part, read, name) for name in names]
    if part.surface.kind != "floor":
        return sorted(found, key=lambda way: (bool(way.failing), way.labour))
    if read.large:
        smaller = replace(read, edges=edges_for(plan.rules, large=False)).uneven
        material, labour = (plan.rules.number(f"remedy.smaller_tile.{kind}") for kind in ("material", "labour"))
        still = (0.0,) * len(read.spots)
        found.append(Way("smaller_tile", still, tuple(smaller), 0.0, material, labour))
    return sorted(found, key=lambda way: (bool(way.failing), way.height, way.material, way.labour, way.name))


def _way(plan: Document, part: Part, read: Readings, name: str) -> Way:
    rules = plan.rules
    working = plan.workings.get(key_of(f"ground-{name}", part.ref))
    changes = [0.0] * len(read.spots) if working is None else _changes(working)
    order = range(len(read.spots)) if name in FLOOR_WAYS else _studs_in_order(read.spots)
    placed = dict(zip(order, changes, strict=False))
    own = tuple(placed.get(place, 0.0) for place in range(len(read.spots)))
    failing = read.moved(own).uneven
    if name in WALL_WAYS:
        studs = len({spot.left for spot, by in zip(read.spots, own, strict=True) if by})
        if max(map(abs, own)) > rules.number(f"surface.{name}.max") * MM_PER_IN:
            failing.append("too_much")
        labour = round(rules.number(f"remedy.{name}.labour") * studs, 2)
        return Way(name, own, tuple(failing), 0.0, float(studs) if name == "shim" else 0.0, labour)
    area = boarded_m2(part.surface)
    labour = rules.number(f"remedy.{'patch' if name == 'grind' else name}.labour") * area
    if name == "grind":
        labour += rules.number("remedy.grind.labour") * sum(by < -0.01 for by in own)
    height = rules.number("surface.fill.least") * MM_PER_IN if name == "level_out" else 0.0
    bags = _bags(rules, _mean(read.spots, own)[0] * area)
    return Way(name, own, tuple(failing), height, float(bags), round(labour, 2))


def _filling(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    read = None if part is None else readings_of(part, plan.rules)
    if part is None or read is None:
        return
    name, changes = working.formula.partition("-")[2], _changes(working)
    caution = ("caution",) if name == "grind" else ()
    yield from only(working, "mean", "weights", "area", "yield", "bags", "way", "left", "on", "do", "by", *caution)
    if caution:
        yield from just(working, "caution", {"name": plan.rules.text("safety.grinding")})
    yield from _placed(working, read, read.spots, changes, ("fill", "grind"))
    if len(changes) != len(read.spots) or not _floor_plane(plan.rules, read, name, changes):
        yield Objection(CODE, working.key, "fills or grinds otherwise than to the plane it names")
        return
    area, (mean, weights) = boarded_m2(part.surface), _mean(read.spots, changes)
    yield from holds(working, "mean", mean, "mm")
    yield from just(working, "weights", {"word": weights})
    yield from holds(working, "area", area, "m2")
    yield from holds(working, "yield", plan.rules.number("surface.fill.yield"), "l")
    yield from just(working, "bags", _bags(plan.rules, mean * area))
    yield from holds(working, "result", mean * area, "l")
    yield from rests_on(working, "surface.fill.yield")
    yield from limited(working)


def _floor_plane(rules: RuleSet, read: Readings, name: str, changes: Sequence[float]) -> bool:
    """Whether what is filled and ground makes a way's plane: level, through the highest, or a little lower."""
    if name == "level_out":
        level = max(spot.height for spot in read.spots) + rules.number("surface.fill.least") * MM_PER_IN
        return all(abs(level - spot.height - by) <= _NEAR_MM for spot, by in zip(read.spots, changes, strict=True))
    wide = narrowest(read) or 0.0
    top = wide / 2
    if name == "grind":
        top = max(0.0, wide / 2 - rules.number("surface.grind.max") * MM_PER_IN)
    return _on_middle_plane(read, wide, [(top - by - _NEAR_MM, top - by + _NEAR_MM) for by in changes])


def _on_middle_plane(read: Readings, wide: float, marks: Sequence[tuple[float, float]]) -> bool:
    """Whether readings lie so over the middle of the narrowest zone about them; there may be several such."""
    found = narrowest(read, marks)
    return found is not None and found <= wide + _NEAR_MM


def _studs(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    read = None if part is None else readings_of(part, plan.rules)
    if part is None or read is None:
        return
    name, changes = working.formula.partition("-")[2], _changes(working)
    rule = f"surface.{name}.max"
    spots = [read.spots[place] for place in _studs_in_order(read.spots)]
    yield from only(working, "way", "left", "on", "do", "by", "passes", "failing")
    yield from _placed(working, read, spots, changes, ("shim", "plane_off"))
    wide, half = narrowest(read) or 0.0, plan.tape.graduation / TICKS_PER_MM / 2 + _NEAR_MM
    target = wide / 2 if name == "shim" else -wide / 2
    marks = [(target - by - half, target - by + half) for by in changes]
    marked = all(_is_marked(by, plan) for by in changes)
    in_order = replace(read, spots=tuple(spots))
    if len(changes) != len(spots) or not marked or not _on_middle_plane(in_order, wide, marks):
        yield Objection(CODE, working.key, "brings the studs into another plane than it names")
        return
    failing = _way(plan, part, read, name).failing
    yield from just(working, "passes", not failing)
    yield from just(working, "failing", [{"word": word} for word in failing])
    yield from holds(working, "result", max(map(abs, changes)), "mm")
    yield from rests_on(working, rule)
    yield from limited(working, "most", plan.rules.number(rule) * MM_PER_IN, "mm")


def _packing(plan: Document, working: Working) -> Iterator[Objection]:
    part = part_of(plan, working.at[0])
    read = None if part is None else readings_of(part, plan.rules)
    if part is None or read is None:
        return
    studs = tuple(sorted(read.spots, key=lambda spot: spot.left))
    yield from only(working, "left", "foot", "top")
    yield from column(working, "left", [spot.left for spot in studs], "mm")
    needed = furring(plan, part)
    wide, half = narrowest(read) or 0.0, plan.tape.graduation / TICKS_PER_MM / 2 + _NEAR_MM
    ends = [[number_of(one) or 0.0 for one in several(working.inputs.get(name))] for name in ("foot", "top")]
    marks = [(-math.inf, math.inf)] * len(studs)
    for own, edge in zip(ends, needed, strict=True):
        # What a stud gets beyond the furring there is its shim: how far it lies under the proudest.
        over = [wide / 2 - (each - edge + min(needed)) for each in own]
        marks = [(max(low, at - half), min(high, at + half)) for (low, high), at in zip(marks, over, strict=False)]
    whole = all(_is_marked(each, plan) for own in ends for each in own)
    if any(len(own) != len(studs) for own in ends) or not whole:
        yield Objection(CODE, working.key, "packs out studs otherwise than they were read")
    elif not _on_middle_plane(replace(read, spots=studs), wide, marks):
        yield Objection(CODE, working.key, "does not bring the wall plumb and straight")
    yield from _units(working, "foot", "top")
    yield from holds(working, "result", max((each for own in ends for each in own), default=0.0), "mm")
    yield from rests_on(working)
    yield from limited(working)


def _units(working: Working, *names: str) -> Iterator[Objection]:
    for name in names:
        if any(unit_of(one) != "mm" for one in several(working.inputs.get(name))):
            yield Objection(CODE, working.key, f"has {name} that is no length")


def _placed(
    working: Working, read: Readings, spots: Sequence[Spot], changes: Sequence[float], words: tuple[str, str]
) -> Iterator[Objection]:
    """Where each reading lies, and what is done there by name."""
    more, less = words
    told = [more if by > _NOTHING_MM else less if by < -_NOTHING_MM else "leave" for by in changes]
    yield from just(working, "way", {"word": read.way})
    yield from column(working, "left", [spot.left for spot in spots], "mm")
    yield from column(working, "on", [spot.on for spot in spots], "mm")
    yield from just(working, "do", [{"word": word} for word in told])
    yield from _units(working, "by")
    if len(several(working.inputs.get("by"))) != len(spots):
        yield Objection(CODE, working.key, "has not just one change for each reading")


def _changes(working: Working) -> list[float]:
    """What each reading gains by a working [mm]."""
    done = [one.get("word") if isinstance(one, Mapping) else "" for one in several(working.inputs.get("do"))]
    by = [number_of(one) or 0.0 for one in several(working.inputs.get("by"))]
    return [-much if do in ("grind", "plane_off") else much for do, much in zip(done, by, strict=False)]


def _studs_in_order(spots: Sequence[Spot]) -> list[int]:
    return sorted(range(len(spots)), key=lambda place: (spots[place].left, spots[place].on))


def _is_marked(length_mm: float, plan: Document) -> bool:
    """Whether a tape shows it."""
    marks = length_mm * TICKS_PER_MM / plan.tape.graduation
    return abs(marks - round(marks)) * plan.tape.graduation <= 0.5


def _bags(rules: RuleSet, litres: float) -> int:
    return math.ceil(round(litres / rules.number("surface.fill.yield"), 9))


def _mean(spots: Sequence[Spot], changes: Sequence[float]) -> tuple[float, str]:
    """Mean depth of what is filled over what the readings span [mm], and how it is weighed."""
    filled = [max(0.0, by) for by in changes]
    across, out = sorted({spot.left for spot in spots}), sorted({spot.on for spot in spots})
    if min(len(across), len(out)) > 1 and len({(spot.left, spot.on) for spot in spots}) == len(across) * len(out):
        weights = [_share(across, spot.left) * _share(out, spot.on) for spot in spots]
        return sum(map(float.__mul__, weights, filled)) / sum(weights), "grid"
    at: dict[tuple[float, float], list[float]] = {}
    for spot, depth in zip(spots, filled, strict=True):
        at.setdefault((spot.left, spot.on), []).append(depth)
    triangles = shapely.delaunay_triangles(shapely.MultiPoint(list(at))).geoms
    volume = sum(
        one.area * sum(math.fsum(at[corner]) / len(at[corner]) for corner in list(one.exterior.coords)[:3]) / 3
        for one in triangles
    )
    return volume / (sum(one.area for one in triangles) or 1.0), "triangles"


def _share(places: Sequence[float], place: float) -> float:
    """Half the distances to the next reading either way."""
    at = places.index(place)
    return (places[min(at + 1, len(places) - 1)] - places[max(at - 1, 0)]) / 2


def _ranked(plan: Document, working: Working) -> Iterator[Objection]:
    """One of the ways, by its place among them."""
    part = part_of(plan, working.at[0])
    read = None if part is None else readings_of(part, plan.rules)
    found = [] if part is None or read is None else ways(plan, part, read)
    number = working.at[1].rpartition("/")[2] if len(working.at) > 1 else ""
    if part is None or read is None or not number.isdecimal() or not 0 < int(number) <= len(found):
        return
    way = found[int(number) - 1]
    yield from _derived(plan, part, read, way, int(number)).differs(working)


def litres_of(plan: Document, part: Part, read: Readings, way: Way) -> tuple[float, int]:
    """Levelling compound that a way of flattening a floor takes [l], and whole bags of it."""
    litres = _mean(read.spots, way.changes)[0] * boarded_m2(part.surface)
    return litres, _bags(plan.rules, litres)


def _derived(plan: Document, part: Part, read: Readings, way: Way, number: int) -> Derived:
    inputs: dict[str, Wanted] = {
        "measures": [word(way.name)],
        "height": Number(way.height, "mm"),
        "material": Number(way.material),
        "labour": Number(way.labour),
    }
    if way.name in WALL_WAYS:
        inputs["studs"] = len({spot.left for spot, by in zip(read.spots, way.changes, strict=True) if by})
        inputs["deep"] = Number(max(map(abs, way.changes)), "mm")
    elif way.name in FLOOR_WAYS:
        litres, bags = litres_of(plan, part, read, way)
        inputs |= {
            "litres": Number(litres, "l"),
            "bags": bags,
            "deep": Number(max(way.changes), "mm"),
            "off": Number(max(0.0, -min(way.changes)), "mm"),
        }
        if way.name == "grind":
            inputs["caution"] = {"name": plan.rules.text("safety.grinding")}
    if way.failing:
        inputs["failing"] = [word(one) for one in way.failing]
    result = word("fails" if way.failing else "passes")
    return Derived(formula=_REMEDY, also=(f"option/{number}",), inputs=inputs, result=result)


FORMULAS: dict[str, Prove] = {
    _REMEDY: _ranked,
    **{f"ground-{name}": _filling for name in FLOOR_WAYS},
    **{f"ground-{name}": _studs for name in WALL_WAYS},
    _PACKING: _packing,
}


def expected(plan: Document, part: Part, read: Readings) -> Iterator[str]:
    """One for each way to flatten what is not flat, and the packing of studs of a wall that leans as well."""
    if not read.uneven:
        return
    names = FLOOR_WAYS if part.surface.kind == "floor" else WALL_WAYS
    yield from (key_of(f"ground-{name}", part.ref) for name in names)
    number = len(names) + (part.surface.kind == "floor" and read.large)
    yield from (key_of(_REMEDY, part.ref, f"option/{one}") for one in range(1, number + 1))
    if part.surface.kind == "wall" and read.way == "string" and any(furring(plan, part)):
        yield key_of(_PACKING, part.ref)
