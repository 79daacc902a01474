"""Where cut tiles go, as the setter calls it: the sides, openings, borders and joints that they are cut along.

Each cut edge of a piece is named by what runs alongside it nearest: tile stops short of walls by the boards, bed
and tile that stand before them, so that no one distance tells what an edge was cut for. Lengths are ticks.
"""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, pairwise

import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from firstcourse.geometry import Point, sides
from firstcourse.plan.surfaces import Side, SideKind, Surface
from firstcourse.plan.tiles import Tile, TiledArea
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Name, Ref, Word

Place = tuple[Word | Name | Ref | Side, ...]
"""What a tile is cut along; empty in the field."""

_BEFORE_SIDE = 75 * TICKS_PER_MM
"""Farthest that tile stops before a side: the boards, the bed and the tile of the surface that meets it."""
_BEFORE_OPENING = 16 * TICKS_PER_MM
"""Farthest that tile stops before an opening or what stands there: the widest joint."""
_AT_FOLD = 4 * TICKS_PER_MM
_ROUNDING = 4.0
"""An edge this near to the uncut tile's own is the tile's own."""
_SHORTEST = TICKS_PER_MM / 10
"""Shorter edges come from rounding, and their direction with them."""
_ALONGSIDE_SINE = 0.05
"""Edges that turn by less run alongside each other: over a short cut, rounding turns them."""
_ALONG_COSINE = 0.99
"""Edges that turn less than this from a border's strip run along it; a mitre turns far more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Along:
    """What tiles are cut along.

    Attributes:
        name: What the setter calls it: a word by its code, a name, a reference, or a side of the surface.
        lines: Its edges.
        near: How far from it a cut may lie.
        circle: Centre and radius of what is round, in place of edges.
    """

    name: Word | Name | Ref | Side
    lines: tuple[tuple[Point, Point], ...] = ()
    near: float
    circle: tuple[Point, float] | None = None

    def off(self, a: Point, b: Point) -> float:
        """How far from it the middle of a cut edge lies; infinite where that is not near or not alongside."""
        middle = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
        if self.circle is not None:
            centre, radius = self.circle
            found = abs(math.dist(middle, centre) - radius)
        else:
            offs = (_distance(middle, *line) for line in self.lines if _alongside((a, b), line))
            found = min(offs, default=math.inf)
        return found if found <= self.near else math.inf


class CutPlaces:
    """Tells where the cut tiles of one surface go.

    Args:
        surface: With its tiles.
    """

    def __init__(self, surface: Surface) -> None:
        self._everywhere = (*_sides(surface), *_openings(surface), *_joints(surface))
        self._areas = tuple((_shape(area), tuple(_beside(area, surface.tiled))) for area in surface.tiled)

    def counted(self, tiles: Iterable[Tile]) -> tuple[tuple[Place, int], ...]:
        """The places of tiles with the number there."""
        return tuple(Counter(self.place(tile) for tile in tiles).items())

    def place(self, tile: Tile) -> Place:
        """What a tile is cut along; nothing where it is cut in the field."""
        spot = Polygon(tile.outline, tile.holes).representative_point()
        beside = next((beside for shape, beside in self._areas if shape.covers(spot)), ())
        along = (*self._everywhere, *beside)
        found = set()
        for a, b in _cut_edges(tile):
            off, index = min(((one.off(a, b), index) for index, one in enumerate(along)), default=(math.inf, -1))
            if off < math.inf:
                found.add(index)
        return tuple(dict.fromkeys(along[index].name for index in sorted(found)))


def _beside(own: TiledArea, areas: Sequence[TiledArea]) -> Iterator[_Along]:
    """The edges of the areas beside one, named as seen from there."""
    found: dict[Word, list[tuple[Point, Point]]] = {}
    for area in areas:
        rings = [ring for part in area.area for ring in (part.outline, *part.holes)] if area is not own else []
        for line in chain.from_iterable(map(sides, rings)):
            found.setdefault(_name_between(own, area, line), []).append(line)
    near = max(area.joint for area in areas) + _ROUNDING
    for name, lines in found.items():
        yield _Along(name=name, lines=tuple(lines), near=near)


def _name_between(own: TiledArea, other: TiledArea, line: tuple[Point, Point]) -> Word:
    """What a setter who tiles one area calls an edge of the next."""
    if own.role == "field":
        return Word(word="next_field" if other.role == "field" else other.role)
    if own.role == "border":
        # A strip's own edges run along it; what crosses its way is a strip round the corner, or what lies beyond.
        (ax, ay), (bx, by) = line
        turn = math.atan2(by - ay, bx - ax) - math.radians(own.angle)
        return Word(word="corner_of_border" if abs(math.cos(turn)) < _ALONG_COSINE else "edge_of_border")
    return Word(word=f"edge_of_{own.role}")


def _sides(surface: Surface) -> Iterator[_Along]:
    middle = Polygon(surface.outline).centroid
    for line, side in zip(sides(surface.outline), surface.sides, strict=True):
        yield _Along(name=_side_name(side, *line, (middle.x, middle.y)), lines=(line,), near=_BEFORE_SIDE)


def _side_name(side: Side, a: Point, b: Point, middle: tuple[float, float]) -> Word | Side:
    if side.kind is not SideKind.FREE and side.meets:
        return side
    if abs(b[0] - a[0]) >= abs(b[1] - a[1]):
        return Word(word="lower_edge" if a[1] < middle[1] else "upper_edge")
    return Word(word="left_edge" if a[0] < middle[0] else "right_edge")


def _openings(surface: Surface) -> Iterator[_Along]:
    """Openings and what stands before the surface."""
    for opening in surface.openings:
        if opening.outline is not None:
            yield _Along(name=Name(name=opening.id), lines=tuple(sides(opening.outline)), near=_BEFORE_OPENING)
        elif opening.centre is not None and opening.diameter is not None:
            circle = opening.centre, opening.diameter / 2
            yield _Along(name=Name(name=opening.id), near=_BEFORE_OPENING, circle=circle)
    for zone in surface.not_tiled:
        yield _Along(name=Ref(ref=zone.why), lines=tuple(sides(zone.outline)), near=_BEFORE_OPENING)


def _joints(surface: Surface) -> Iterator[_Along]:
    """Folds of a floor that falls, and soft joints across the tile; those along an edge are named by the edge."""
    if surface.fall is not None:
        yield _Along(name=Word(word="valleys"), lines=surface.fall.valleys, near=_AT_FOLD)
        yield _Along(name=Word(word="ridges"), lines=surface.fall.ridges, near=_AT_FOLD)
    shapes = [_shape(area) for area in surface.tiled]
    for joint in surface.soft_joints:
        beside = [LineString(joint.line).offset_curve(way * joint.width) for way in (1, -1)]
        if all(any(shape.intersection(line).length > 0 for shape in shapes) for line in beside):
            yield _Along(name=Word(word="soft_joint"), lines=tuple(pairwise(joint.line)), near=joint.width)


def _shape(area: TiledArea) -> BaseGeometry:
    shape = shapely.union_all([Polygon(part.outline, part.holes) for part in area.area])
    shapely.prepare(shape)
    return shape


def _cut_edges(tile: Tile) -> Iterator[tuple[Point, Point]]:
    """Edges of a piece that are not edges of the uncut tile."""
    own = tuple(sides(tile.laid or tile.outline))
    for ring in (tile.outline, *tile.holes):
        for a, b in sides(ring):
            middle = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
            if math.dist(a, b) >= _SHORTEST and all(_distance(middle, *line) > _ROUNDING for line in own):
                yield a, b


def _alongside(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    (ax, ay), (bx, by) = ((q[0] - p[0], q[1] - p[1]) for p, q in (one, other))
    return abs(ax * by - ay * bx) <= _ALONGSIDE_SINE * math.hypot(ax, ay) * math.hypot(bx, by)


def _distance(point: tuple[float, float], a: Point, b: Point) -> float:
    """From a point to a line between two others."""
    ux, uy = b[0] - a[0], b[1] - a[1]
    length2 = ux * ux + uy * uy
    share = ((point[0] - a[0]) * ux + (point[1] - a[1]) * uy) / length2 if length2 else 0.0
    share = min(max(share, 0.0), 1.0)
    return math.dist(point, (a[0] + share * ux, a[1] + share * uy))
