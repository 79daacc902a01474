"""Lines to snap: each runs along drawn tile, ends where it can, and is found from what can be touched that day."""

import math
from collections.abc import Iterator, Sequence

import shapely
from shapely import LineString

from firstcourse.geometry import bounds
from firstcourse.verify.mark_faces import NEAR, XY, Faces
from firstcourse.verify.mark_fields import Line, Mark
from firstcourse.verify.mark_rows import rows
from firstcourse.verify.poles import check_poles
from firstcourse.verify.start_marks import check_starts
from firstcourse.verify.structure import Document, Surface, Tile
from firstcourse.verify.verdict import Objection

_LINES = ("first_course", "plumb", "snap", "start")
_ROUNDED = 4
"""What rounding both ends of a length to ticks can change it by [ticks]."""
_ROOM_FOR = 2.0
"""A field is wide enough for lines where a circle so many tiles across lies within it."""


def check_marks(plan: Document) -> Iterator[Objection]:
    """Object to every mark that does not follow from the drawn tiles and outlines, and to marks left out."""
    for surface in plan.surfaces:
        if not surface.marks and not surface.tiles:
            continue
        faces = Faces(surface, plan)
        for found in (*_lines(surface, faces), *_squares(surface, plan), *_left_out(surface, faces, plan)):
            yield Objection("VER-711", surface.id, found)
    yield from check_poles(plan)


def lines_of(surface: Surface) -> dict[tuple[str, Line, str], list[Mark]]:
    """The lines of a surface with their measurements: by kind, line and what they stand for."""
    found: dict[tuple[str, Line, str], list[Mark]] = {}
    for mark in surface.marks:
        if mark.kind in _LINES:
            found.setdefault((mark.kind, mark.line, mark.to), []).append(mark)
    return found


def _lines(surface: Surface, faces: Faces) -> Iterator[str]:
    found = lines_of(surface)
    starts = {line: marks for (kind, line, _), marks in found.items() if kind == "start"}
    yield from check_starts(surface, faces, starts)
    kinds = [kind for kind, _, _ in found if kind != "start"]
    if (kinds and starts) or kinds not in ([], ["first_course"], ["first_course", "plumb"], ["snap", "snap"]):
        yield f"has lines to snap that do not go together: {', '.join(kinds)}"
    for (kind, line, to), marks in found.items():
        if kind != "start" and not _along_tile(surface, kind, line, to):
            yield f"has a line to snap that does not run along {to}"
        if not all(faces.bounds_ground(end) for end in line) or not faces.clear(*line):
            yield "has a line to snap that ends elsewhere than at an edge"
        for mark in marks:
            yield from _measured(mark, faces)
        yield from _both_ends(kind, line, marks, faces)
    if kinds == ["snap", "snap"]:
        one, other = (_way(line) for _, line, _ in found)
        if abs(one[0] * other[0] + one[1] * other[1]) > 1e-4:
            yield "has two lines to snap that are not square to each other"


def _along_tile(surface: Surface, kind: str, line: Line, to: str) -> bool:
    """Whether a line lies where what it stands for is drawn."""
    (a, b) = line
    if kind == "first_course":
        prefix, _, number = to.rpartition("/")
        courses = rows(surface.tiles, 1)
        known = prefix == f"{surface.id}/row" and number.isdigit() and 1 <= int(number) <= len(courses)
        return known and a[1] == b[1] and abs(courses[int(number) - 1].laid - a[1]) <= _ROUNDED
    name, _, part = to.rpartition("/")
    tile = next((tile for tile in surface.tiles if tile.id == name), None)
    if tile is None:
        return False
    ring = tile.laid or tile.outline
    if kind == "plumb":
        edge = {"left": bounds(ring)[0], "right": bounds(ring)[2]}.get(part)
        return edge is not None and a[0] == b[0] and abs(edge - a[0]) <= _ROUNDED
    way = _way(line)
    off = [(u - a[0]) * -way[1] + (v - a[1]) * way[0] for u, v in ring]
    nearest = min(abs(min(off)), abs(max(off)))
    outside = min(off) * max(off) >= 0 or nearest <= _ROUNDED
    half = surface.tiled[0].joint / 2 if surface.tiled else 0.0
    wanted = {"joint": half, "point": 0.0}.get(part)
    return wanted is not None and outside and abs(nearest - wanted) <= 2 * _ROUNDED


def _measured(mark: Mark, faces: Faces) -> Iterator[str]:
    """The tape lies between the thing that is named and the line, straight, over open ground."""
    assert mark.measure is not None
    start, end = mark.measure
    if abs(math.dist(start, end) - mark.distance) > _ROUNDED:
        yield f"has a mark whose length is not as it is measured, to {mark.to}"
    if LineString(mark.line).distance(shapely.Point(end)) > NEAR:
        yield f"has a mark that is not measured to its line, to {mark.to}"
    level = mark.line[0][1] == mark.line[1][1] and mark.kind in ("first_course", "snap", "start")
    floor = faces.floor(mark.start, start[0]) if level and not faces.surface.built_later else None
    stands = floor is not None and abs(start[1] - floor) <= NEAR
    if not stands and not faces.holds(mark.start, start):
        yield f"has a mark measured from {mark.start}, which cannot be touched there"
    if not stands and not faces.clear(start, end):
        yield f"has a mark measured through what stands there, to {mark.to}"
    way, tape = _way(mark.line), (end[0] - start[0], end[1] - start[1])
    leans = abs(tape[0] * way[0] + tape[1] * way[1]) > NEAR
    along = mark.at and faces.holds(mark.at, start) and faces.holds(mark.at, end)
    if leans and not along:
        yield f"has a mark measured askew, to {mark.to}"
    near = min(mark.line, key=lambda point: math.dist(point, end))
    if mark.at and not faces.edge_of(mark.at, near):
        yield f"has a mark measured at {mark.at}, where its line does not end"


