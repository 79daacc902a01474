"""Borders: strips of another tile along the edges of a tiled area, at one distance from them all.

The strips part the area into what lies inside them, laid from its own start, and what lies between them and the
edges. Lengths are millimetres.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

import shapely
from shapely import LineString, MultiPolygon, Polygon

from firstcourse.errors import InputValueError
from firstcourse.tiles.bands import Laying
from firstcourse.tiles.model import XY, CellPiece, Edge, RepeatCell

_SAME = 1e-6
_STRAIGHT_SINE = 1e-4
"""Two sides that turn by less than this are one side."""
_ALIKE_MM = 1.0
"""Sides whose lengths differ by less than this are as long as each other to the eye [mm]."""

Line = tuple[XY, float]
"""Unit normal into the area, and the offset of a line along it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Border:
    """What runs round.

    Attributes:
        cell: Courses of its tile, level.
        width: From its outer edge to its inner one [mm].
        distance: From the edge of the tiling to its outer edge [mm].
        corners: Whether strips meet on the corner's bisector, or the longer runs through.
    """

    cell: RepeatCell
    width: float
    distance: float
    corners: Literal["mitred", "butted"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bordered:
    """An area parted by its border.

    Attributes:
        inside: What the border encloses.
        edges: Sides of the inside, named and weighed as the sides they run along.
        strips: The border, side by side.
        outside: What lies between the border and the edges; empty where it runs along them.
    """

    inside: Polygon | MultiPolygon
    edges: tuple[Edge, ...]
    strips: tuple[Laying, ...]
    outside: Polygon | MultiPolygon


def with_border(
    area: Polygon | MultiPolygon, frame: Polygon | MultiPolygon, edges: Sequence[Edge], border: Border
) -> Bordered:
    """Part an area by a border.

    Args:
        area: Where tile goes; small openings lie within border and field alike [mm].
        frame: The area without small openings; the border follows its outer edge [mm].
        edges: Sides of the surface, for names and weights.
        border: What runs round.

    Raises:
        InputValueError: The area has several parts, or a side too short for the border to turn there.
    """
    if not isinstance(frame, Polygon):
        raise InputValueError("the tiling is in several parts, and a border runs round one; leave the border out")
    ring = _corners(frame)
    lines = [_line(a, b) for a, b in zip(ring, ring[1:] + ring[:1], strict=True)]
    joint = border.cell.joint
    inner = _ring(lines, border.distance + border.width + joint, ring)
    outside = area.difference(Polygon(_ring(lines, border.distance - joint, ring)))
    strips = []
    for index in range(len(lines)):
        shape = _strip(lines, ring, index, border)
        part = shape.intersection(area)
        if part.area > 0:
            strips.append(_laid(shape, part, lines[index], border))
    return Bordered(
        inside=area.intersection(Polygon(inner)),
        edges=tuple(
            _named(a, b, outer, edges)
            for a, b, outer in zip(
                inner, inner[1:] + inner[:1], zip(ring, ring[1:] + ring[:1], strict=True), strict=True
            )
        ),
        strips=tuple(strips),
        outside=outside if border.distance > joint else Polygon(),
    )


def _corners(frame: Polygon) -> list[XY]:
    """Corners of the outer edge, counter-clockwise; points along a straight side left out."""
    points = list(shapely.orient_polygons(frame).exterior.coords)[:-1]
    kept = []
    for index, (x, y) in enumerate(points):
        (ax, ay), (bx, by) = points[index - 1], points[(index + 1) % len(points)]
        cross = (x - ax) * (by - y) - (y - ay) * (bx - x)
        if abs(cross) > _STRAIGHT_SINE * math.dist((ax, ay), (x, y)) * math.dist((x, y), (bx, by)):
            kept.append((x, y))
    return kept


def _line(a: XY, b: XY) -> Line:
    length = math.dist(a, b)
    normal = (a[1] - b[1]) / length + 0.0, (b[0] - a[0]) / length + 0.0
    return normal, normal[0] * a[0] + normal[1] * a[1]


def _meet(one: Line, other: Line) -> XY:
    ((ax, ay), a), ((bx, by), b) = one, other
    cross = ax * by - ay * bx
    return (a * by - b * ay) / cross, (ax * b - bx * a) / cross


def _at(line: Line, depth: float) -> Line:
    return line[0], line[1] + depth


def _ring(lines: Sequence[Line], depth: float, ring: Sequence[XY]) -> list[XY]:
    """The outer edge moved in by a depth.

    Raises:
        InputValueError: A side has no length left.
    """
    moved = [_meet(_at(lines[index - 1], depth), _at(line, depth)) for index, line in enumerate(lines)]
    for index, (a, b) in enumerate(zip(moved, moved[1:] + moved[:1], strict=True)):
        normal = lines[index][0]
        if (b[0] - a[0]) * normal[1] - (b[1] - a[1]) * normal[0] < _SAME:
            raise _too_short(ring, index)
    if not Polygon(moved).is_valid:
        raise InputValueError("the border meets itself; make it narrower or set it nearer to the edges")
    return moved


def _too_short(ring: Sequence[XY], index: int) -> InputValueError:
    length = math.dist(ring[index], ring[(index + 1) % len(ring)])
    return InputValueError(
        f"a side of {length:.0f} mm is too short for the border to run along it; make the border narrower or set "
        "it nearer to the edges"
    )


def _strip(lines: Sequence[Line], ring: Sequence[XY], index: int, border: Border) -> Polygon:
    """The part of the border along one side, half a joint or a joint short of the next strips."""
    line = lines[index]
    near, far = _at(line, border.distance), _at(line, border.distance + border.width)
    ends = []
    for corner, other in ((index, index - 1), ((index + 1) % len(lines), (index + 1) % len(lines))):
        if border.corners == "mitred":
            ends.append(_mitre(lines, corner, line, border))
        else:
            ends.append(_at(lines[other], _butt(lines, ring, index, other % len(lines), corner, border)))
    start, end = ends
    quad = [_meet(near, start), _meet(near, end), _meet(far, end), _meet(far, start)]
    shape = Polygon(quad)
    along = (line[0][1], -line[0][0])
    if any(
        (b[0] - a[0]) * along[0] + (b[1] - a[1]) * along[1] < _SAME
        for a, b in ((quad[0], quad[1]), (quad[3], quad[2]))
    ):
        raise _too_short(ring, index)
    return shape


def _mitre(lines: Sequence[Line], corner: int, own: Line, border: Border) -> Line:
    """The bisector at a corner, moved half a joint towards the strip's own side."""
    before, after = lines[corner - 1], lines[corner]
    # Points of the bisector lie as far from both sides; its normal is the difference of theirs.
    normal = (after[0][0] - before[0][0], after[0][1] - before[0][1])
    size = math.hypot(*normal)
    unit = (normal[0] / size, normal[1] / size)
    at = (after[1] - before[1]) / size
    # In a hollow corner a strip's part is what lies nearer to its own side, round a corner that juts in the rest.
    towards = -1.0 if (own == after) == _is_hollow(before, after) else 1.0
    return unit, at + towards * border.cell.joint / 2


def _is_hollow(before: Line, after: Line) -> bool:
    (ax, ay), (bx, by) = before[0], after[0]
    return ax * by - ay * bx > 0


def _butt(lines: Sequence[Line], ring: Sequence[XY], own: int, other: int, corner: int, border: Border) -> float:
    """Depth from the other side at which a strip ends at a corner."""
    joint, inner = border.cell.joint, border.distance + border.width
    hollow = _is_hollow(lines[corner - 1], lines[corner])
    if _runs_through(lines, ring, own, other):
        return border.distance if hollow else inner
    return inner + joint if hollow else border.distance - joint


def _runs_through(lines: Sequence[Line], ring: Sequence[XY], own: int, other: int) -> bool:
    """Whether a strip runs past the next one: the longer does, of two alike the more level."""
    lengths = [math.dist(ring[index], ring[(index + 1) % len(ring)]) for index in (own, other)]
    if abs(lengths[0] - lengths[1]) > _ALIKE_MM:
        return lengths[0] > lengths[1]
    level = [abs(lines[index][0][1]) for index in (own, other)]
    return level[0] > level[1] + _SAME or (abs(level[0] - level[1]) <= _SAME and own < other)


def _laid(shape: Polygon, part: Polygon | MultiPolygon, line: Line, border: Border) -> Laying:
    """One strip's tile, alike from both of its ends: a tile in the middle or a joint, whichever cuts wider."""
    (nx, ny), _ = line
    ux, uy = ny, -nx
    near, far, far_in, near_in = list(shape.exterior.coords)[:4]
    middle = [((a * ux + b * uy) + (c * ux + d * uy)) / 2 for (a, b), (c, d) in ((near, far), (near_in, far_in))]
    length = (math.dist(near, far) + math.dist(near_in, far_in)) / 2
    step, joint = border.cell.step_a[0], border.cell.joint
    width = step - joint
    at = sum(middle) / 2
    ways = [(at - width / 2, (length - width) / 2 - joint), (at + joint / 2, (length - joint) / 2)]
    start = max(ways, key=lambda way: (round(_end_cut(way[1], step, width), 3), way[0]))[0]
    deep = line[1] + border.distance
    pieces = tuple(
        CellPiece(tile=piece.tile, ring=tuple((x * ux + y * nx, x * uy + y * ny) for x, y in piece.ring))
        for piece in border.cell.pieces
    )
    (ax, ay), (bx, by) = border.cell.step_a, border.cell.step_b
    return Laying(
        cell=RepeatCell(
            step_a=(ax * ux + ay * nx, ax * uy + ay * ny),
            step_b=(bx * ux + by * nx, bx * uy + by * ny),
            pieces=pieces,
            joint=joint,
        ),
        shift=(start * ux + deep * nx, start * uy + deep * ny),
        area=part,
        angle=round(math.degrees(math.atan2(uy, ux))) % 360,
        role="border",
    )


def _end_cut(rest: float, step: float, width: float) -> float:
    """Width of the last piece where so much is left for it and the whole ones before it."""
    left = rest % step
    return width if left < _SAME or left > width else left


def _named(a: XY, b: XY, outer: tuple[XY, XY], edges: Sequence[Edge]) -> Edge:
    """A side of the inside with name and weight of the surface's side that its own outer edge lies nearest to."""
    middle = LineString(outer).interpolate(0.5, normalized=True)
    normal = _line(*outer)[0]
    alongside = [
        edge for edge in edges if (turn := _line(edge.a, edge.b)[0])[0] * normal[0] + turn[1] * normal[1] > 0.99
    ]
    nearest = min(alongside, key=lambda edge: LineString([edge.a, edge.b]).distance(middle), default=None)
    return Edge(a=a, b=b) if nearest is None else replace(nearest, a=a, b=b)
