"""The ground that lines are snapped on, and what their ends are measured from."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import shapely
from shapely import LineString, Polygon

from firstcourse.geometry.inset import Grid, inset
from firstcourse.geometry.polygon import Point, from_shapely, sides
from firstcourse.plan import SideKind, Surface
from firstcourse.tiling.field import STANDING
from firstcourse.tiling.model import XY
from firstcourse.units import TICKS_PER_MM, Tape, format_length, ticks_from_mm

_TICK_GRID = Grid(origin=(0, 0), graduation=1)
SAME_MM = 0.05
"""Places nearer to each other are one [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundEdge:
    """A stretch of what can be measured from: a wall's face, or what stands on the floor [mm]."""

    a: XY
    b: XY
    label: str


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


class Ground:
    """What the lines run over and end at.

    Args:
        surface: The floor or wall.
        before: Along each side, thickness of what stands before it there [ticks].
        tape: Tape of the job.
    """

    def __init__(self, surface: Surface, before: Sequence[int], tape: Tape) -> None:
        self.surface, self.tape = surface, tape
        self.sides = tuple(
            (_mm(a), _mm(b), depth / TICKS_PER_MM, side)
            for (a, b), depth, side in zip(sides(surface.outline), before, surface.sides, strict=True)
        )
        self.standing = tuple(
            (Polygon([_mm(point) for point in opening.outline]), opening.id)
            for opening in surface.openings
            if opening.kind in STANDING and opening.outline is not None
        )
        shape = inset(surface.outline, tuple(before), _TICK_GRID)
        for opening in surface.openings:
            if opening.kind in STANDING and opening.outline is not None:
                shape = shape.difference(Polygon(opening.outline))
        self.parts = tuple(
            Polygon([_mm(p) for p in outline], [[_mm(p) for p in hole] for hole in holes])
            for outline, holes in from_shapely(shape)
        )
        self.shape = shapely.union_all(self.parts)
        self.edges = tuple(self._edges())

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

    def mark(self, at: XY, normal: XY) -> str:
        """Where a line's end is marked along the edge that it meets, always from the same side of the line."""
        edge = self.edge(at)
        corner = max(edge.a, edge.b, key=lambda end: along_of(end, normal))
        where = "in" if edge.label.startswith("corner ") else "on"
        from_ = self._corner(edge, corner)
        return f"{where} {self.face(edge.label)} {self.length(math.dist(corner, at))} from {from_}"

    def edge(self, at: XY) -> GroundEdge:
        """The edge that a point lies on."""
        here = shapely.Point(at)
        return min(self.edges, key=lambda edge: round(LineString([edge.a, edge.b]).distance(here), 4))

    def face(self, label: str) -> str:
        """A side as one stands before it."""
        boarded = any(side.label == label and depth > 0 for _, _, depth, side in self.sides)
        if not boarded:
            return label
        return f"the finished face in {label}" if label.startswith("corner ") else f"the face of {label}"

    def length(self, length_mm: float) -> str:
        """A length as the job's tape reads it."""
        return format_length(ticks_from_mm(length_mm), self.tape)

    def _corner(self, edge: GroundEdge, corner: XY) -> str:
        other = next(
            (
                one.label
                for one in self.edges
                if one is not edge and min(math.dist(one.a, corner), math.dist(one.b, corner)) < SAME_MM
            ),
            "",
        )
        names = [set(label.removeprefix("wall ").split("-")) for label in (edge.label, other)]
        shared = names[0] & names[1]
        if (
            edge.label != other
            and len(shared) == 1
            and edge.label.startswith("wall ") == other.startswith("wall ")
        ):
            return f"corner {next(iter(shared))}"
        return f"the corner of {other}" if edge.label == other else f"{self.face(other)}"

    def _edges(self) -> Iterator[GroundEdge]:
        for part in self.parts:
            for ring in (part.exterior, *part.interiors):
                points = [(x, y) for x, y in ring.coords]
                for a, b in pairwise(points):
                    yield GroundEdge(a=a, b=b, label=self._label(a, b))

    def _label(self, a: XY, b: XY) -> str:
        middle = shapely.Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        length = math.dist(a, b)
        along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
        options = [(shape.exterior.distance(middle), name) for shape, name in self.standing]
        for c, d, depth, side in self.sides:
            far = math.dist(c, d)
            turn = abs(along[0] * (d[1] - c[1]) - along[1] * (d[0] - c[0])) / far
            name = _board_edge(along) if side.kind is SideKind.FREE else side.label
            options.append((abs(LineString([c, d]).distance(middle) - depth) + length * turn, name))
        return min(options, key=lambda option: round(option[0], 3), default=(0.0, "the edge"))[1]


def _board_edge(along: XY) -> str:
    """Name of a side where boards stop, from its direction round the ground, which lies on its left."""
    names = ("lower", "upper") if abs(along[0]) > abs(along[1]) else ("right", "left")
    return f"the boards' {names[(along[0] if abs(along[0]) > abs(along[1]) else along[1]) < 0]} edge"


def in_ticks(point: XY) -> Point:
    """A place in millimetres as one in ticks."""
    return ticks_from_mm(point[0]), ticks_from_mm(point[1])


def along_of(point: XY, way: XY) -> float:
    """How far a place lies along a way, given as a unit vector [mm]."""
    return point[0] * way[0] + point[1] * way[1]


def _mm(point: Point) -> XY:
    return point[0] / TICKS_PER_MM, point[1] / TICKS_PER_MM