def _both_ends(kind: str, line: Line, marks: Sequence[Mark], faces: Faces) -> Iterator[str]:
    """A line is found near both of its ends, but where nothing can be touched there."""
    halves = [0, 0]
    for mark in marks:
        assert mark.measure is not None
        ends = [math.dist(end, mark.measure[1]) for end in line]
        halves[ends[1] < ends[0]] += 1
    way, length = _way(line), math.dist(*line)
    askew = 0.5 if kind == "snap" else math.sqrt(0.5)
    for index, (end, far) in enumerate((line, line[::-1])):
        share = (3200 if kind == "snap" else 320) / length
        spot = (end[0] + (far[0] - end[0]) * share, end[1] + (far[1] - end[1]) * share)
        if halves[index] > 1 or (not halves[index] and faces.reached(spot, (-way[1], way[0]), askew=askew)):
            yield "has a line to snap that is not measured once near each of its ends"


def _squares(surface: Surface, plan: Document) -> Iterator[str]:
    """Three, four and five of a round length, from the crossing of both lines along them."""
    lines = [line for kind, line, _ in lines_of(surface) if kind == "snap"]
    marks = [mark for mark in surface.marks if mark.kind == "square"]
    if len(lines) != 2:
        if marks:
            yield "has a check for square without two lines"
        return
    crossing = _crossing(*lines)
    if not marks:
        arms = [max(math.dist(crossing, end) for end in line) for line in lines]
        if min(arms) > 8 * plan.tape.graduation * 16:
            yield "has two lines and no check that they are square"
        return
    if len(marks) != 3:
        yield "has a check for square that is not three lengths"
        return
    base, names = f"{surface.id}/line", ("first", "second")
    lengths = sorted(mark.distance for mark in marks)
    unit = lengths[0] // 3
    if lengths != [3 * unit, 4 * unit, 5 * unit] or unit <= 0 or unit % plan.tape.graduation:
        yield "has a check for square that is not 3, 4 and 5 of a round length"
    ends: list[XY] = []
    for mark, line, name in zip(marks, lines, names, strict=False):
        assert mark.measure is not None
        start, end = mark.measure
        ends.append(end)
        if (
            (mark.start, mark.to, mark.line) != (f"{base}/crossing", f"{base}/{name}", line)
            or math.dist(start, crossing) > NEAR
            or LineString(line).distance(shapely.Point(end)) > NEAR
            or abs(math.dist(start, end) - mark.distance) > NEAR
        ):
            yield f"has a check for square that does not lie on its {name} line"
    last = marks[2]
    if (last.start, last.to) != (f"{base}/first", f"{base}/second") or any(
        math.dist(point, end) > NEAR
        for drawn in (last.line, last.measure or ())
        for point, end in zip(drawn, ends, strict=True)
    ):
        yield "has a check for square whose long side does not join its ends"


def _left_out(surface: Surface, faces: Faces, plan: Document) -> Iterator[str]:
    """A tiled surface has two lines at right angles; one without them is spoken of, if nothing can be touched."""
    lines = [line for _, line, _ in lines_of(surface)]
    if not surface.tiles or any(_is_square(one, other) for one in lines for other in lines):
        return
    if not surface.built_later and surface.tiled and _could_have(surface, faces):
        yield "is tiled, and its lines to snap are left out"
    elif not plan.says(surface, code="TIL-134"):
        yield "is tiled, and neither has two lines at right angles nor is said why not"


def _could_have(surface: Surface, faces: Faces) -> bool:
    """Whether lines that cross in the middle of the field end at what can be measured from."""
    field = max(
        (part for area in surface.tiled if area.role == "field" for part in shapely.get_parts(area.shape)),
        key=lambda part: part.area,
        default=None,
    )
    largest = max((_across(tile) for tile in surface.tiles), default=0.0)
    if field is None or largest == 0.0:
        return False
    circle = shapely.maximum_inscribed_circle(field)
    spot = circle.coords[0]
    wide = circle.length > _ROOM_FOR * largest
    return wide and all(faces.reached(spot, way) for way in ((0.0, 1.0), (1.0, 0.0)))


def _is_square(one: Line, other: Line) -> bool:
    (a, b), (c, d) = _way(one), _way(other)
    return abs(a * c + b * d) <= 1e-3


def _across(tile: Tile) -> float:
    left, low, right, high = bounds(tile.laid or tile.outline)
    return math.hypot(right - left, high - low)


def _crossing(one: Line, other: Line) -> XY:
    (a, _), (c, _) = one, other
    d, e = _way(one), _way(other)
    turn = d[0] * e[1] - d[1] * e[0]
    if abs(turn) < 1e-9:
        return float(a[0]), float(a[1])
    share = ((c[0] - a[0]) * e[1] - (c[1] - a[1]) * e[0]) / turn
    return a[0] + d[0] * share, a[1] + d[1] * share


def _way(line: Line) -> XY:
    length = math.dist(*line) or 1.0
    return (line[1][0] - line[0][0]) / length, (line[1][1] - line[0][1]) / length
