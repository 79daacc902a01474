"""The membrane of wet surfaces, laid out flat: areas with their laps, corners, bands and collars.

Lengths are millimetres, areas square metres.
"""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

import shapely
from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.details import least_drop
from firstcourse.findings import Finding
from firstcourse.geometry import Ring, bounds, sides
from firstcourse.job import Job, Kerb
from firstcourse.plan import Fall, Opening, OpeningKind, Segment, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.showers.bench_water import bench_membranes
from firstcourse.showers.developed import Developed, Kind, square, square_metres, strips_of
from firstcourse.showers.shower_heights import upturn_top
from firstcourse.showers.water_rules import check_water
from firstcourse.survey import SurveyedShower
from firstcourse.units import Tape, to_mm
from firstcourse.values import Value, length
from firstcourse.workings import Working

_COLLARS = frozenset({OpeningKind.PIPE, OpeningKind.VALVE, OpeningKind.BOX})
_ROUNDED = 2
_FRAMED = frozenset({OpeningKind.WINDOW, OpeningKind.DOOR})


@dataclass(frozen=True, slots=True, kw_only=True)
class Membrane:
    """All membranes of a job.

    Attributes:
        developed: Surface by surface.
        findings: Where the membrane stops too low, has a hole, or would be pierced.
        workings: Of each surface's membrane.
    """

    developed: tuple[Developed, ...]
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def membrane(
    surfaces: Sequence[Surface],
    showers: Sequence[tuple[SurveyedShower, Fall | None]],
    job: Job,
    rules: RuleSet,
    tape: Tape,
    *,
    tiled: Sequence[Surface] = (),
) -> Membrane:
    """Lay out the membrane of every wet surface that has one, of every shower floor and of every bench there.

    Walls take the membrane of their room's shower floor; beside a liner, which is no ground for tile, a liquid.

    Args:
        surfaces: Boarded surfaces of the job.
        showers: Shower floors, each with its falls where it has any.
        job: For what surfaces are exposed to.
        rules: Rules in force.
        tape: Tape of the job.
        tiled: All surfaces as they are tiled, those of benches among them.
    """
    of_room = {shower.surface.room: shower for shower, _ in showers}
    kinds: dict[str, Kind] = {
        room: "sheet" if shower.shower.membrane == "sheet" else "liquid" for room, shower in of_room.items()
    }
    wet = _wet(surfaces, job)
    developed = [
        _surface(surface, kinds.get(surface.room, "liquid"), rules) for surface in surfaces if surface.id in wet
    ]
    for shower, fall in showers:
        if fall is not None:
            developed.append(_floor(shower, fall, _tile_outside(shower, surfaces), rules, tape))
    developed = _with_corners(developed, surfaces, wet)
    walls = {item.surface: item.kind for item in developed if item.surface in wet}
    falls = {shower.surface.id: fall for shower, fall in showers if fall is not None}
    developed += bench_membranes(tiled, walls, kinds, falls, rules)
    return Membrane(
        developed=tuple(developed),
        findings=check_water(surfaces, [shower for shower, _ in showers], wet, job, rules),
        workings=tuple(item.working(rules) for item in developed),
    )


def _wet(surfaces: Sequence[Surface], job: Job) -> frozenset[str]:
    """Ids of the boarded surfaces that the job says are wet and have a membrane."""
    found = set()
    for room in job.rooms:
        parts = [(f"{room.name}/wall/{wall.wall}", wall.exposure) for wall in room.walls]
        if room.floor is not None:
            parts.append((f"{room.name}/floor", room.floor.exposure))
        if room.ceiling is not None:
            parts.append((f"{room.name}/ceiling", room.ceiling.exposure))
        for surface_id, exposure in parts:
            if exposure is not None and exposure.membrane and exposure.zone in ("wet", "steam"):
                found.add(surface_id)
    return frozenset(found & {surface.id for surface in surfaces})


