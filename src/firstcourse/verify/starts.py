"""What is told of the start that is used, measured again on the tiles as drawn: how many are cut, how, where."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Any

import numpy as np
from shapely import LinearRing, LineString, Point, Polygon
from shapely.geometry.polygon import orient

from firstcourse.geometry import Ring, off_segment, sides
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM
from firstcourse.verify.areas import area_of
from firstcourse.verify.coverage import opening_shape
from firstcourse.verify.repeats import Laid
from firstcourse.verify.start_fields import Start
from firstcourse.verify.structure import Document, Surface, Tile
from firstcourse.verify.verdict import Objection

_CODE = "VER-715"
type Point2 = tuple[float, float]
type Vector = np.ndarray[Any, np.dtype[np.float64]]
_SLACK = TICKS_PER_INCH // 32
"""A width that is told may differ by less than anyone can mark [ticks]."""
_ON_EDGE = 8.0
_JUST = TICKS_PER_MM // 8
"""Edges this near to the length from which they count may count or not [ticks]."""
EQUAL = 0.01
"""Lengths that differ by less are one: of what is just as long floating point must not decide [ticks]."""
_TAPER_SINE = 0.1
_ALONG = 0.99
_NEAR_SIDE = 120 * TICKS_PER_MM
"""An edge of the area belongs to a side within this: boards and bed lie between [ticks]."""
_BESIDE = 30 * TICKS_PER_MM
"""Tile that is cut round a thing lies no further off it [ticks]."""
_JOINT_ROUNDED = 8
_HAIR = 0.005 * TICKS_PER_MM
_MOST_HAIR = 0.25
"""Of a cut edge, however short."""


def check_starts(plan: Document) -> Iterator[Objection]:
    """Object to a start that is told to bring other cuts than are drawn."""
    for surface in plan.surfaces:
        # A wall with bands is searched closed up; its table tells of that wall.
        if not surface.tiled or any(area.role == "band" for area in surface.tiled):
            continue
        area = surface.tiled[0]
        if not area.starts or any(tile.fixed for tile in surface.tiles):
            continue
        told = area.starts[0]
        tiles = list(_cut_in(surface))
        if len({tile.laid for tile in tiles}) != told.cut_tiles:
            yield Objection(
                _CODE, surface.id, f"is told to have {told.cut_tiles} cut tiles, and {len(tiles)} are drawn"
            )
        shortest = plan.rules.ticks("tiling.start.shortest_edge")
        low, high = (
            min((_width(tile, shortest + just) for tile in tiles), default=0.0) for just in (-_JUST, _JUST)
        )
        if not min(low, high) - _SLACK <= told.smallest_cut <= max(low, high) + _SLACK:
            yield Objection(
                _CODE,
                surface.id,
                f"has a cut of {low / TICKS_PER_MM:.1f} mm, and {told.smallest_cut / TICKS_PER_MM:.1f} mm is told",
            )
        cuts = [cut for tile in tiles for cut in cuts_of(tile, shortest)]
        yield from _poorest(surface, told, cuts, plan.rules)
        if len(surface.tiled) == 1:
            yield from _edges(surface, told, cuts, shortest)
            yield from _where(surface, told, cuts, plan.rules, shortest)
        yield from _wanted(surface, told)


@dataclass(frozen=True, slots=True)
class Cut:
    """One edge that a tile is cut along: its ends, what is left beside it, the tile's own width there [ticks]."""

    a: Point2
    b: Point2
    width: float
    whole: float
    askew: bool


def cuts_in(surface: Surface, rules: RuleSet) -> list[Cut]:
    """Every cut edge that counts of the tiles in a surface's main area."""
    shortest = rules.ticks("tiling.start.shortest_edge")
    return [cut for tile in _cut_in(surface) for cut in cuts_of(tile, shortest)]


