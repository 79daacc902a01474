"""What the plan builds on parts of a floor is on its sheet by its mass, and on the joists by its place."""

import math
from collections.abc import Iterator, Sequence

from shapely import Point, Polygon, affinity, box

from firstcourse.rules import RuleSet
from firstcourse.units import KG_PER_LB, TICKS_PER_INCH, TICKS_PER_MM
from firstcourse.verify.formulas.frames import own_layers
from firstcourse.verify.frame_fields import Frame
from firstcourse.verify.load_fields import AreaLoad, JoistLoad
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-919"
_TICKS_PER_M = 1000 * TICKS_PER_MM
_TICKS3_PER_LITRE = (100 * TICKS_PER_MM) ** 3
_KG_M2_PER_PSF = 1 / 0.204816
_NEAR = 0.002
"""Outlines are rounded to ticks, masses to milligrams; layers to half a tick of mortar."""
_EXACT = 2e-6
"""Numbers that are computed from each other are kept to nine figures."""
_LEAST_LB = 0.05
_LEAST_M2 = 1e-4
_HALF_MARK = 1 / 32

type _Key = tuple[int, str]
type _Share = tuple[float, float, float]
"""On one joist: how heavy [lb], how long and how wide [in]."""


def check_floor_loads(plan: Document) -> Iterator[Objection]:
    """Object to a judged floor that leaves out what stands on it, weighs it wrongly or shares it out wrongly."""
    for frame in plan.frames:
        if frame.kind != "floor":
            continue
        room = frame.surface.partition("/floor")[0]
        own = [surface for surface in plan.surfaces if surface.room == room]
        yield from _all_there(frame, own)
        for area in frame.loads.areas:
            yield from _weighs(frame, area, own, plan.rules)
        yield from _lines(frame, own)
        yield from _shares(frame, own, plan)


def _all_there(frame: Frame, own: Sequence[Surface]) -> Iterator[Objection]:
    wanted = set()
    for surface in own:
        if surface.kind == "floor" and surface.fall is not None:
            wanted.add(surface.id)
            wanted |= {f"{surface.id}/kerb"} if surface.fall.kerb is not None else set()
        if surface.kind == "floor":
            base = f"{surface.room}/floor"
            wanted |= {f"{base}/{opening.id}" for opening in surface.openings if opening.kind == "tub"}
        if surface.id.startswith(f"{surface.room}/bench/"):
            wanted.add(surface.id.rpartition("/")[0])
    named = {area.of for area in frame.loads.areas}
    for name in sorted(wanted - named):
        yield Objection(_CODE, frame.surface, f"'{name}' stands on this floor and is no load of its sheet")