def _surface(surface: Surface, kind: Kind, rules: RuleSet) -> Developed:
    """A boarded surface: its face without openings, each niche lined through, each window back to its frame."""
    face = Polygon(surface.outline)
    niches = [opening for opening in surface.openings if opening.kind is OpeningKind.NICHE]
    holes = [_shape(opening) for opening in surface.openings if opening.kind not in _COLLARS]
    bare = face.difference(unary_union(holes)) if holes else face
    deep = rules.ticks("water.niche.depth")
    edge = sum(_shape(niche).length for niche in niches)
    lining = sum(_shape(niche).area for niche in niches) + edge * deep
    sizes: dict[str, Value] = {"bare": square(square_metres(bare.area))}
    if niches:
        sizes["niches"] = square(square_metres(lining))
    windows = [opening for opening in surface.openings if opening.depth is not None]
    returns = sum(_shape(window).length * (window.depth or 0) for window in windows)
    if windows:
        sizes["windows"] = square(square_metres(returns))
    edge += sum(_shape(window).length for window in windows)
    left, lower, right, upper = bounds(surface.outline)
    strips, laps = strips_of(to_mm(right - left), to_mm(upper - lower), kind, rules)
    return Developed(
        surface=surface.id,
        kind=kind,
        area=square_metres(bare.area + lining + returns),
        laps=laps,
        strips=strips,
        # The band runs round each niche and window twice: along its front edge and round its back or frame.
        band=2 * to_mm(round(edge)),
        inside=4 * (len(niches) + len(windows)),
        outside=4 * (len(niches) + len(windows)),
        collars=tuple(opening for opening in surface.openings if opening.kind in _COLLARS),
        parts=sizes,
    )


def _tile_outside(shower: SurveyedShower, surfaces: Sequence[Surface]) -> int:
    """Thickness of tile and mortar on the room's floor: a kerb's membrane ends below them [ticks]."""
    floor = next((one for one in surfaces if one.id == f"{shower.surface.room}/floor"), None)
    return 0 if floor is None else sum(one.thickness for one in floor.layers if one.of in ("mortar", "tile"))


def _outer_face(kerb: Kerb, fall: Fall, tile_outside: int, rules: RuleSet, tape: Tape) -> int:
    """Height of a kerb's outer face, from the ground of the tile before it to its finished outer edge [ticks].

    Where no floor is planned before it the ground is the panels.
    """
    ground = 0 if fall.room_floor is None else fall.room_floor - tile_outside
    return max(0, (fall.drain_height or 0) + kerb.height + least_drop(kerb.width, rules, tape) - ground)


def _floor(surveyed: SurveyedShower, fall: Fall, tile_outside: int, rules: RuleSet, tape: Tape) -> Developed:
    """A shower floor with its kerb; a liner runs up the walls as well."""
    outline = surveyed.surface.outline
    lines = list(zip(sides(outline), surveyed.surface.sides, strict=True))
    kerb_length = sum(math.dist(a, b) for (a, b), side in lines if side.is_kerb)
    wall_length = sum(math.dist(a, b) for (a, b), side in lines if side.wall)
    # A plane is larger than its plan by the length of its slope.
    area = sum(
        Polygon(plane.ring).area * math.sqrt(1 + plane.gradient[0] ** 2 + plane.gradient[1] ** 2)
        for plane in fall.planes
    )
    sizes: dict[str, Value] = {"planes": square(square_metres(area))}
    liner = fall.membrane == "liner"
    over = fall.membrane_below
    kerb, girth = surveyed.shower.kerb, 0
    if kerb is not None:
        # Inner face from the membrane up, top, and the outer face down to what the tile before it lies on.
        outer = _outer_face(kerb, fall, tile_outside, rules, tape)
        girth = kerb.height - fall.rise + over + kerb.width + outer
        turns = _past_corners(outline, [side.is_kerb for _, side in lines], kerb.width)
        area += kerb_length * girth + turns * (kerb.width + 2 * outer)
        sizes |= {"kerb_long": length(round(kerb_length)), "kerb_girth": length(girth), "outer": length(outer)}
        if turns:
            sizes["kerb_corners"] = square(square_metres(turns * (kerb.width + 2 * outer)))
    top = upturn_top(fall, rules, tape)
    upturns = [top - _lowest(line, fall) + over if liner else 0 for line, _ in lines]
    if liner:
        up: Counter[int] = Counter()
        for (a, b), side in lines:
            if side.wall:
                up[top - _lowest((a, b), fall) + over] += round(math.dist(a, b))
        area += sum(long * high for high, long in up.items())
        sizes["walls_long"] = tuple(length(up[high]) for high in sorted(up))
        sizes["walls_high"] = tuple(length(high) for high in sorted(up))
        sizes["over_threshold"] = length(rules.ticks("water.upturn.above_threshold"))
    flaps = [girth if side.is_kerb else up for (_, side), up in zip(lines, upturns, strict=True)]
    strips, laps = strips_of(*_spread(outline, flaps), fall.membrane, rules)
    inward = [_turns_inward(outline, index) for index in range(len(outline))]
    ends = _kerb_ends([side.is_kerb for _, side in lines])
    at_walls = sum(lines[i - 1][1].is_kerb != lines[i][1].is_kerb for i in range(len(lines)))
    return Developed(
        surface=surveyed.surface.id,
        kind=fall.membrane,
        area=square_metres(area),
        laps=laps,
        strips=strips,
        band=0.0 if liner else to_mm(round(kerb_length + wall_length + at_walls * girth)),
        # A liner is folded into its corners; preformed pieces close the cuts at the kerb.
        inside=0 if liner else sum(inward),
        outside=ends + (0 if liner else len(inward) - sum(inward)),
        collars=tuple(one for one in surveyed.surface.openings if one.kind in {*_COLLARS, OpeningKind.DRAIN}),
        of="floor",
        parts=sizes,
    )