def cuts_of(tile: Tile | Laid, shortest: float) -> Iterator[Cut]:
    """Every cut edge of a tile that counts."""
    counts = min(shortest, min(math.dist(a, b) for a, b in pairwise((*tile.laid, tile.laid[0]))) / 3)
    every = _all_cuts(tile.laid, tile.outline, tile.holes)
    yield from (cut for cut in every if math.dist(cut.a, cut.b) >= counts - EQUAL)


@lru_cache(maxsize=4096)
def _all_cuts(laid: Ring, outline: Ring, holes: tuple[Ring, ...]) -> tuple[Cut, ...]:
    """Every cut edge of a tile, however short; looked at under several lengths that just count."""
    far, border, shape = sum(math.dist(a, b) for a, b in sides(laid)), LinearRing(laid), area_of(outline, holes)
    found = []
    for ring in (outline, *holes):
        for a, b in sides(ring):
            if border.distance(Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)) > _ON_EDGE:
                way, askew = _way(laid, a, b)
                reach = [q[1] * way[0] - q[0] * way[1] for q in laid]
                found.append(Cut(a, b, _beside(shape, way, a, b, far), max(reach) - min(reach), askew))
    return tuple(found)


def _poorest(surface: Surface, told: Start, cuts: Sequence[Cut], rules: RuleSet) -> Iterator[Objection]:
    """Whether a cut is a sliver, or under half a tile; what a tape cannot tell may be told either way."""
    half = rules.number("tiling.start.half")
    for name, said, short in (
        ("a sliver", told.sliver, [(_sliver(cut, rules) - cut.width, cut.askew) for cut in cuts]),
        ("a cut under half a tile", told.under_half, [(half * cut.whole - cut.width, False) for cut in cuts]),
    ):
        if not said and any(by > _SLACK and not askew for by, askew in short):
            yield Objection(_CODE, surface.id, f"has {name}, and is told to have none")
        if said and all(by < -_SLACK for by, _ in short):
            yield Objection(_CODE, surface.id, f"is told to have {name}, and has none")


def _sliver(cut: Cut, rules: RuleSet) -> float:
    """Width below which a cut is a sliver [ticks]."""
    return min(rules.ticks("tiling.start.least_cut"), rules.number("tiling.start.least_share") * cut.whole)


def _where(
    surface: Surface, told: Start, cuts: Sequence[Cut], rules: RuleSet, shortest: float
) -> Iterator[Objection]:
    """The place that is told for the poorest cut is one where such a cut lies."""
    half = rules.number("tiling.start.half")
    short = [((_sliver(cut, rules) if told.sliver else half * cut.whole) - cut.width, cut) for cut in cuts]
    if not told.sliver and not told.under_half:
        if told.narrowest_at:
            yield Objection(_CODE, surface.id, f"tells a poor cut at {told.narrowest_at}, and has none")
        return
    # What rounding may make poor or not may be told, and need not be.
    least = min((cut.width for by, cut in short if by > _SLACK and not cut.askew), default=math.inf)
    poor = [cut for by, cut in short if by > -_SLACK]
    along = [(edge, side) for edge, side, _ in area_edges(surface, shortest)]
    places = {place for cut in poor if cut.width <= least + 2 * _SLACK for place in places_of(surface, cut, along)}
    if told.narrowest_at not in places:
        yield Objection(_CODE, surface.id, f"tells its poorest cut at {told.narrowest_at or 'no place'}")


def places_of(surface: Surface, cut: Cut, along: Sequence[tuple[LineString, str]]) -> Iterator[str]:
    """What a cut may be said to be at: the side that it runs along, or what stands nearest."""
    middle = Point((cut.a[0] + cut.b[0]) / 2, (cut.a[1] + cut.b[1]) / 2)
    edge, side = min(along, key=lambda one: one[0].distance(middle), default=(None, ""))
    if edge is None or edge.distance(middle) > _ON_EDGE:
        yield ""
    elif side:
        yield side
    else:
        things = [(f"{surface.id}/opening/{one.id}", opening_shape(one)) for one in surface.openings]
        things += [(why, Polygon(ring)) for why, ring in surface.not_tiled]
        near = [(shape.distance(edge.interpolate(0.5, normalized=True)), name) for name, shape in things]
        far = min(near, default=(math.inf, ""))[0]
        yield from (name for off, name in near if off <= far + _SLACK)
        if far > _BESIDE - _SLACK:
            yield ""


