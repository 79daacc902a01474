"""The ground of one surface on the day of marking: where a line runs and ends, and what finds it there."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import shapely
from shapely import LineString, Polygon

from firstcourse.geometry import Point, Ring, sides
from firstcourse.plan import SideKind, Surface
from firstcourse.tiles.face_edges import built_later
from firstcourse.tiles.field import STANDING
from firstcourse.tiles.mark_site import Build, Site
from firstcourse.tiles.model import XY
from firstcourse.units import TICKS_PER_MM, ticks_from_mm

SAME_MM = 0.05
"""Places nearer to each other are one [mm]."""
_CROSSES = 0.5
"""Two edges that meet with less than this sine between them run on, they make no corner to measure from."""
_REACH_MM = 1e5
"""Longer than any room [mm]."""
_HAND_MM = 25.0
"""A gap narrower than this cannot be measured in [mm]."""
_SLIT_MM = 0.01
"""A gap narrower than twice this comes from rounding to ticks [mm]."""
_CORNER_MM = 2.0
"""How far the face of boards reaches on in a corner that is not square [mm]."""
_INSIDE_MM = 5.0
"""How far inside a line's end a tape is held square to it [mm]."""
_LOOKS = 16
"""Places along a line, from its end inwards, at which something to measure from is looked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundEdge:
    """A stretch of what a line may end at [mm].

    Attributes:
        ref: The side, opening or surface it is part of.
        touched: Whether it can be measured from.
        face: What it is part of; beside a gap too narrow for a hand it is shorter than the edge.
        ground: Edges of the open ground; where the end of a board makes too short a corner for a hand, those of
            what a hand reaches into run past them.
    """

    a: XY
    b: XY
    ref: str
    touched: bool
    face: LineString
    ground: shapely.Geometry

    def touched_at(self, at: XY) -> bool:
        """Whether it can be measured from at a place on it."""
        spot = shapely.Point(at)
        return self.touched and bool(max(self.face.distance(spot), self.ground.distance(spot)) < SAME_MM)

    @property
    def way(self) -> XY:
        """Unit vector along it."""
        length = math.dist(self.a, self.b)
        return (self.b[0] - self.a[0]) / length, (self.b[1] - self.a[1]) / length


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundLine:
    """A line across the ground, its left or lower end first; the normal points left of it or up [mm]."""

    a: XY
    b: XY
    normal: XY

    @property
    def ticks(self) -> tuple[Point, Point]:
        """Its ends [ticks]."""
        return in_ticks(self.a), in_ticks(self.b)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One measurement that finds a line.

    Attributes:
        start: Where the tape is held, on what it is measured from [mm].
        end: Where it ends, on the line [mm].
        ref: What it is measured from.
        at: The edge along which the tape lies, or at which it is held; empty in the open.
    """

    start: XY
    end: XY
    ref: str
    at: str = ""