def _spread(outline: Sequence[tuple[int, int]], flaps: Sequence[int]) -> tuple[float, float]:
    """Width and height of a floor with the flap of each side folded down flat [mm]."""
    points = list(outline)
    for index, flap in enumerate(flaps):
        a, b = outline[index], outline[(index + 1) % len(outline)]
        run = math.dist(a, b)
        out = (b[1] - a[1]) * flap / run, (a[0] - b[0]) * flap / run
        points += [(round(at[0] + out[0]), round(at[1] + out[1])) for at in (a, b)]
    left, lower, right, upper = bounds(tuple(points))
    return to_mm(right - left), to_mm(upper - lower)


def _lowest(line: Segment, fall: Fall) -> int:
    """Lowest place of the finished floor along one of its sides, over the drain [ticks]."""
    side = shapely.LineString(line)
    return min(level.height for level in fall.levels if side.distance(shapely.Point(level.at)) <= _ROUNDED)


def _kerb_ends(kerbs: Sequence[bool]) -> int:
    """Places where a kerb meets a wall or turns: each takes a piece on its top."""
    return sum(kerbs[i - 1] or kerbs[i] for i in range(len(kerbs)))


def _past_corners(outline: Ring, kerbs: Sequence[bool], width: int) -> float:
    """How far the outer face of a kerb runs past its inner one, summed over the corners where it turns [ticks]."""
    past = 0.0
    for index, (b, c) in enumerate(sides(outline)):
        if kerbs[index - 1] and kerbs[index]:
            a = outline[index - 1]
            before, after = math.atan2(b[1] - a[1], b[0] - a[0]), math.atan2(c[1] - b[1], c[0] - b[0])
            past += width * math.tan(math.remainder(after - before, math.tau) / 2)
    return past


def _turns_inward(outline: Sequence[tuple[int, int]], index: int) -> bool:
    a, b, c = outline[index - 1], outline[index], outline[(index + 1) % len(outline)]
    return (b[0] - a[0]) * (c[1] - b[1]) > (b[1] - a[1]) * (c[0] - b[0])


def _with_corners(
    developed: Sequence[Developed], surfaces: Sequence[Surface], wet: frozenset[str]
) -> list[Developed]:
    """The vertical corners of wet walls that meet: the band is counted with the wall to their left."""
    walls = {
        (surface.room, surface.corners[0]): surface
        for surface in surfaces
        if surface.id in wet and surface.kind is SurfaceKind.WALL
    }
    band = {}
    for wall in walls.values():
        after = walls.get((wall.room, wall.corners[1]))
        if after is not None:
            # Each wall counts its heights from the lower end of its own foot.
            (_, low, _, top), (_, other_low, _, other_top) = bounds(wall.outline), bounds(after.outline)
            over = after.datum - wall.datum
            band[wall.id] = max(0, min(top, other_top + over) - max(low, other_low + over))
    return [replace(item, band=item.band + to_mm(band.get(item.surface, 0))) for item in developed]


def _shape(opening: Opening) -> Polygon:
    if opening.outline is not None:
        return Polygon(opening.outline)
    assert opening.centre is not None and opening.diameter is not None
    (u, v), half = opening.centre, opening.diameter / 2
    return Polygon([(u - half, v - half), (u + half, v - half), (u + half, v + half), (u - half, v + half)])
