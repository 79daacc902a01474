"""Lines to snap before the first tile is set, each with what to measure to find it.

A floor gets two lines square to each other on joints near its middle; a wall a level and a plumb one. No two walls
of a room stand parallel, so every line is found by a measurement near each of its ends.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import shapely
from shapely import LineString, MultiPolygon, Polygon

from firstcourse.plan import Mark, Surface, SurfaceKind, Tile
from firstcourse.tiles.bands import Laying
from firstcourse.tiles.edges import extent
from firstcourse.tiles.lines import Lines, joint_lines
from firstcourse.tiles.mark_ground import SAME_MM, GroundLine, MarkGround, Measured, along_of, in_ticks
from firstcourse.tiles.mark_site import Site
from firstcourse.tiles.measured_lines import beside, line_marks, risen
from firstcourse.tiles.model import XY, RepeatCell
from firstcourse.tiles.tile_rows import Row, rows_of
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, ticks_from_mm

# Lines nearer to the middle than this many of their kind are tried for a crossing that lies on the floor.
_TRIED = 15
_SQUARE = 1e-6
# A crossing this near an edge leaves no room to stand a tile on either side of it [mm].
_CLEAR_MM = 20.0
# Tiles are drawn to whole ticks [mm].
_ROUNDED_MM = 0.01
# A level line this much shorter than another stops at something that the other passes over.
_ALL_ALONG = 0.98
# What 3-4-5 is counted in: round on the tape, the longest that fits is used.
_UNITS = {
    Tape.INCH: tuple(inches * TICKS_PER_INCH for inches in (36, 24, 12, 9, 6, 4, 3, 2, 1)),
    Tape.MM: tuple(mm * TICKS_PER_MM for mm in (1000, 600, 400, 300, 200, 150, 100, 50, 25)),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Snapped:
    """What the lines of a surface are taken from.

    Attributes:
        area: Where the pattern goes [mm].
        cell: The repeat.
        shift: Where its origin lies [mm].
    """

    area: Polygon | MultiPolygon
    cell: RepeatCell
    shift: XY


def snap_lines(surface: Surface, snapped: Snapped, site: Site, tape: Tape) -> tuple[Mark, ...]:
    """The lines to snap on one surface.

    On walls whose tiles lie level in courses: the lower edge of the lowest whole course that runs all along, and
    an upright edge of a tile near the middle. Elsewhere two lines square to each other along the own axes of the
    pattern: in the middle of joints where it has any that way, else through the points of tiles; and how to check
    that they are square.

    Args:
        surface: With its tiles.
        snapped: The pattern they are of.
        site: What can be measured from.
        tape: Tape of the job.

    Returns:
        None where the area is too small for a crossing, or nothing there can be measured from.
    """
    ground = MarkGround(surface, site)
    level = all(
        abs(a[0] - b[0]) < SAME_MM or abs(a[1] - b[1]) < SAME_MM
        for piece in snapped.cell.pieces
        for a, b in zip(piece.ring, (*piece.ring[1:], piece.ring[0]), strict=True)
    )
    straight = any(lines.straight for lines in joint_lines(snapped.cell, snapped.shift))
    if surface.kind is SurfaceKind.WALL and level and straight:
        return tuple(_on_wall(ground, surface))
    return tuple(_on_floor(ground, surface, snapped, tape))


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


def _on_floor(ground: MarkGround, surface: Surface, snapped: Snapped, tape: Tape) -> Iterator[Mark]:
    found = _crossing(ground, surface, snapped, *_axes(snapped.cell, snapped.shift))
    if found is None or not _at_both_ends(found):
        # Slanting lines end where nothing can be touched: those along the drawing's axes, through points of tiles.
        found = _better(found, _crossing(ground, surface, snapped, *_level_axes(snapped.cell, snapped.shift)))
    if found is None:
        return
    crossing, one, other = found
    for line in (one, other):
        yield from line_marks("snap", line.line.ticks, line.measured, line.to)
    yield from _square_check(surface, crossing, (one, other), tape)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """A line with the tile that shows where it lies, and its measurements."""

    line: GroundLine
    to: str
    measured: tuple[Measured, ...]


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


def _level_axes(cell: RepeatCell, shift: XY) -> tuple[tuple[Lines, ...], tuple[Lines, ...]]:
    """Upright and level rows of the outermost points of tiles, where a pattern has them at even steps."""
    found = joint_lines(_boxed(cell, (0.0, 1.0)), shift)
    return (
        tuple(one for one in found if abs(one.normal[1]) < _SQUARE),
        tuple(one for one in found if abs(one.normal[0]) < _SQUARE),
    )


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


type _Crossing = tuple[XY, _Line, _Line]


def _at_both_ends(found: _Crossing) -> bool:
    return len(found[1].measured) == len(found[2].measured) == 2


def _better(one: _Crossing | None, other: _Crossing | None) -> _Crossing | None:
    """The second where it alone can be found at all ends of its lines, or where there is no first."""
    return other if other is not None and (one is None or _at_both_ends(other)) else one


def _crossing(
    ground: MarkGround, surface: Surface, snapped: Snapped, first: Sequence[Lines], second: Sequence[Lines]
) -> _Crossing | None:
    """The crossing of joints nearest to the middle of the largest part of the area, and the lines through it."""
    area = snapped.area
    parts = [part for part in shapely.get_parts(area) if isinstance(part, Polygon)]
    part = max(parts, key=lambda one: round(one.area, 3))
    inner = part.buffer(-_CLEAR_MM)
    middle = (part.centroid.x, part.centroid.y)
    options = []
    for one, at in _near(first, middle):
        for other, off in _near(second, middle):
            cross = one.normal[0] * other.normal[1] - one.normal[1] * other.normal[0]
            point = (
                (at * other.normal[1] - off * one.normal[1]) / cross,
                (one.normal[0] * off - other.normal[0] * at) / cross,
            )
            options.append((round(math.dist(point, middle), 3), point, one, at, other, off))
    options.sort(key=lambda option: option[:2])
    half, shown = snapped.cell.joint / 2, _rings(surface.tiles)
    known: dict[GroundLine, _Line | None] = {}
    found: _Crossing | None = None
    for _, point, one, at, other, off in options:
        if not inner.contains(shapely.Point(point)):
            continue
        lines = []
        for family, place in ((one, at), (other, off)):
            crossed = ground.across(family.line(place, area.buffer(1000)), point)
            if crossed is not None and crossed not in known:
                known[crossed] = _shown_by(ground, crossed, shown, half)
            lines.append(None if crossed is None else known[crossed])
        if lines[0] is None or lines[1] is None:
            continue
        crossing = (point, lines[0], lines[1])
        if _at_both_ends(crossing):
            return crossing
        # Lines that can be found at one end only are the last resort.
        found = found or crossing
    return found


def _rings(tiles: Sequence[Tile]) -> list[tuple[str, list[XY]]]:
    return [
        (tile.id, [(u / TICKS_PER_MM, v / TICKS_PER_MM) for u, v in tile.laid or tile.outline]) for tile in tiles
    ]


def _shown_by(
    ground: MarkGround, line: GroundLine, tiles: Sequence[tuple[str, list[XY]]], half: float
) -> _Line | None:
    """A line with the tile nearest to its middle that is drawn along it; None where none is, or none finds it."""
    at, way = along_of(line.a, line.normal), (line.normal[1], -line.normal[0])
    middle = (along_of(line.a, way) + along_of(line.b, way)) / 2
    found: list[tuple[bool, float, str]] = []
    for name, ring in tiles:
        offsets = [along_of(point, line.normal) - at for point in ring]
        low, high = min(offsets), max(offsets)
        beside = min(abs(low - half), abs(high + half)) < _ROUNDED_MM
        if beside or min(abs(low), abs(high)) < _ROUNDED_MM:
            along = [along_of(point, way) for point in ring]
            far = abs((min(along) + max(along)) / 2 - middle)
            found.append((not beside, round(far, 3), f"{name}/{'joint' if beside else 'point'}"))
    measured = _measured(ground, line) if found else ()
    return _Line(line=line, to=min(found)[2], measured=measured) if measured else None


def _measured(ground: MarkGround, line: GroundLine) -> tuple[Measured, ...]:
    """What finds a line; on a wall a level or plumb one is also found from floor and ceiling or from the sides."""
    found = ground.found_by(line)
    if len(found) == 2 or ground.surface.kind is not SurfaceKind.WALL:
        return found
    (a, b) = line.ticks
    if a[1] == b[1]:
        return max(found, risen(ground, line), key=len)
    return max(found, beside(ground, line), key=len) if a[0] == b[0] else found


def _near(families: Sequence[Lines], middle: XY) -> list[tuple[Lines, float]]:
    found = []
    for family in families:
        nearest = family.nearest(along_of(middle, family.normal))
        found += [(family, nearest + k * family.step) for k in range(-_TRIED, _TRIED + 1)]
    found.sort(key=lambda item: (round(abs(item[1] - along_of(middle, item[0].normal)), 3), item[1]))
    return found[: 2 * _TRIED]


def _on_wall(ground: MarkGround, surface: Surface) -> Iterator[Mark]:
    row = _first_course(ground, surface)
    if row is None:
        return
    level = _level(ground, row)
    if level is None:
        return
    heights = risen(ground, level)
    if not heights:
        # A plumb line begins at the first course.
        return
    yield from line_marks("first_course", level.ticks, heights, f"{surface.id}/row/{row.number}")
    left, lower, right, upper = ground.shape.bounds
    middle = (left + right) / 2
    edges = [
        (ticks / TICKS_PER_MM, f"{tile.id}/{side}")
        for tile in row.tiles
        for ticks, side in zip(_ends(tile), ("left", "right"), strict=True)
    ]
    for u, to in sorted(edges, key=lambda edge: (round(abs(edge[0] - middle), 3), edge)):
        line = ground.across(LineString([(u, lower - 1), (u, upper + 1)]), (u, level.a[1]))
        measured = () if line is None else beside(ground, line)
        if line is not None and measured:
            yield from line_marks("plumb", line.ticks, measured, to)
            return


def _ends(tile: Tile) -> tuple[int, int]:
    across = [u for u, _ in tile.laid or tile.outline]
    return min(across), max(across)


def _level(ground: MarkGround, row: Row) -> GroundLine | None:
    """The lower edge of a course, as far along the wall as it can be drawn in one."""
    v = row.laid / TICKS_PER_MM
    left, _, right, _ = ground.shape.bounds
    crossed = ground.shape.intersection(LineString([(left - 1, v), (right + 1, v)]))
    parts = [part for part in shapely.get_parts(crossed) if part.length > SAME_MM]
    if not parts:
        return None
    longest = max(parts, key=lambda part: round(part.length, 3))
    u0, _, u1, _ = longest.bounds
    return GroundLine(a=(u0, v), b=(u1, v), normal=(0.0, 1.0))


def _first_course(ground: MarkGround, surface: Surface) -> Row | None:
    """The lowest course that runs as far along the wall as any, and of which no tile is cut in its height.

    A course below the rim of a tub stops at the tub. Where niches, benches or windows cut into every course it is
    the lowest with one such tile, and the lowest at all where no tile is whole in its height.
    """
    rows = [row for row in rows_of(surface.tiles, 1) if _level(ground, row) is not None]
    spans = {row.number: _span(_level(ground, row)) for row in rows}
    most = max(spans.values(), default=0.0)
    along = [row for row in rows if spans[row.number] >= _ALL_ALONG * most]
    for whole in (all, any):
        for row in along:
            if whole(_whole_in_height(tile) for tile in row.tiles):
                return row
    return along[0] if along else None


def _span(line: GroundLine | None) -> float:
    return 0.0 if line is None else math.dist(line.a, line.b)


def _whole_in_height(tile: Tile) -> bool:
    laid, left = ([v for _, v in ring] for ring in (tile.laid or tile.outline, tile.outline))
    same = SAME_MM * TICKS_PER_MM
    return abs(min(laid) - min(left)) < same and abs(max(laid) - max(left)) < same


def _square_check(surface: Surface, crossing: XY, lines: tuple[_Line, _Line], tape: Tape) -> Iterator[Mark]:
    """3, 4 and 5 of the longest round length that fits on the two lines."""
    arms = [
        max(
            ((math.dist(crossing, end), end) for end in (one.line.a, one.line.b)),
            key=lambda arm: round(arm[0], 3),
        )
        for one in lines
    ]
    lengths = [ticks_from_mm(arm[0]) for arm in arms]
    legs = (3, 4) if lengths[0] <= lengths[1] else (4, 3)
    unit = next(
        (unit for unit in _UNITS[tape] if all(n * unit <= far for n, far in zip(legs, lengths, strict=True))),
        0,
    )
    if not unit:
        return
    names = (f"{surface.id}/line/first", f"{surface.id}/line/second")
    ends = []
    for leg, name, one, (far, end) in zip(legs, names, lines, arms, strict=True):
        share = leg * unit / TICKS_PER_MM / far
        spot = (crossing[0] + (end[0] - crossing[0]) * share, crossing[1] + (end[1] - crossing[1]) * share)
        ends.append(spot)
        yield Mark(
            kind="square", line=one.line.ticks, from_=f"{surface.id}/line/crossing", distance=leg * unit, to=name,
            measure=(in_ticks(crossing), in_ticks(spot)),
        )  # fmt: skip
    yield Mark(
        kind="square", line=(in_ticks(ends[0]), in_ticks(ends[1])), from_=names[0], distance=5 * unit, to=names[1],
        measure=(in_ticks(ends[0]), in_ticks(ends[1])),
    )  # fmt: skip
