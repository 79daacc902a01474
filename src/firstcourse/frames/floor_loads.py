"""What a job builds or stands on parts of a floor, and what each joist carries of it.

Masses come from the plan's own values: the volume of a shower's bed from its planes, layers from their thickness.
"""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from shapely import Polygon, affinity, box

from firstcourse.frames.loads import AreaKind, AreaLoad, JoistLoads, LoadRow, PartLoad, layer_code
from firstcourse.geometry import Point, as_ring, counter_clockwise, to_shapely
from firstcourse.job import BoardedFloor, Job, Room, TiledBench
from firstcourse.layers import PSF_PER_KG_M2, Layer, judged_layers, laid_of, tile_layers, total_mass_kg_m2
from firstcourse.plan import Fall, OpeningKind, Segment, SupportKind, Surface, SurfaceLayer
from firstcourse.rules import RuleSet
from firstcourse.survey import SurveyedShower, floor_surface, frames_of
from firstcourse.units import KG_PER_LB, TICKS_PER_INCH, TICKS_PER_MM, to_inches

_TICKS_PER_M = 1000 * TICKS_PER_MM
_TICKS3_PER_LITRE = (100 * TICKS_PER_MM) ** 3
_LEAST_M2 = 1e-4
"""Parts smaller than a square centimetre are what rounding leaves [m²]."""
_STANDING = (OpeningKind.TUB, OpeningKind.TRAY, OpeningKind.CABINET, OpeningKind.OTHER)


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorLoads:
    """Loads on parts of one floor.

    Attributes:
        areas: What stands where.
        joists: What each joist carries of it beyond the floor's own layers.
        lines: Centre line of each joist, in the order of their numbers.
        other: Lasting loads over the whole floor beside its layers, by name [psf].
        layers: The floor's own layers; none where a shower takes all of it.
    """

    areas: tuple[AreaLoad, ...] = ()
    joists: tuple[JoistLoads, ...] = ()
    lines: tuple[Segment, ...] = ()
    other: tuple[tuple[str, float], ...] = ()
    layers: tuple[Layer, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """A load with how its mass lies: what a part of its outline weighs [kg]."""

    load: AreaLoad
    weigh: Callable[[Polygon], float]
    shape: Polygon


def floor_loads(
    job: Job,
    room: Room,
    plan: Mapping[str, Point],
    shower: SurveyedShower | None,
    bedded: Surface | None,
    layers: tuple[Layer, ...],
    filled_kg_m2: float,
    spacing: int,
    rules: RuleSet,
) -> FloorLoads:
    """The loads on parts of a room's floor.

    Args:
        job: For its tiles.
        room: The room, whose floor stands on joists.
        plan: Its adjusted corners.
        shower: Its shower floor; None without one.
        bedded: The same as planned, with its falls and layers; None without one.
        layers: The floor's own layers.
        filled_kg_m2: Levelling compound over the whole floor [kg/m²].
        spacing: Of the joists, the widest [ticks].
        rules: For densities and what is taken where the job says nothing.
    """
    floor = room.floor
    assert floor is not None and floor.framing is not None
    surface = floor_surface(room, floor, plan, rules, tray=None if shower is None else shower.tray)
    places = [
        *([] if shower is None or bedded is None else _shower(shower, bedded, rules)),
        *_things(room, floor, surface, rules),
        *(_bench(job, room, bench, plan, rules) for bench in room.benches),
    ]
    other = _over_all(floor, filled_kg_m2, rules)
    own_kg_m2 = total_mass_kg_m2(layers) + sum(psf for _name, psf in other) / PSF_PER_KG_M2
    lines, joists = _shared(room, floor, surface, plan, places, own_kg_m2, spacing)
    return FloorLoads(
        areas=tuple(place.load for place in places), joists=joists, lines=lines, other=other, layers=layers
    )


def _over_all(floor: BoardedFloor, filled_kg_m2: float, rules: RuleSet) -> tuple[tuple[str, float], ...]:
    rows = []
    if floor.planks is not None:
        rows.append(("planks", to_inches(floor.planks.thickness) * rules.number("mass.panel")))
    if floor.exposure is not None and floor.exposure.membrane:
        rows.append(("membrane", rules.number("mass.membrane") * PSF_PER_KG_M2))
    if filled_kg_m2:
        rows.append(("levelling_compound", filled_kg_m2 * PSF_PER_KG_M2))
    return tuple(rows)


def _shower(shower: SurveyedShower, bedded: Surface, rules: RuleSet) -> Iterator[_Place]:
    """The shower's floor from its bed to its tile, then its kerb."""
    outline = shower.surface.outline
    shape = to_shapely(outline)
    area, density = shape.area / _TICKS_PER_M**2, rules.number("mass.mortar_bed")
    fall = bedded.fall
    rows = [LoadRow(of="membrane", kg=rules.number("mass.membrane") * area)]
    rows += _rows(bedded.layers, area)

    litres = bed_litres(shape, shower, fall, rules)
    rows.insert(0, LoadRow(of="bed", kg=litres * density / 1000, litres=litres, density_kg_m3=density))
    upon = sum(row.kg for row in rows[1:]) / area
    reference = shower.surface.id
    yield _Place(
        load=AreaLoad(
            of=reference,
            kind=AreaKind.SHOWER,
            outline=outline,
            area_m2=area,
            rows=tuple(rows),
        ),
        weigh=lambda part: (
            bed_litres(part, shower, fall, rules) * density / 1000 + upon * part.area / _TICKS_PER_M**2
        ),
        shape=shape,
    )
    kerb = shower.shower.kerb
    if kerb is None or shower.tray.outline is None:
        return
    strip = to_shapely(shower.tray.outline).difference(shape)
    framed = kerb.body == "framed"
    height = kerb.height + (_bed_height(shower, rules) if fall is None else fall.drain_height or 0)
    of_kerb = rules.number("mass.kerb_framed" if framed else "mass.kerb")
    for part in _polygons(strip):
        litres = part.area * height / _TICKS3_PER_LITRE
        row = LoadRow(of="kerb", kg=litres * of_kerb / 1000, litres=litres, density_kg_m3=of_kerb)
        yield _even(
            f"{reference}/kerb",
            AreaKind.KERB,
            part,
            (row,),
            assumed="mass.kerb" if kerb.body is None else "",
        )


def bed_litres(part: Polygon, shower: SurveyedShower, fall: Fall | None, rules: RuleSet) -> float:
    """Volume of a shower's bed, and of the slope under a liner, below a part of its floor [l].

    Without planes it is as thick everywhere as it would be farthest from its drain at the least fall.
    """
    if fall is None:
        far = max(math.dist(at, end) for at in shower.surface.outline for end in shower.drain)
        return float(part.area) * (_bed_height(shower, rules) + far * rules.number("fall.min")) / _TICKS3_PER_LITRE
    total = 0.0
    for plane in fall.planes:
        cut = to_shapely(plane.ring).intersection(part)
        if cut.area > 0:
            middle, (u, v) = cut.centroid, plane.ring[0]
            height = plane.heights[0] + plane.gradient[0] * (middle.x - u) + plane.gradient[1] * (middle.y - v)
            total += cut.area * (height + fall.bed + fall.pre_slope)
    return float(total) / _TICKS3_PER_LITRE


def _bed_height(shower: SurveyedShower, rules: RuleSet) -> int:
    asked = shower.shower
    if asked.membrane == "liner":
        slope = asked.pre_slope or rules.ticks("fall.pre_slope")
        return slope + (asked.bed or rules.ticks("fall.bed.liner"))
    return asked.bed or rules.ticks("fall.bed.bonded")


def _things(room: Room, floor: BoardedFloor, surface: Surface, rules: RuleSet) -> Iterator[_Place]:
    """A filled tub, and whatever else the job gives a weight of."""
    asked = {opening.id: opening for opening in floor.openings}
    for opening in surface.openings:
        entered = asked.get(opening.id)
        if entered is None or opening.kind not in _STANDING or opening.outline is None:
            continue
        shape = to_shapely(opening.outline)
        area = shape.area / _TICKS_PER_M**2
        if (pounds := entered.pounds) is not None:
            kg, assumed = pounds * KG_PER_LB, ""
        elif opening.kind is OpeningKind.TUB:
            kg, assumed = rules.number("mass.tub_filled") / PSF_PER_KG_M2 * area, "mass.tub_filled"
        else:
            continue
        kind = AreaKind.TUB if opening.kind is OpeningKind.TUB else AreaKind.THING
        row = LoadRow(of="filled_tub" if kind is AreaKind.TUB else "thing", kg=kg)
        yield _even(f"{surface.id}/{opening.id}", kind, shape, (row,), assumed=assumed)


def _bench(job: Job, room: Room, bench: TiledBench, plan: Mapping[str, Point], rules: RuleSet) -> _Place:
    """A bench: its body, solid where the job does not say, and its tile; one that hangs loads its wall alone."""
    ring = frames_of(room, plan)[bench.wall].box(bench.left, 0, bench.left + bench.width, bench.depth)
    shape = to_shapely(ring)
    area = shape.area / _TICKS_PER_M**2
    if bench.body == "framed":
        rows = [LoadRow(of="frame", kg=rules.number("mass.bench_framed") / PSF_PER_KG_M2 * area)]
    else:
        density = rules.number("mass.kerb")
        litres = shape.area * bench.height / _TICKS3_PER_LITRE
        rows = [LoadRow(of="body", kg=litres * density / 1000, litres=litres, density_kg_m3=density)]
    sides = (bench.width + 2 * bench.depth) * bench.height / _TICKS_PER_M**2
    tiled: tuple[tuple[str, float], ...] = ((bench.tile, area), (bench.front or bench.tile, sides))
    if bench.body == "hung":
        rows, tiled = [], ()
    for name, face in tiled:
        rows += _rows(tile_layers(laid_of([tile for tile in job.tiles if tile.id == name]), rules), face)
    assumed = "mass.kerb" if bench.body is None else ""
    return _even(
        f"{room.name}/bench/{bench.id}",
        AreaKind.BENCH,
        shape,
        tuple(rows),
        assumed=assumed,
        instead=False,
    )


def _rows(layers: Sequence[SurfaceLayer], area_m2: float) -> list[LoadRow]:
    return [LoadRow(of=layer_code(layer), kg=layer.mass_kg_m2 * area_m2) for layer in judged_layers(layers)]


def _even(
    of: str,
    kind: AreaKind,
    shape: Polygon,
    rows: tuple[LoadRow, ...],
    *,
    assumed: str = "",
    instead: bool = True,
) -> _Place:
    """A load that lies evenly."""
    outline = counter_clockwise(as_ring((round(u), round(v)) for u, v in list(shape.exterior.coords)[:-1]))
    load = AreaLoad(
        of=of,
        kind=kind,
        outline=outline,
        area_m2=shape.area / _TICKS_PER_M**2,
        rows=rows,
        instead=instead,
        assumed=assumed,
    )
    return _Place(load=load, weigh=lambda part: load.kg * part.area / shape.area, shape=shape)


def _shared(
    room: Room,
    floor: BoardedFloor,
    surface: Surface,
    plan: Mapping[str, Point],
    places: Sequence[_Place],
    own_kg_m2: float,
    spacing: int,
) -> tuple[tuple[Segment, ...], tuple[JoistLoads, ...]]:
    """Centre lines of the joists, and what each that carries any of the loads carries of them."""
    assert floor.framing is not None and floor.joists is not None
    frame = frames_of(room, plan)[floor.framing.parallel_to]
    angle = math.atan2(frame.end[1] - frame.start[1], frame.end[0] - frame.start[0])

    def turned(shape: Polygon) -> Polygon:
        return affinity.rotate(shape, -angle, origin=frame.start, use_radians=True)

    def back(at: tuple[float, float]) -> Point:
        du, dv = at[0] - frame.start[0], at[1] - frame.start[1]
        cos, sin = math.cos(angle), math.sin(angle)
        return round(frame.start[0] + du * cos - dv * sin), round(frame.start[1] + du * sin + dv * cos)

    bounds = [
        turned(to_shapely(support.outline)).bounds
        for support in surface.supports
        if support.kind is SupportKind.JOIST
    ]
    centres = [(lower + upper) / 2 for _, lower, _, upper in bounds]
    lines = tuple(
        (back((left, at)), back((right, at))) for (left, _, right, _), at in zip(bounds, centres, strict=True)
    )
    _, low, _, high = turned(to_shapely(surface.outline)).bounds
    start = None
    if floor.joists.start is not None and not floor.joists.continuous and floor.joists.spans is None:
        start = frame.start[0] + floor.joists.start
    joists = []
    for number, (lower, upper) in enumerate(strips(centres, low, high, spacing), start=1):
        parts = []
        for place in places:
            reach = turned(place.shape).bounds
            left = reach[0] if start is None else max(reach[0], start)
            right = reach[2] if start is None else min(reach[2], start + floor.joists.span)
            if right <= left or upper <= lower:
                continue
            strip = affinity.rotate(box(left, lower, right, upper), angle, origin=frame.start, use_radians=True)
            for piece in _polygons(place.shape.intersection(strip)):
                part = _part(place, piece, turned(piece).bounds, own_kg_m2, start)
                if part is not None:
                    parts.append(part)
        if parts:
            joists.append(JoistLoads(joist=number, parts=tuple(parts)))
    return lines, tuple(joists)


def strips(centres: Sequence[float], low: float, high: float, spacing: float) -> Iterator[tuple[float, float]]:
    """The strip of floor that each joist carries: half-way to its neighbours, at the ends half-way to the wall.

    There it is half a spacing at least: the next member stands at the wall or beyond it.

    Args:
        centres: Places of the joists across them.
        low: Where the floor ends before the first.
        high: And after the last.
        spacing: Widest distance between two.
    """
    order = sorted(centres)
    for at in centres:
        index = order.index(at)
        before = (at - order[index - 1]) / 2 if index else max(spacing, at - low) / 2
        after = (order[index + 1] - at) / 2 if index + 1 < len(order) else max(spacing, high - at) / 2
        yield at - before, at + after


def _part(
    place: _Place, piece: Polygon, reach: tuple[float, float, float, float], own_kg_m2: float, start: float | None
) -> PartLoad | None:
    """What a joist carries of one load, beyond the floor's own layers; None where that is nothing."""
    area = piece.area / _TICKS_PER_M**2
    more = place.weigh(piece) - (own_kg_m2 * area if place.load.instead else 0.0)
    if area < _LEAST_M2 or more <= 0:
        return None
    length = reach[2] - reach[0]
    return PartLoad(
        of=place.load.of,
        load_lb=more / KG_PER_LB,
        length_in=length / TICKS_PER_INCH,
        width_in=piece.area / length / TICKS_PER_INCH,
        start_in=None if start is None else to_inches(round(reach[0] - start)),
    )


def _polygons(shape: object) -> Iterator[Polygon]:
    for part in getattr(shape, "geoms", (shape,)):
        if isinstance(part, Polygon) and part.area > 0:
            yield part
