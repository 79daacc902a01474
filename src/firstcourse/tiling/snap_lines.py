"""Lines to snap before the first tile is set, each with what to measure at both of its ends.

A floor gets two lines square to each other on joints near its middle; a wall a level and a plumb one. No two walls
of a room stand parallel, so both ends of every line are measured, each along the edge that it meets there.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import shapely
from shapely import LineString, MultiPolygon, Polygon

from firstcourse.geometry.inset import Grid, inset
from firstcourse.geometry.polygon import Point, from_shapely, sides
from firstcourse.plan import OpeningKind, SideKind, SnapLine, Surface, SurfaceKind
from firstcourse.tiling.bands import Laying
from firstcourse.tiling.edges import extent
from firstcourse.tiling.lay import lay
from firstcourse.tiling.lines import Lines, joint_lines
from firstcourse.tiling.model import XY, LaidTile, RepeatCell
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, format_length, ticks_from_mm

_TICK_GRID = Grid(origin=(0, 0), graduation=1)
_STANDING = frozenset({OpeningKind.TUB, OpeningKind.TRAY, OpeningKind.CABINET, OpeningKind.COLUMN})
# Lines nearer to the middle than this many of their kind are tried for a crossing that lies on the floor.
_TRIED = 15
_SQUARE = 1e-6
_SAME_MM = 0.05
# An edge that rises this many times as far as it runs is one to measure from sideways, however it leans.
_UPRIGHT = 5
# A crossing this near an edge leaves no room to stand a tile on either side of it [mm].
_CLEAR_MM = 20.0
# What 3-4-5 is counted in: round on the tape, the longest that fits is used.
_UNITS = {
    Tape.INCH: tuple(inches * TICKS_PER_INCH for inches in (36, 24, 12, 9, 6, 4, 3, 2, 1)),
    Tape.MM: tuple(mm * TICKS_PER_MM for mm in (1000, 600, 400, 300, 200, 150, 100, 50, 25)),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Edge:
    """A stretch of what can be measured from: a wall's face, or what stands on the floor [mm]."""

    a: XY
    b: XY
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """A line across the ground, its left or lower end first; the normal points left of it or up [mm]."""

    a: XY
    b: XY
    normal: XY

    @property
    def ticks(self) -> tuple[Point, Point]:
        return _ticks(self.a), _ticks(self.b)


def snap_lines(
    surface: Surface,
    area: Polygon | MultiPolygon,
    cell: RepeatCell,
    shift: XY,
    *,
    before: Sequence[int],
    tape: Tape,
) -> tuple[SnapLine, ...]:
    """The lines to snap for one pattern.

    On walls whose tiles lie level in courses: the lower edge of the first whole course, and an upright edge near
    the middle. Elsewhere two lines square to each other along the own axes of the pattern: in the middle of joints
    where it has any that way, else through the lowest points of tiles.

    Args:
        surface: Its outline, sides and openings.
        area: Where the pattern goes [mm].
        cell: The repeat.
        shift: Where its origin lies [mm].
        before: Along each side, thickness of what stands before it when the line is snapped [ticks].
        tape: Tape of the job.

    Returns:
        Two lines; none where the area is too small for a crossing.
    """
    ground = _Ground(surface, before, tape)
    level = all(
        abs(a[0] - b[0]) < _SAME_MM or abs(a[1] - b[1]) < _SAME_MM
        for piece in cell.pieces
        for a, b in zip(piece.ring, (*piece.ring[1:], piece.ring[0]), strict=True)
    )
    if surface.kind is SurfaceKind.WALL and level and any(lines.straight for lines in joint_lines(cell, shift)):
        return _on_wall(ground, area, cell, shift)
    return _on_floor(ground, area, cell, shift)


def snapped_area(layings: Sequence[Laying]) -> int | None:
    """Which area the lines to snap are taken from: the lowest of the field that is as high as a whole course.

    Args:
        layings: All areas of a surface; bands and borders give no lines.

    Returns:
        Its index; where none is so high that of the largest, and None where there is no field.
    """
    fields = [index for index, laying in enumerate(layings) if laying.role == "field"]
    for index in fields:
        low, high = layings[index].area.bounds[1::2]
        if high - low >= max(extent(piece.ring, 1) for piece in layings[index].cell.pieces):
            return index
    return max(fields, key=lambda index: round(layings[index].area.area, 3), default=None)


