"""The membrane of each surface, laid out flat again: its areas, laps, strips, bands, corners and collars."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from shapely import LineString, Polygon
from shapely import Point as Spot
from shapely.ops import unary_union

from firstcourse.geometry import Point, Ring, bounds, sides
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.floor_heights import kerb_drop
from firstcourse.verify.structure import Document, Opening, Surface

_TICKS_PER_M = 1000 * TICKS_PER_MM
_NEAR = 3
"""Points on a side, rounded to whole ticks, lie this near to it."""
_COLLARED = ("pipe", "valve", "box")


@dataclass(frozen=True, slots=True)
class Covered:
    """One surface's membrane: areas [m²], strips with their length [mm], band [ticks], pieces.

    Attributes:
        of: What it lies on: the `face` of what is boarded, a shower's `floor`, a face of a `bench`.
        areas: Parts of its area [m²], by name.
        lengths: What the rest of it measures [ticks], one or several, by name.
    """

    surface: str
    kind: str
    area: float
    laps: float
    strips: tuple[int, float]
    band: float
    inside: int
    outside: int
    collars: tuple[Opening, ...]
    of: str
    areas: Mapping[str, float] = field(default_factory=dict)
    lengths: Mapping[str, tuple[float, ...]] = field(default_factory=dict)


def all_covered(plan: Document) -> Iterator[Covered]:
    """The membrane of every surface that says it has one."""
    yield from (covered(surface, plan) for surface in plan.surfaces if surface.membrane)


def covered(surface: Surface, plan: Document) -> Covered:
    """The membrane of a surface that has one."""
    if surface.fall is not None:
        return _floor(surface, surface.fall, _outer_face(surface, surface.fall, plan), plan.rules)
    if surface.boarded:
        return _face(surface, _corner_band(surface, plan), plan.rules)
    shower = f"{surface.room}/floor/shower"
    return _bench_face(surface, next((one.fall for one in plan.surfaces if one.id == shower), None), plan.rules)


def _face(surface: Surface, corner: int, rules: RuleSet) -> Covered:
    """Boards less openings, with every niche lined through and every window back to its frame."""
    niches = [opening for opening in surface.openings if opening.kind == "niche"]
    holes = [_square(opening) for opening in surface.openings if opening.kind not in _COLLARED]
    rim = sum(_square(niche).length for niche in niches)
    areas = {"bare": Polygon(surface.outline).difference(unary_union(holes)).area}
    if niches:
        areas["niches"] = sum(_square(niche).area for niche in niches) + rim * rules.ticks("water.niche.depth")
    windows = [opening for opening in surface.openings if opening.depth]
    if windows:
        areas["windows"] = sum(_square(window).length * window.depth for window in windows)
    rim += sum(_square(window).length for window in windows)
    corners = 4 * (len(niches) + len(windows))
    left, lower, right, upper = bounds(surface.outline)
    strips, laps = _strips(right - left, upper - lower, surface.membrane, rules)
    return Covered(
        surface=surface.id,
        kind=surface.membrane,
        area=sum(areas.values()) / _TICKS_PER_M**2,
        laps=laps,
        strips=strips,
        band=2 * round(rim) + corner,
        inside=corners,
        outside=corners,
        collars=tuple(opening for opening in surface.openings if opening.kind in _COLLARED),
        of="face",
        areas={name: area / _TICKS_PER_M**2 for name, area in areas.items()},
    )


def _bench_face(surface: Surface, fall: Fall | None, rules: RuleSet) -> Covered:
    """A face of a bench, banded along every line that is its own.

    What stands upright begins at the panels, or where all its foot is on a shower floor at that floor's membrane.
    """
    left, lower, right, upper = bounds(surface.outline)
    if surface.kind == "wall" and fall is not None and set(surface.met[:-3]) == {f"{surface.room}/floor/shower"}:
        lower -= fall.membrane_below
    elif surface.kind == "wall":
        lower = 0
    wide, high = right - left, upper - lower
    band = inside = outside = 0
    # A foot that follows the floor has several pieces, and counts as one.
    met, kinds = (each[:1] + each[-3:] for each in (surface.met, surface.sides))
    base = surface.id.rpartition("/")[0]
    # An edge of an upright face is banded with the face that it turns into: the top, of an end the front.
    banded = [surface.kind == "wall" and one in (f"{base}/top", f"{base}/front") for one in met]
    rims = list(zip((wide, high, wide, high), banded, kinds, strict=True))
    for index, (length, of_another, kind) in enumerate(rims):
        if of_another:
            continue
        band += length
        _, of_another_before, before = rims[index - 1]
        if not of_another_before:
            inwards = "free" not in (kind, before)
            inside, outside = inside + inwards, outside + (not inwards)
    strips, laps = _strips(wide, high, surface.membrane, rules)
    return Covered(
        surface=surface.id,
        kind=surface.membrane,
        area=wide * high / _TICKS_PER_M**2,
        laps=laps,
        strips=strips,
        band=band,
        inside=inside,
        outside=outside,
        collars=(),
        of="bench",
        lengths={"across": (wide,), "high": (high,)},
    )


def _outer_face(surface: Surface, fall: Fall, plan: Document) -> int:
    """From the ground of the tile before a kerb, else the panels, to its finished outer edge [ticks]."""
    if fall.kerb is None or fall.kerb_width is None:
        return 0
    ground = 0
    if fall.room_floor is not None:
        beside = [one.layers for one in plan.surfaces if one.id == f"{surface.room}/floor"]
        ground = fall.room_floor - sum(
            thickness for layers in beside for kind, thickness in layers if kind in ("mortar", "tile")
        )
    return max(0, (fall.drain_height or 0) + fall.kerb + kerb_drop(fall.kerb_width, plan) - ground)


def _floor(surface: Surface, fall: Fall, outer: int, rules: RuleSet) -> Covered:
    """A shower floor along its planes, over its kerb, and for a liner up the walls."""
    liner = surface.membrane == "liner"
    areas = {"planes": sum(Polygon(plane.ring).area * math.hypot(1, *plane.gradient) for plane in fall.planes)}
    lengths: dict[str, tuple[float, ...]] = {}
    over = fall.membrane_below
    kerb, wall = f"{surface.id}/kerb", f"{surface.room}/wall/"
    lines = list(zip(sides(surface.outline), surface.met, strict=True))
    along = [(line, met == kerb) for line, met in lines]
    girth = 0
    if fall.kerb is not None and fall.kerb_width is not None:
        girth = fall.kerb - fall.rise + over + fall.kerb_width + outer
        if corners := _kerb_corners(along, outer, fall.kerb_width):
            areas["kerb_corners"] = corners
    top = (fall.upturn_top or 0) + over
    upturns = [top - _lowest(line, fall) if liner else 0 for line, _ in lines]
    kerbs = sum(math.dist(*line) for line, is_kerb in along if is_kerb)
    walls = sum(math.dist(*line) for line, met in lines if met.startswith(wall))
    if girth:
        lengths |= {"kerb_long": (round(kerbs),), "kerb_girth": (girth,), "outer": (outer,)}
    up_all: Counter[int] = Counter()
    if liner:
        for (line, met), up in zip(lines, upturns, strict=True):
            if met.startswith(wall):
                up_all[up] += round(math.dist(*line))
        high = sorted(up_all)
        lengths |= {"walls_long": tuple(up_all[one] for one in high), "walls_high": tuple(high)}
        lengths["over_threshold"] = (rules.ticks("water.upturn.above_threshold"),)
    flaps = [girth if is_kerb else up for (_, is_kerb), up in zip(along, upturns, strict=True)]
    strips, laps = _strips(*_spread(surface.outline, flaps), surface.membrane, rules)
    inwards = sum(_turns_inwards(surface.outline, index) for index in range(len(lines)))
    pairs = [(along[index - 1][1], along[index][1]) for index in range(len(along))]
    ends = sum(map(any, pairs))
    up_walls = girth * sum(one != other for one, other in pairs)
    return Covered(
        surface=surface.id,
        kind=surface.membrane,
        area=(sum(areas.values()) + kerbs * girth + sum(up * long for up, long in up_all.items()))
        / _TICKS_PER_M**2,
        laps=laps,
        strips=strips,
        band=0 if liner else round(kerbs + walls + up_walls),
        inside=0 if liner else inwards,
        outside=ends if liner else ends + len(lines) - inwards,
        collars=tuple(opening for opening in surface.openings if opening.kind in (*_COLLARED, "drain")),
        of="floor",
        areas={name: area / _TICKS_PER_M**2 for name, area in areas.items()},
        lengths=lengths,
    )


def _lowest(line: tuple[Point, Point], fall: Fall) -> int:
    """Lowest height that the level points along a side have [ticks]."""
    side = LineString(line)
    heights = (level.height for level in fall.levels if side.distance(Spot(level.at)) <= _NEAR)
    return min(heights, default=fall.rise)


def _kerb_corners(lines: list[tuple[tuple[Point, Point], bool]], high: int, wide: int) -> float:
    """What a kerb takes beyond its inner length where it turns: its outer side is longer, or shorter [ticks²]."""
    found = 0.0
    for index, ((b, c), is_kerb) in enumerate(lines):
        (a, _), before = lines[index - 1]
        if is_kerb and before:
            one, other = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
            cross, dot = one[0] * other[1] - one[1] * other[0], one[0] * other[0] + one[1] * other[1]
            # The tangent of half an angle, by its cosine.
            past = wide * cross / (math.hypot(*one) * math.hypot(*other) + dot)
            found += past * (wide + 2 * high)
    return found


def _strips(length: float, height: float, kind: str, rules: RuleSet) -> tuple[tuple[int, float], float]:
    """Strips that cover a rectangle, the way with the least laps: number, length [mm], laps [m²]."""
    if kind == "liquid":
        return (0, 0.0), 0.0
    width, lap = rules.ticks(f"water.{kind}.width"), rules.ticks("water.lap")
    ways = []
    for across, along in ((length, height), (height, length)):
        number = max(1, math.ceil((across - lap) / (width - lap) - 1e-9))
        ways.append(((number - 1) * lap * along / _TICKS_PER_M**2, number, along / TICKS_PER_MM))
    laps, number, along = min(ways)
    return (number, along), laps


def _spread(outline: Ring, flaps: list[int]) -> tuple[float, float]:
    """Width and height of a floor with a flap folded down flat along each side [ticks]."""
    points = list(outline)
    for (a, b), flap in zip(sides(outline), flaps, strict=True):
        length = math.dist(a, b)
        out = ((b[1] - a[1]) * flap / length, (a[0] - b[0]) * flap / length)
        points += [(round(at[0] + out[0]), round(at[1] + out[1])) for at in (a, b)]
    left, lower, right, upper = bounds(tuple(points))
    return right - left, upper - lower


def _turns_inwards(outline: Ring, index: int) -> bool:
    a, b, c = outline[index - 1], outline[index], outline[(index + 1) % len(outline)]
    return (b[0] - a[0]) * (c[1] - b[1]) > (b[1] - a[1]) * (c[0] - b[0])


def _corner_band(wall: Surface, plan: Document) -> int:
    """The upright corner where a wet wall meets the next to its right [ticks]."""
    if wall.kind != "wall" or len(wall.corners) != 2:
        return 0
    for after in plan.surfaces:
        beside = after.membrane and after.kind == "wall" and len(after.corners) == 2 and after.room == wall.room
        if beside and after.corners[0] == wall.corners[1]:
            one, other = bounds(wall.outline), bounds(after.outline)
            over = after.datum - wall.datum
            return max(0, min(one[3], other[3] + over) - max(one[1], other[1] + over))
    return 0


def _square(opening: Opening) -> Polygon:
    """An opening's area; a round one as the square about it, which is what is cut for its collar."""
    if opening.outline is not None:
        return Polygon(opening.outline)
    (u, v), half = opening.centre, opening.diameter / 2
    return Polygon([(u - half, v - half), (u + half, v - half), (u + half, v + half), (u - half, v + half)])