def _weighs(frame: Frame, area: AreaLoad, own: Sequence[Surface], rules: RuleSet) -> Iterator[Objection]:
    shape = Polygon(area.outline)
    square_metres = shape.area / _TICKS_PER_M**2
    if abs(square_metres - area.area) > (_EXACT if area.kind == "tub" else _NEAR) * square_metres:
        yield Objection(_CODE, frame.surface, f"{area.of}: {area.area:g} m² said of {square_metres:.4f}")
    tubs = {
        f"{one.room}/floor/{tub.id}": tub.outline for one in own if one.kind == "floor" for tub in one.openings
    }
    if area.kind == "tub" and tuple(area.outline) != tubs.get(area.of):
        yield Objection(_CODE, frame.surface, f"{area.of}: stands where it does not lie")
    if abs(area.kg / area.area - area.psf * _KG_M2_PER_PSF) > _EXACT * max(1.0, area.kg / area.area):
        yield Objection(_CODE, frame.surface, f"{area.of}: {area.psf:g} psf said of {area.kg:.1f} kg")
    if area.instead == (area.kind == "bench"):
        yield Objection(
            _CODE, frame.surface, f"{area.of}: lies beside the floor's layers, or on them, said otherwise"
        )
    rows = {row.of: row.kg for row in area.rows}
    for row in area.rows:
        if row.litres is not None and row.density is not None:
            yield from _is(frame, area, row.litres * row.density / 1000, row.kg)
    if area.kind == "tub" and area.assumed:
        yield from _is(frame, area, rules.number("mass.tub_filled") * _KG_M2_PER_PSF * square_metres, area.kg)
    surface = next((one for one in own if area.of in (one.id, f"{one.id}/kerb")), None)
    if surface is None or surface.fall is None:
        return
    if area.kind == "kerb" and surface.fall.kerb is not None and surface.fall.drain_height is not None:
        litres = shape.area * (surface.fall.kerb + surface.fall.drain_height) / _TICKS3_PER_LITRE
        densities = ("mass.kerb",) if area.assumed else ("mass.kerb", "mass.kerb_framed")
        weights = [litres * rules.number(name) / 1000 for name in densities]
        yield from _is(frame, area, min(weights, key=lambda kg: abs(kg - area.kg)), area.kg)
    if area.kind == "shower":
        if tuple(area.outline) != tuple(surface.outline):
            yield Objection(_CODE, frame.surface, f"{area.of}: stands where its floor does not lie")
        yield from _is(frame, area, _bed_kg(surface, Polygon(surface.outline), rules), rows.get("bed", 0.0))
        yield from _is(frame, area, rules.number("mass.membrane") * square_metres, rows.get("membrane", 0.0))
        for of, thickness in surface.layers:
            if of not in ("mortar", "tile"):
                continue
            densities = ("bedding.mortar.density",) if of == "mortar" else ("mass.tile", "mass.stone")
            weights = [thickness / _TICKS_PER_M * rules.number(one) * square_metres for one in densities]
            found = rows.get(of, 0.0)
            yield from _is(frame, area, min(weights, key=lambda kg: abs(kg - found)), found)


def _is(frame: Frame, area: AreaLoad, right: float, said: float) -> Iterator[Objection]:
    if abs(right - said) > _NEAR * right + 0.001:
        yield Objection(_CODE, frame.surface, f"{area.of}: {said:.2f} kg said, {right:.2f} by its volume")


def _bed_kg(surface: Surface, part: Polygon, rules: RuleSet) -> float:
    """Bed, and slope under a liner, below a part of a shower's floor [kg]."""
    fall = surface.fall
    total = 0.0
    for plane in () if fall is None else fall.planes:
        cut = Polygon(plane.ring).intersection(part)
        if fall is not None and cut.area > 0:
            height = plane.height((cut.centroid.x, cut.centroid.y))
            total += cut.area * (height + fall.bed + fall.pre_slope)
    return total / _TICKS3_PER_LITRE * rules.number("mass.mortar_bed") / 1000


def _lines(frame: Frame, own: Sequence[Surface]) -> Iterator[Objection]:
    """Every joist of the sheet is one of the floor's, where they are drawn."""
    supports = [Polygon(one.outline) for surface in own for one in surface.supports if one.kind == "joist"]
    floor = [surface for surface in own if surface.id == frame.surface]
    if not frame.loads.lines or not floor or not any(one.kind == "joist" for one in floor[0].supports):
        return
    for number, (a, b) in enumerate(frame.loads.lines, start=1):
        middle = Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        if all(support.distance(middle) > 2 for support in supports):
            yield Objection(_CODE, frame.surface, f"joist {number} of its sheet is none of the floor's")


def _shares(frame: Frame, own: Sequence[Surface], plan: Document) -> Iterator[Objection]:
    loads = frame.loads
    by_name = {area.of: area for area in loads.areas}
    for share in loads.joists:
        if share.of not in by_name or not 1 <= share.joist <= len(loads.lines):
            yield Objection(_CODE, frame.surface, f"joist {share.joist} carries '{share.of}', which is not there")
            return
    if not loads.lines or not loads.areas:
        return
    if any(share.start is not None for share in loads.joists):
        # Only what lies on the span is carried; each share is then held by itself.
        for share in loads.joists:
            yield from _own_share(frame, share, by_name[share.of])
        return
    said: dict[_Key, list[_Share]] = {}
    for share in loads.joists:
        said.setdefault((share.joist, share.of), []).append((share.pounds, share.length, share.width))
    right: dict[_Key, list[_Share]] = {}
    for key, found in _carried(frame, own, plan, frame.found.spacing * TICKS_PER_INCH):
        right.setdefault(key, []).append(found)
    for key in sorted(said.keys() | right.keys()):
        ones, others = sorted(said.get(key, [])), sorted(right.get(key, []))
        if len(ones) == len(others) and all(map(_alike, ones, others)):
            continue
        # What rounding alone leaves on a joist may be on one side only.
        if sum(one[0] for one in (*ones, *others)) <= _LEAST_LB:
            continue
        told, is_ = (" and ".join(f"{one[0]:.1f} lb" for one in some) or "none" for some in (ones, others))
        yield Objection(
            _CODE, frame.surface, f"joist {key[0]} carries {told} of {key[1]}, not {is_}, or elsewhere"
        )