def _edges(surface: Surface, told: Start, cuts: Sequence[Cut], shortest: float) -> Iterator[Objection]:
    """The narrowest cut along each side is told, and of each as it is."""
    widest = max((high - low for tile in surface.tiles for low, high in _spans(tile)), default=1.0)
    found: dict[str, float | None] = {}
    for edge, side, _ in area_edges(surface, shortest):
        if side:
            widths = [cut.width for cut in cuts if lies_along(cut, edge)]
            known = [width for width in (found.get(side), min(widths, default=None)) if width is not None]
            found[side] = min(known, default=None)
    said = {edge.at: edge for edge in told.edges}
    if said.keys() != found.keys() or len(said) != len(told.edges):
        yield Objection(_CODE, surface.id, f"tells cuts along {sorted(said)}, and has {sorted(found)}")
        return
    for side, width in found.items():
        edge, share = said[side], 1.0 if width is None else width / widest
        alike = edge.width is None if width is None else abs((edge.width or 0) - width) <= _SLACK
        if not alike or abs(edge.share - share) > _SLACK / widest:
            yield Objection(_CODE, surface.id, f"tells another cut along {side} than is drawn")


def _spans(tile: Tile) -> Iterator[tuple[float, float]]:
    for axis in (0, 1):
        along = [point[axis] for point in tile.laid or tile.outline]
        yield min(along), max(along)


def lies_along(cut: Cut, edge: LineString) -> bool:
    """Whether a cut runs along an edge of the area."""
    (a, b), (c, d) = edge.coords
    middle = ((cut.a[0] + cut.b[0]) / 2, (cut.a[1] + cut.b[1]) / 2)
    away = max(abs((q[0] - a) * (d - b) - (q[1] - b) * (c - a)) for q in (cut.a, cut.b))
    return away <= _ON_EDGE * math.dist((a, b), (c, d)) and off_segment(middle, (a, b), (c, d)) <= _ON_EDGE


def area_edges(surface: Surface, shortest: float) -> Iterator[tuple[LineString, str, bool]]:
    """Edges of the area that tile goes on, each with the side it runs along, and whether it bounds an opening."""
    for part in surface.tiled[0].shape.geoms:
        turned = orient(part)
        for ring, hole in ((turned.exterior, False), *((ring, True) for ring in turned.interiors)):
            for a, b in pairwise(ring.coords):
                if math.dist(a, b) >= shortest - EQUAL:
                    yield LineString([a, b]), "" if hole else _side_of(surface, a, b), hole


def _side_of(surface: Surface, a: Point2, b: Point2) -> str:
    """The surface's side that an edge of its area runs along; empty where none is near."""
    middle, best, found = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), float(_NEAR_SIDE), ""
    for index, (c, d) in enumerate(sides(surface.outline)):
        long, edge = math.dist(c, d), math.dist(a, b)
        way = ((d[0] - c[0]) / long, (d[1] - c[1]) / long)
        turn = ((b[0] - a[0]) * way[0] + (b[1] - a[1]) * way[1]) / edge
        off = (middle[0] - c[0], middle[1] - c[1])
        along, away = off[0] * way[0] + off[1] * way[1], abs(way[0] * off[1] - way[1] * off[0])
        if turn > _ALONG and 0 <= along <= long and away < best:
            best, found = away, f"{surface.id}/side/{index}"
    return found