class MarkGround:
    """What lines run over and end at.

    Args:
        surface: The floor, wall or ceiling.
        site: What stands about it.
    """

    def __init__(self, surface: Surface, site: Site) -> None:
        self.surface, self.site = surface, site
        shape = Polygon([_mm(point) for point in surface.outline])
        known: list[tuple[LineString, str, bool]] = []
        for index, (a, b) in enumerate(sides(surface.outline)):
            touched = site.touched(surface, index) and not site.unknown_face(surface, index)
            known.append((LineString([_mm(a), _mm(b)]), side_ref(surface, index), touched))
        for index, one, other, depth in site.strips(surface):
            one, other = _into_corners(surface.outline, index, (one, other), depth)
            ring = _strip(_mm(one), _mm(other), depth / TICKS_PER_MM)
            shape = shape.difference(Polygon(ring))
            touched = site.touched(surface, index)
            ref = side_ref(surface, index)
            known.append((_longer(*ring[2:4]), ref, touched))
            known += [(LineString([ring[0], ring[3]]), ref, False), (LineString([ring[1], ring[2]]), ref, False)]
        for opening in surface.openings:
            if opening.kind in STANDING and opening.outline is not None:
                ring = [_mm(point) for point in opening.outline]
                shape = shape.difference(Polygon(ring))
                touched = site.fixture(surface, opening.id)
                known += [(LineString(pair), f"{surface.id}/opening/{opening.id}", touched)
                          for pair in pairwise([*ring, ring[0]])]  # fmt: skip
        for zone in surface.not_tiled:
            ring = [_mm(point) for point in zone.outline]
            shape = shape.difference(Polygon(ring))
            known += [(LineString(pair), zone.why, False) for pair in pairwise([*ring, ring[0]])]
        # Where boards stand along a slanting side rounding leaves slits that no tape is held in.
        self.open_edges = shape.buffer(-_SLIT_MM, join_style="mitre").buffer(_SLIT_MM, join_style="mitre").boundary
        # No hand and no tape goes into what is left beside a tub that stops short of its wall.
        shape = shape.buffer(-_HAND_MM / 2, join_style="mitre").buffer(_HAND_MM / 2, join_style="mitre")
        self.parts = tuple(part for part in shapely.get_parts(shape) if isinstance(part, Polygon))
        self.shape = shapely.union_all(self.parts)
        self.edges = tuple(self._edges(known))

    def across(self, line: LineString, through: XY) -> GroundLine | None:
        """The stretch of a line that runs through a point, from edge to edge."""
        here = shapely.Point(through)
        parts = [part for part in shapely.get_parts(line.intersection(self.shape)) if part.length > 0]
        part = next((part for part in parts if part.distance(here) < SAME_MM), None)
        if part is None:
            return None
        a, b = part.coords[0], part.coords[-1]
        if (round(b[0], 3), round(b[1], 3)) < (round(a[0], 3), round(a[1], 3)):
            a, b = b, a
        length = math.dist(a, b)
        return GroundLine(a=(a[0], a[1]), b=(b[0], b[1]), normal=(-(b[1] - a[1]) / length, (b[0] - a[0]) / length))

    def edge(self, at: XY) -> GroundEdge:
        """The edge that a point lies on."""
        here = shapely.Point(at)
        return min(self.edges, key=lambda edge: round(LineString([edge.a, edge.b]).distance(here), 4))

    def found_by(self, line: GroundLine) -> tuple[Measured, ...]:
        """A measurement for each end of a line; none where nothing near its end can be touched."""
        found = []
        for end, far in ((line.a, line.b), (line.b, line.a)):
            measured = self._along_edge(end, line.normal) or self._square(end, far, line.normal)
            if measured is not None:
                found.append(measured)
        return tuple(found)

    def rise(self, at: XY, *, down: bool) -> Measured | None:
        """A measurement straight up a wall to a place on it, from what lies below it; or down, from above."""
        u, v = at
        piece = self._piece(LineString([(u, v - _REACH_MM), (u, v + _REACH_MM)]), at)
        if piece is None:
            return None
        end = (u, piece.bounds[3 if down else 1])
        edge = self.edge(end)
        if abs(end[1] - v) > SAME_MM and edge.touched_at(end) and abs(edge.way[0]) > abs(edge.way[1]):
            return Measured(start=end, end=at, ref=edge.ref)
        floor = None if down else self._floor(u, edge)
        if floor is None or floor[1] >= v - SAME_MM:
            return None
        return Measured(start=(u, floor[1]), end=at, ref=floor[0])

    def beside(self, at: XY, *, back: bool) -> Measured | None:
        """A measurement along a wall, level, to a place on it, from its left; or back, from its right."""
        u, v = at
        piece = self._piece(LineString([(u - _REACH_MM, v), (u + _REACH_MM, v)]), at)
        if piece is None:
            return None
        end = (piece.bounds[2 if back else 0], v)
        edge = self.edge(end)
        if abs(end[0] - u) <= SAME_MM or not edge.touched_at(end) or abs(edge.way[1]) <= abs(edge.way[0]):
            return None
        return Measured(start=end, end=at, ref=edge.ref)

    def _piece(self, line: LineString, at: XY) -> LineString | None:
        here = shapely.Point(at)
        parts = [part for part in shapely.get_parts(line.intersection(self.shape)) if part.length > SAME_MM]
        return next((part for part in parts if part.distance(here) < SAME_MM), None)

    def _along_edge(self, end: XY, normal: XY) -> Measured | None:
        """Along the edge that a line ends at, from the corner at either end of it, always the same side first."""
        edge = self.edge(end)
        if not edge.touched_at(end):
            return None
        found = []
        for corner in (edge.a, edge.b):
            other = self._beyond(corner, edge)
            if other is None or not (other.touched_at(corner) and edge.touched_at(corner)):
                continue
            if math.dist(corner, end) > SAME_MM:
                found.append(
                    (-along_of(corner, normal), Measured(start=corner, end=end, ref=other.ref, at=edge.ref))
                )
        return min(found, key=lambda item: round(item[0], 3), default=(0.0, None))[1]

    def _beyond(self, corner: XY, edge: GroundEdge) -> GroundEdge | None:
        """The edge that makes a corner with another one."""
        for other in self.edges:
            if other is edge or min(math.dist(other.a, corner), math.dist(other.b, corner)) > SAME_MM:
                continue
            sine = abs(edge.way[0] * other.way[1] - edge.way[1] * other.way[0])
            if sine > _CROSSES:
                return other
        return None

    def _square(self, end: XY, far: XY, normal: XY) -> Measured | None:
        """Square to a line, a little inside its end, or where else along its nearer half something is in reach."""
        length = math.dist(end, far)
        inward = ((far[0] - end[0]) / length, (far[1] - end[1]) / length)
        at = self.edge(end).ref
        for step in range(_LOOKS // 2):
            away = max(_INSIDE_MM, length * step / _LOOKS)
            spot = (end[0] + inward[0] * away, end[1] + inward[1] * away)
            ray = LineString(
                [(spot[0] + normal[0] * far, spot[1] + normal[1] * far) for far in (-_REACH_MM, _REACH_MM)]
            )
            piece = self._piece(ray, spot)
            for hit in () if piece is None else (piece.coords[-1], piece.coords[0]):
                edge = self.edge((hit[0], hit[1]))
                if edge.touched_at((hit[0], hit[1])) and abs(along_of(edge.way, normal)) < _CROSSES:
                    return Measured(start=(hit[0], hit[1]), end=spot, ref=edge.ref, at=at if step == 0 else "")
        return None

    def _floor(self, u: float, edge: GroundEdge) -> tuple[str, float] | None:
        """The floor below a wall's edge as it can be touched: which, and how high on the wall [mm]."""
        if built_later(self.surface):
            return None
        room = f"{self.surface.room}/floor"
        foot = next(
            (side for index, side in enumerate(self.surface.sides) if edge.ref == side_ref(self.surface, index)),
            None,
        )
        extent = self.surface.extent or self.surface.outline
        if edge.ref == room or (foot is not None and foot.kind is SideKind.FOOT and foot.meets == room):
            build = self.site.builds.get(room, Build(under=0, over=0))
            (u0, v0), (u1, v1) = _mm(extent[0]), _mm(extent[1])
            if build.under is None:
                return None
            return room, v0 + (v1 - v0) * (u - u0) / (u1 - u0) + build.under / TICKS_PER_MM
        if edge.ref == f"{room}/shower":
            build = self.site.builds.get(edge.ref, Build(under=None, over=None))
            top = self.edge_height(edge, u)
            return None if build.over is None else (edge.ref, top - build.over / TICKS_PER_MM)
        return None

    @staticmethod
    def edge_height(edge: GroundEdge, u: float) -> float:
        """How high an edge lies at a place along a wall [mm]."""
        (u0, v0), (u1, v1) = edge.a, edge.b
        return v0 if u1 == u0 else v0 + (v1 - v0) * (u - u0) / (u1 - u0)

    def _edges(self, known: Sequence[tuple[LineString, str, bool]]) -> Iterator[GroundEdge]:
        for part in self.parts:
            for ring in (part.exterior, *part.interiors):
                for a, b in pairwise(ring.coords):
                    if math.dist(a, b) < SAME_MM:
                        continue
                    ends = shapely.points([a, b])
                    # Of what lies alike far what is hidden counts: a tape that touches it may touch the other.
                    face, ref, touched = min(
                        known, key=lambda item: (round(float(shapely.distance(item[0], ends).max()), 3), item[2])
                    )
                    yield GroundEdge(
                        a=(a[0], a[1]), b=(b[0], b[1]), ref=ref, touched=touched, face=face, ground=self.open_edges
                    )


def side_ref(surface: Surface, index: int) -> str:
    """Reference to a side of a surface's outline, counted from 0."""
    return f"{surface.id}/side/{index}"


def in_ticks(point: XY) -> Point:
    """A place in millimetres as one in ticks."""
    return ticks_from_mm(point[0]), ticks_from_mm(point[1])


def along_of(point: XY, way: XY) -> float:
    """How far a place lies along a way, given as a unit vector [mm]."""
    return point[0] * way[0] + point[1] * way[1]


def _longer(one: XY, other: XY) -> LineString:
    """A board's face with what its thickness adds in a corner that is not square."""
    share = _CORNER_MM / math.dist(one, other)
    by = ((other[0] - one[0]) * share, (other[1] - one[1]) * share)
    return LineString([(one[0] - by[0], one[1] - by[1]), (other[0] + by[0], other[1] + by[1])])


def _into_corners(outline: Ring, index: int, stretch: tuple[Point, Point], depth: int) -> tuple[Point, Point]:
    """A stretch of boards along a side, run on into an inside corner that it all but ends at.

    Boards fill such a corner, be it wider than square or the wall by its own readings a hair shorter than its
    side. The sliver left beyond them would be lost when gaps too narrow for a hand are closed, and with it the
    exact line of the next side. What runs on lies past that side but for the sliver.
    """
    found = []
    for corner, end, way in ((index, stretch[0], -1), (index + 1, stretch[1], 1)):
        before, at, after = (outline[(corner + step) % len(outline)] for step in (-1, 0, 1))
        into, out = (at[0] - before[0], at[1] - before[1]), (after[0] - at[0], after[1] - at[1])
        turn, on = into[0] * out[1] - into[1] * out[0], into[0] * out[0] + into[1] * out[1]
        if turn > 0 and math.dist(at, end) <= _CORNER_MM * TICKS_PER_MM:
            along = into if way > 0 else out
            share = way * depth * min(1.0, max(0, on) / turn) / math.hypot(*along)
            end = round(at[0] + along[0] * share), round(at[1] + along[1] * share)
        found.append(end)
    return found[0], found[1]


def _strip(one: XY, other: XY, depth: float) -> list[XY]:
    """What stands along a stretch of a side, which has the surface on its left: its foot, then its face."""
    length = math.dist(one, other)
    inward = (-(other[1] - one[1]) / length * depth, (other[0] - one[0]) / length * depth)
    return [
        one,
        other,
        (other[0] + inward[0], other[1] + inward[1]),
        (one[0] + inward[0], one[1] + inward[1]),
    ]


def _mm(point: Point) -> XY:
    return point[0] / TICKS_PER_MM, point[1] / TICKS_PER_MM
