"""Lines to snap before the first tile is set, each with what to measure at both of its ends.

A floor gets two lines square to each other on joints near its middle; a wall a level and a plumb one. No two walls
of a room stand parallel, so both ends of every line are measured, each along the edge that it meets there.
"""

import math
from collections.abc import Sequence
from dataclasses import replace

import shapely
from shapely import LineString, MultiPolygon, Polygon

from firstcourse.plan import SnapLine, Surface, SurfaceKind
from firstcourse.tiling.bands import Laying
from firstcourse.tiling.edges import extent
from firstcourse.tiling.lay import lay
from firstcourse.tiling.lines import Lines, joint_lines
from firstcourse.tiling.model import XY, LaidTile, RepeatCell
from firstcourse.tiling.snap_ground import SAME_MM, Ground, GroundLine, along_of, in_ticks
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, format_length, ticks_from_mm

# Lines nearer to the middle than this many of their kind are tried for a crossing that lies on the floor.
_TRIED = 15
_SQUARE = 1e-6
# An edge that rises this many times as far as it runs is one to measure from sideways, however it leans.
_UPRIGHT = 5
# A crossing this near an edge leaves no room to stand a tile on either side of it [mm].
_CLEAR_MM = 20.0
# What 3-4-5 is counted in: round on the tape, the longest that fits is used.
_UNITS = {
    Tape.INCH: tuple(inches * TICKS_PER_INCH for inches in (36, 24, 12, 9, 6, 4, 3, 2, 1)),
    Tape.MM: tuple(mm * TICKS_PER_MM for mm in (1000, 600, 400, 300, 200, 150, 100, 50, 25)),
}


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
    ground = Ground(surface, before, tape)
    level = all(
        abs(a[0] - b[0]) < SAME_MM or abs(a[1] - b[1]) < SAME_MM
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


def _on_floor(ground: Ground, area: Polygon | MultiPolygon, cell: RepeatCell, shift: XY) -> tuple[SnapLine, ...]:
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
    second = tuple(one for one in families if abs(along_of(one.normal, normal)) < _SQUARE)
    if not second:
        # Hexagons have no joint square to another: rows of lowest points take its place.
        across = joint_lines(_boxed(cell, normal), shift)
        second = tuple(one for one in across if abs(along_of(one.normal, normal)) < _SQUARE)
    if not second:
        # Rows shifted by no even part of a tile: the edges of every tile in the row that the start lies in.
        along = (normal[1], -normal[0])
        step = max(abs(along_of(step, along)) for step in (cell.step_a, cell.step_b))
        second = (Lines(normal=along, at=along_of(shift, along) - cell.joint / 2, step=step),)
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
        offsets = [along_of(point, way) for point in ring]
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
    us, vs = [along_of(point, along) for point in ring], [along_of(point, normal) for point in ring]
    corners = ((min(us), min(vs)), (max(us), min(vs)), (max(us), max(vs)), (min(us), max(vs)))
    return tuple((along[0] * u + normal[0] * v, along[1] * u + normal[1] * v) for u, v in corners)


def _crossing(
    ground: Ground, area: Polygon | MultiPolygon, first: Sequence[Lines], second: Sequence[Lines]
) -> tuple[XY, GroundLine, GroundLine] | None:
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
        nearest = family.nearest(along_of(middle, family.normal))
        found += [(family, nearest + k * family.step) for k in range(-_TRIED, _TRIED + 1)]
    found.sort(key=lambda item: (round(abs(item[1] - along_of(middle, item[0].normal)), 3), item[1]))
    return found[: 2 * _TRIED]


def _on_wall(ground: Ground, area: Polygon | MultiPolygon, cell: RepeatCell, shift: XY) -> tuple[SnapLine, ...]:
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
            line=(in_ticks((x0, low)), in_ticks((x1, low))),
            words=f"level, lower edge of the first whole course: {ends[0]}, {ends[1]}. Trust the level: "
            "if the marks do not agree with it, start from the higher foot.",
        ),
        SnapLine(
            line=(in_ticks((edge, y0)), in_ticks((edge, y1))),
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
                abs(tile.shape.bounds[1] - min(y for _, y in tile.laid)) < SAME_MM
                and abs(tile.shape.bounds[3] - max(y for _, y in tile.laid)) < SAME_MM
                for tile in row
            ):
                return row
    return in_order[0]


def _above(ground: Ground, x: float, height: float) -> str:
    # A hair inside, since the wall's end itself may lean.
    left, lower, right, upper = ground.shape.bounds
    inside = min(max(x, left + SAME_MM), right - SAME_MM)
    column = ground.shape.intersection(LineString([(inside, lower - 1), (inside, upper + 1)]))
    foot = (inside, column.bounds[1])
    return f"{ground.length(height - foot[1])} above {ground.face(ground.edge(foot).label)}"


def _beside(ground: Ground, at: float, height: float) -> str:
    """From the left end of the wall; under a sloping ceiling from the end that still stands at that height."""
    left, lower, right, upper = ground.shape.bounds
    inside = min(max(height, lower + SAME_MM), upper - SAME_MM)
    row = ground.shape.intersection(LineString([(left - 1, inside), (right + 1, inside)]))
    ends = [(x, ground.edge((x, inside))) for x in (row.bounds[0], row.bounds[2])]
    upright = [(x, edge) for x, edge in ends if abs(edge.a[1] - edge.b[1]) > _UPRIGHT * abs(edge.a[0] - edge.b[0])]
    if not upright:
        return "plumb from the other end"
    x, edge = upright[0]
    return f"{ground.length(abs(at - x))} from {ground.face(edge.label)}"


def _where(ground: Ground, crossing: XY, line: GroundLine) -> str:
    label = ground.face(ground.edge(line.a).label)
    return f"It crosses the first line {ground.length(math.dist(crossing, line.a))} from {label}"


def _square_check(ground: Ground, crossing: XY, one: GroundLine, other: GroundLine) -> str:
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


def _way(normal: XY) -> str:
    if abs(normal[1]) < _SQUARE:
        return "up the drawing"
    return "across the drawing" if abs(normal[0]) < _SQUARE else "slanting"