def _wanted(surface: Surface, told: Start) -> Iterator[Objection]:
    """No more edges of niches and windows are told to want a joint, and to have one, than there are."""
    lines = {
        (axis, at)
        for opening in surface.openings
        if opening.kind in ("niche", "window") and opening.outline is not None
        for axis in (0, 1)
        for at in (min(p[axis] for p in opening.outline), max(p[axis] for p in opening.outline))
    }
    if not told.on_joints <= told.wanted <= len(lines):
        yield Objection(_CODE, surface.id, f"tells {told.on_joints} of {told.wanted} edges on joints")
    area = surface.tiled[0]
    if area.pattern == "stacked" and not area.angle and len(area.steps) == 2 and len(area.tiles) == 1:
        met = [_on_joint(surface, axis, at) for axis, at in lines]
        if told.wanted != len(lines) or not sum(one is True for one in met) <= told.on_joints <= sum(
            one is not False for one in met
        ):
            yield Objection(_CODE, surface.id, f"tells {told.on_joints} of {told.wanted} edges on joints")


def _on_joint(surface: Surface, axis: int, at: float) -> bool | None:
    """Whether a line lies on a joint of a stacked pattern; None where rounding decides."""
    area = surface.tiled[0]
    step = area.steps[axis][axis] * TICKS_PER_MM
    behind = (at - area.origin[axis]) % step
    size = step - area.joint
    off = min(behind, step - behind) if behind > size or behind < _SLACK else -min(behind, size - behind)
    return None if abs(off) <= _JOINT_ROUNDED else off > 0


def _cut_in(surface: Surface) -> Iterator[Tile]:
    """Cut tiles of the surface's first area, which is its main one."""
    area = surface.tiled[0]
    for tile in surface.tiles:
        here = len(surface.tiled) == 1 or area.shape.covers(tile.shape.representative_point())
        if here and not tile.whole and tile.laid and tile.stock in area.tiles:
            yield tile


def _width(tile: Tile, shortest: float) -> float:
    """Least width beside any cut edge that counts; without one the least own side [ticks]."""
    own = min(math.dist(a, b) for a, b in sides(tile.laid))
    return min((cut.width for cut in cuts_of(tile, shortest)), default=own)


def _way(laid: Ring, a: Point2, b: Point2) -> tuple[Vector, bool]:
    """The way that a width beside a cut edge is square to: of the tile's side that it runs along, else its own."""
    edge = np.array(b, dtype=float) - a
    way = edge / np.linalg.norm(edge)
    ways = [(np.array(q, dtype=float) - p) / math.dist(p, q) for p, q in sides(laid)]
    nearest = min(ways, key=lambda one: abs(one[0] * way[1] - one[1] * way[0]))
    if abs(nearest[0] * way[1] - nearest[1] * way[0]) < _TAPER_SINE:
        return nearest * np.sign(nearest @ way), False
    return way, True


def _beside(shape: Polygon, way: Vector, a: Point2, b: Point2, far: float) -> float:
    """How far the tile reaches beside a cut edge, square to the side it runs along, at its narrow end [ticks]."""
    start, edge = np.array(a, dtype=float), np.array(b, dtype=float) - a
    inward = np.array((-way[1], way[0]))
    # Rounding may leave a hair of tile at an end of the edge, as beside an opening that the tile ends level with.
    hair = edge * min(_HAIR / float(np.linalg.norm(edge)), _MOST_HAIR)
    one, other = start + hair, start + edge - hair
    band = Polygon([one, other, other + inward * far, one + inward * far])
    found = band.intersection(shape)
    points = [point for part in getattr(found, "geoms", [found]) for point in _corners(part)]
    deepest = max((float((np.array(point) - start) @ inward) for point in points), default=0.0)
    return max(deepest - max(float(edge @ inward), 0.0), 0.0)


def _corners(part: object) -> list[tuple[float, ...]]:
    if isinstance(part, Polygon):
        return list(part.exterior.coords)
    return list(getattr(part, "coords", ()))