def _alike(one: _Share, other: _Share) -> bool:
    """Whether two shares are as heavy, as long and as wide."""
    slack = (_LEAST_LB, _HALF_MARK, _HALF_MARK)
    return all(abs(a - b) <= least + 0.01 * b for a, b, least in zip(one, other, slack, strict=True))


def _own_share(frame: Frame, share: JoistLoad, area: AreaLoad) -> Iterator[Objection]:
    """No more than all that stands on its strip, and no less than the mean of it by half."""
    strip = share.length * share.width / 144
    most = area.psf * strip
    if share.pounds > 1.5 * most + _LEAST_LB:
        yield Objection(
            _CODE, frame.surface, f"joist {share.joist} carries {share.pounds:.1f} lb of {most:.1f} there"
        )


def _carried(
    frame: Frame, own: Sequence[Surface], plan: Document, spacing: float
) -> Iterator[tuple[_Key, _Share]]:
    """What each joist carries of each load beyond the floor's own layers."""
    lines = frame.loads.lines
    longest = max(lines, key=lambda line: math.dist(*line))
    angle = math.atan2(longest[1][1] - longest[0][1], longest[1][0] - longest[0][0])
    origin = longest[0]

    def turned(shape: Polygon) -> Polygon:
        return affinity.rotate(shape, -angle, origin=origin, use_radians=True)

    whole = [surface for surface in own if surface.id == frame.surface]
    if not whole:
        return
    left, low, right, high = turned(Polygon(whole[0].outline)).bounds
    centres = [_across(line, origin, angle) for line in lines]
    order = sorted(centres)
    layers = own_layers(frame)
    for number, at in enumerate(centres, start=1):
        index = order.index(at)
        before = (at - order[index - 1]) / 2 if index else max(spacing, at - low) / 2
        after = (order[index + 1] - at) / 2 if index + 1 < len(order) else max(spacing, high - at) / 2
        strip = affinity.rotate(
            box(left - spacing, at - before, right + spacing, at + after), angle, origin=origin, use_radians=True
        )
        for area in frame.loads.areas:
            whole_cut = Polygon(area.outline).intersection(strip)
            for cut in getattr(whole_cut, "geoms", (whole_cut,)):
                square_metres = cut.area / _TICKS_PER_M**2
                if square_metres < _LEAST_M2:
                    continue
                kg = area.kg * square_metres / area.area
                surface = next((one for one in own if one.id == area.of), None)
                if area.kind == "shower" and surface is not None and surface.fall is not None:
                    bed = sum(row.kg for row in area.rows if row.of == "bed")
                    kg = (area.kg - bed) * square_metres / area.area + _bed_kg(surface, cut, plan.rules)
                more = kg - (layers * _KG_M2_PER_PSF * square_metres if area.instead else 0.0)
                begins, _, ends, _ = turned(cut).bounds
                length = (ends - begins) / TICKS_PER_INCH
                if more > 0:
                    width = cut.area / TICKS_PER_INCH**2 / length
                    yield (number, area.of), (more / KG_PER_LB, length, width)


def _across(line: tuple[tuple[int, int], tuple[int, int]], origin: tuple[int, int], angle: float) -> float:
    """Where a joist's centre lies, across the joists."""
    u, v = (line[0][0] + line[1][0]) / 2 - origin[0], (line[0][1] + line[1][1]) / 2 - origin[1]
    return origin[1] - u * math.sin(angle) + v * math.cos(angle)