class _Ground:
    """What the lines run over and end at."""

    def __init__(self, surface: Surface, before: Sequence[int], tape: Tape) -> None:
        self.surface, self.tape = surface, tape
        self.sides = tuple(
            (_mm(a), _mm(b), depth / TICKS_PER_MM, side)
            for (a, b), depth, side in zip(sides(surface.outline), before, surface.sides, strict=True)
        )
        self.standing = tuple(
            (Polygon([_mm(point) for point in opening.outline]), opening.id)
            for opening in surface.openings
            if opening.kind in _STANDING and opening.outline is not None
        )
        shape = inset(surface.outline, tuple(before), _TICK_GRID)
        for opening in surface.openings:
            if opening.kind in _STANDING and opening.outline is not None:
                shape = shape.difference(Polygon(opening.outline))
        self.parts = tuple(
            Polygon([_mm(p) for p in outline], [[_mm(p) for p in hole] for hole in holes])
            for outline, holes in from_shapely(shape)
        )
        self.shape = shapely.union_all(self.parts)
        self.edges = tuple(self._edges())

    def across(self, line: LineString, through: XY) -> _Found | None:
        """The stretch of a line that runs through a point, from edge to edge."""
        here = shapely.Point(through)
        parts = [part for part in shapely.get_parts(line.intersection(self.shape)) if part.length > 0]
        part = next((part for part in parts if part.distance(here) < _SAME_MM), None)
        if part is None:
            return None
        a, b = part.coords[0], part.coords[-1]
        if (round(b[0], 3), round(b[1], 3)) < (round(a[0], 3), round(a[1], 3)):
            a, b = b, a
        length = math.dist(a, b)
        return _Found(a=(a[0], a[1]), b=(b[0], b[1]), normal=(-(b[1] - a[1]) / length, (b[0] - a[0]) / length))

    def mark(self, at: XY, normal: XY) -> str:
        """Where a line's end is marked along the edge that it meets, always from the same side of the line."""
        edge = self.edge(at)
        corner = max(edge.a, edge.b, key=lambda end: _dot(end, normal))
        where = "in" if edge.label.startswith("corner ") else "on"
        from_ = self._corner(edge, corner)
        return f"{where} {self.face(edge.label)} {self.length(math.dist(corner, at))} from {from_}"

    def edge(self, at: XY) -> _Edge:
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
        return format_length(ticks_from_mm(length_mm), self.tape)

    def _corner(self, edge: _Edge, corner: XY) -> str:
        other = next(
            (
                one.label
                for one in self.edges
                if one is not edge and min(math.dist(one.a, corner), math.dist(one.b, corner)) < _SAME_MM
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

    def _edges(self) -> Iterator[_Edge]:
        for part in self.parts:
            for ring in (part.exterior, *part.interiors):
                points = [(x, y) for x, y in ring.coords]
                for a, b in pairwise(points):
                    yield _Edge(a=a, b=b, label=self._label(a, b))

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


def _on_floor(ground: _Ground, area: Polygon | MultiPolygon, cell: RepeatCell, shift: XY) -> tuple[SnapLine, ...]:
    first, second = _axes(cell, shift)
    found = _crossing(ground, area, first, second)
    if found is None:
        return ()
    crossing, one, other = found
    words = [
        f"{_way(line.normal)}: mark {ground.mark(line.a, line.normal)}, and {ground.mark(line.b, line.normal)}"
        for line in (one, other)
    ]
    words[1] += f". {_where(ground, crossing, one)}. {_square_check(ground, crossing, one, other)}"
    return SnapLine(line=one.ticks, words=f"{words[0]}."), SnapLine(line=other.ticks, words=f"{words[1]}.")


def _axes(cell: RepeatCell, shift: XY) -> tuple[tuple[Lines, ...], tuple[Lines, ...]]:
    """Joints one way, and joints or rows of points square to them."""
    # A herringbone whose pieces are no even multiple of each other has joints at no steady step, or at one so fine
    # that hardly a tile stands on each line: its stairs have a step to snap by.
    narrowest = min(_narrowest(piece.ring) for piece in cell.pieces)
    found = tuple(one for one in joint_lines(cell, shift) if one.straight or one.step >= narrowest / 2)
    if not found:
        found = joint_lines(_boxed(cell, _across(cell.step_a)), shift)
    families = sorted(found, key=lambda one: (not one.straight, min(abs(at) for at in one.normal) > _SQUARE))
    first = tuple(one for one in families if one.normal == families[0].normal)
    normal = families[0].normal
    second = tuple(one for one in families if abs(_dot(one.normal, normal)) < _SQUARE)
    if not second:
        # Hexagons have no joint square to another: rows of lowest points take its place.
        across = joint_lines(_boxed(cell, normal), shift)
        second = tuple(one for one in across if abs(_dot(one.normal, normal)) < _SQUARE)
    if not second:
        # Rows shifted by no even part of a tile: the edges of every tile in the row that the start lies in.
        along = (normal[1], -normal[0])
        step = max(abs(_dot(step, along)) for step in (cell.step_a, cell.step_b))
        second = (Lines(normal=along, at=_dot(shift, along) - cell.joint / 2, step=step),)
    best = tuple(tuple(one for one in way if one.straight == way[0].straight) for way in (first, second) if way)
    # The line up the room comes first, as it is seen from the door.
    return (best[0], best[1]) if abs(best[0][0].normal[0]) > abs(best[1][0].normal[0]) else (best[1], best[0])


def _narrowest(ring: Sequence[XY]) -> float:
    """The lesser of how far a piece reaches along its first side and square to it [mm]."""
    (ax, ay), (bx, by) = ring[0], ring[1]
    length = math.dist((ax, ay), (bx, by))
    normal = (-(by - ay) / length, (bx - ax) / length)
    reaches = []
    for way in (normal, (normal[1], -normal[0])):
        offsets = [_dot(point, way) for point in ring]
        reaches.append(max(offsets) - min(offsets))
    return min(reaches)


def _across(step: XY) -> XY:
    """Unit vector square to a step, pointing up."""
    length = math.copysign(math.hypot(*step), step[0])
    return -step[1] / length, step[0] / length


def _boxed(cell: RepeatCell, normal: XY) -> RepeatCell:
    """The repeat with each piece as wide as it reaches along a direction and square to it."""
    boxes = tuple(replace(piece, ring=_box(piece.ring, normal)) for piece in cell.pieces)
    return replace(cell, pieces=boxes, joint=0.0)


def _box(ring: Sequence[XY], normal: XY) -> tuple[XY, ...]:
    along = (normal[1], -normal[0])
    us, vs = [_dot(point, along) for point in ring], [_dot(point, normal) for point in ring]
    corners = ((min(us), min(vs)), (max(us), min(vs)), (max(us), max(vs)), (min(us), max(vs)))
    return tuple((along[0] * u + normal[0] * v, along[1] * u + normal[1] * v) for u, v in corners)


def _crossing(
    ground: _Ground, area: Polygon | MultiPolygon, first: Sequence[Lines], second: Sequence[Lines]
) -> tuple[XY, _Found, _Found] | None:
    """The crossing of joints nearest to the middle of the largest part of the area, and the lines through it."""
    parts = [part for part in shapely.get_parts(area) if isinstance(part, Polygon)]
    part = max(parts, key=lambda one: round(one.area, 3))
    inner = part.buffer(-_CLEAR_MM)
    middle = (part.centroid.x, part.centroid.y)
    options = []
    for one, at in _near(first, middle):
        for other, beside in _near(second, middle):
            cross = one.normal[0] * other.normal[1] - one.normal[1] * other.normal[0]
            point = (
                (at * other.normal[1] - beside * one.normal[1]) / cross,
                (one.normal[0] * beside - other.normal[0] * at) / cross,
            )
            options.append((round(math.dist(point, middle), 3), point, one, at, other, beside))
    options.sort(key=lambda option: option[:2])
    for _, point, one, at, other, beside in options:
        if not inner.contains(shapely.Point(point)):
            continue
        lines = [ground.across(family.line(place, area.buffer(1000)), point)
                 for family, place in ((one, at), (other, beside))]  # fmt: skip
        if lines[0] is not None and lines[1] is not None:
            return point, lines[0], lines[1]
    return None


def _near(families: Sequence[Lines], middle: XY) -> list[tuple[Lines, float]]:
    found = []
    for family in families:
        nearest = family.nearest(_dot(middle, family.normal))
        found += [(family, nearest + k * family.step) for k in range(-_TRIED, _TRIED + 1)]
    found.sort(key=lambda item: (round(abs(item[1] - _dot(middle, item[0].normal)), 3), item[1]))
    return found[: 2 * _TRIED]


def _on_wall(ground: _Ground, area: Polygon | MultiPolygon, cell: RepeatCell, shift: XY) -> tuple[SnapLine, ...]:
    laid = lay(cell, shift, area)
    if not laid:
        return ()
    lowest = _first_course(laid)
    low = min(y for _, y in lowest[0].laid)
    left, lower, right, upper = ground.shape.bounds
    middle = (left + right) / 2
    edge = min(
        (x for tile in lowest for x in (min(p[0] for p in tile.laid), max(p[0] for p in tile.laid))),
        key=lambda x: (round(abs(x - middle), 3), x),
    )
    level = ground.shape.intersection(LineString([(left - 1, low), (right + 1, low)]))
    plumb = ground.shape.intersection(LineString([(edge, lower - 1), (edge, upper + 1)]))
    if level.is_empty or plumb.is_empty:
        return ()
    (x0, _, x1, _), (_, y0, _, y1) = level.bounds, plumb.bounds
    ends = [f"at {ground.edge((x, low)).label.removeprefix('corner ')} {_above(ground, x, low)}" for x in (x0, x1)]
    return (
        SnapLine(
            line=(_ticks((x0, low)), _ticks((x1, low))),
            words=f"level, lower edge of the first whole course: {ends[0]}, {ends[1]}. Trust the level: "
            "if the marks do not agree with it, start from the higher foot.",
        ),
        SnapLine(
            line=(_ticks((edge, y0)), _ticks((edge, y1))),
            words=f"plumb, edge of a tile near the middle: {_beside(ground, edge, y0)} at the foot, "
            f"{_beside(ground, edge, y1)} at the top.",
        ),
    )


def _first_course(tiles: Sequence[LaidTile]) -> list[LaidTile]:
    """The lowest course of which no tile is cut in its height.

    Where niches, benches or windows cut into every course it is the lowest with one such tile, and the lowest at
    all where no tile is whole in its height.
    """
    rows: dict[float, list[LaidTile]] = {}
    for tile in tiles:
        rows.setdefault(round(min(y for _, y in tile.laid), 2), []).append(tile)
    in_order = [row for _, row in sorted(rows.items())]
    for whole in (all, any):
        for row in in_order:
            if whole(
                abs(tile.shape.bounds[1] - min(y for _, y in tile.laid)) < _SAME_MM
                and abs(tile.shape.bounds[3] - max(y for _, y in tile.laid)) < _SAME_MM
                for tile in row
            ):
                return row
    return in_order[0]


def _above(ground: _Ground, x: float, height: float) -> str:
    # A hair inside, since the wall's end itself may lean.
    left, lower, right, upper = ground.shape.bounds
    inside = min(max(x, left + _SAME_MM), right - _SAME_MM)
    column = ground.shape.intersection(LineString([(inside, lower - 1), (inside, upper + 1)]))
    foot = (inside, column.bounds[1])
    return f"{ground.length(height - foot[1])} above {ground.face(ground.edge(foot).label)}"


def _beside(ground: _Ground, at: float, height: float) -> str:
    """From the left end of the wall; under a sloping ceiling from the end that still stands at that height."""
    left, lower, right, upper = ground.shape.bounds
    inside = min(max(height, lower + _SAME_MM), upper - _SAME_MM)
    row = ground.shape.intersection(LineString([(left - 1, inside), (right + 1, inside)]))
    ends = [(x, ground.edge((x, inside))) for x in (row.bounds[0], row.bounds[2])]
    upright = [(x, edge) for x, edge in ends if abs(edge.a[1] - edge.b[1]) > _UPRIGHT * abs(edge.a[0] - edge.b[0])]
    if not upright:
        return "plumb from the other end"
    x, edge = upright[0]
    return f"{ground.length(abs(at - x))} from {ground.face(edge.label)}"


def _where(ground: _Ground, crossing: XY, line: _Found) -> str:
    label = ground.face(ground.edge(line.a).label)
    return f"It crosses the first line {ground.length(math.dist(crossing, line.a))} from {label}"


def _square_check(ground: _Ground, crossing: XY, one: _Found, other: _Found) -> str:
    """3, 4 and 5 of the longest round length that fits on the two lines."""
    arms = [
        max(((math.dist(crossing, end), end) for end in (line.a, line.b)), key=lambda arm: round(arm[0], 3))
        for line in (one, other)
    ]
    lengths = [ticks_from_mm(arm[0]) for arm in arms]
    legs = (3, 4) if lengths[0] <= lengths[1] else (4, 3)
    unit = next(
        (
            unit
            for unit in _UNITS[ground.tape]
            if all(n * unit <= far for n, far in zip(legs, lengths, strict=True))
        ),
        0,
    )
    if not unit:
        return "Check that they are square with a framing square"
    marks = []
    for leg, name, (_, end) in zip(legs, ("first", "second"), arms, strict=True):
        label = ground.face(ground.edge(end).label)
        marks.append(f"{format_length(leg * unit, ground.tape)} along the {name} towards {label}")
    return (
        f"Square check (3-4-5): from the crossing {marks[0]} and {marks[1]}; "
        f"the two marks lie {format_length(5 * unit, ground.tape)} apart"
    )


def _board_edge(along: XY) -> str:
    """Name of a side where boards stop, from its direction round the ground, which lies on its left."""
    names = ("lower", "upper") if abs(along[0]) > abs(along[1]) else ("right", "left")
    return f"the boards' {names[(along[0] if abs(along[0]) > abs(along[1]) else along[1]) < 0]} edge"


def _way(normal: XY) -> str:
    if abs(normal[1]) < _SQUARE:
        return "up the drawing"
    return "across the drawing" if abs(normal[0]) < _SQUARE else "slanting"


def _dot(a: XY, b: XY) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _mm(point: Point) -> XY:
    return point[0] / TICKS_PER_MM, point[1] / TICKS_PER_MM


def _ticks(point: XY) -> Point:
    return ticks_from_mm(point[0]), ticks_from_mm(point[1])
