"""Marks as the papers say them; what is said comes from the plan's values alone."""

import math
from collections.abc import Iterator, Sequence
from functools import reduce

from firstcourse.drawings import mosaics
from firstcourse.geometry import Point, bounds, sides
from firstcourse.plan import Mark, Plan, Segment, Side, SideKind, Surface, SurfaceKind, has_courses
from firstcourse.units import TICKS_PER_MM, Tape, format_length
from firstcourse.values import Measure, length
from firstcourse.words import Speaker

_COUNTED = 0.05
"""Rows are counted in spite of rounding by this share of a step."""
_TILED = {"back": 0, "sill": 1, "head": 1, "left": 2, "right": 2}
"""In what order the faces of a niche or window are tiled."""
_NEAR_END = 64
"""A tape held this near to a line's end is held at it [ticks]."""


def line_words(surface: Surface, speaker: Speaker) -> Iterator[str]:
    """Each line to snap with what is measured, one sentence a line, and the check for square."""
    lines: dict[Segment, list[Mark]] = {}
    for mark in surface.marks:
        if mark.kind in ("first_course", "plumb", "snap"):
            lines.setdefault(mark.line, []).append(mark)
    for number, (line, marks) in enumerate(lines.items()):
        found = reduce(
            lambda one, two: speaker.text("marks-both", one=one, two=two),
            (_measured(mark, surface, speaker) for mark in marks),
        )
        named = speaker.text("marks-named", _line(marks[0].kind, line, number))
        yield speaker.text("marks-line", line=named, found=found)
    square = [length(mark.distance) for mark in surface.marks if mark.kind == "square"]
    if len(square) == 3:
        yield speaker.text("marks-square", first=square[0], second=square[1], across=square[2])


def start_words(surface: Surface, speaker: Speaker) -> Iterator[tuple[str, str]]:
    """The first joint of a face each way: what is measured, and how far from which edge."""
    lines: dict[Segment, list[Mark]] = {}
    for mark in surface.marks:
        if mark.kind == "start":
            lines.setdefault(mark.line, []).append(mark)
    for line, marks in lines.items():
        assert marks[0].measure is not None
        start, end = marks[0].measure
        level = line[0][1] == line[1][1]
        way = ("up" if start[1] < end[1] else "down") if level else "across"
        lengths = list(dict.fromkeys(format_length(mark.distance, speaker.tape) for mark in marks))
        yield (
            speaker.text("marks-start", way=way, to=_first(surface, marks[0], speaker.tape)),
            speaker.text(
                "marks-start_found",
                several="no" if len(lengths) == 1 else "level" if level else "upright",
                lengths=reduce(lambda one, two: speaker.text("marks-lengths", one=one, two=two), lengths),
                **{"from": thing(marks[0].from_, surface, speaker)},
            ),
        )


def _first(surface: Surface, mark: Mark, tape: Tape) -> str:
    """What a start mark lies at: the first joint, points of slanting tile, or the edge of the only row."""
    name, _, part = mark.to.rpartition("/")
    side = ("left", "low", "right", "high").index(part)
    places = [bounds(tile.outline)[side] for tile in surface.tiles]
    tile = next(tile for tile in surface.tiles if tile.id == name)
    if abs(bounds(tile.outline)[side] - (max if side > 1 else min)(places)) < tape.graduation:
        return "row"
    axis = side % 2
    return "joint" if any(a[axis] == b[axis] for a, b in sides(tile.laid or tile.outline)) else "point"


def _line(kind: str, line: Segment, number: int) -> str:
    """Which of the lines it is."""
    if kind in ("first_course", "plumb"):
        return kind
    (a, b), (c, d) = line
    way = "up" if a == c else "across" if b == d else "slanting"
    return f"{'second' if number else 'first'}_{way}"


def _measured(mark: Mark, surface: Surface, speaker: Speaker) -> str:
    assert mark.measure is not None
    start, end = mark.measure
    given: dict[str, str | Measure] = {
        "length": length(mark.distance),
        "from": thing(mark.from_, surface, speaker),
    }
    if mark.kind == "first_course":
        given["spot"] = _spot(mark.line, end, ("left_end", "right_end"), speaker)
        return speaker.text("marks-found", "above" if start[1] < end[1] else "below", **given)
    if mark.kind == "plumb":
        given["spot"] = _spot(mark.line, end, ("foot", "top"), speaker)
        return speaker.text("marks-found", "plumb", **given)
    if not mark.at:
        return speaker.text("marks-found", "open", **given)
    given["at"] = thing(mark.at, surface, speaker)
    return speaker.text("marks-found", "along" if _ends(mark.line, end) else "beside", **given)


def _ends(line: Segment, at: Point) -> bool:
    return min(math.dist(at, end) for end in line) < _NEAR_END


def _spot(line: Segment, at: Point, names: tuple[str, str], speaker: Speaker) -> str:
    """Where along a line it is measured: at one of its ends, or so far from the nearer one."""
    near = [math.dist(at, end) for end in line]
    at_end = min(near) <= TICKS_PER_MM
    far = 0 if at_end else format_length(round(min(near)), speaker.tape)
    return speaker.text("marks-spot", end=names[near[1] < near[0]], far=far)


def thing(ref: str, surface: Surface, speaker: Speaker) -> str:
    """What a reference names, as one calls it who stands before the surface."""
    base, _, name = ref.rpartition("/")
    if base == f"{surface.id}/side" and name.isdigit():
        return _side(surface.sides[int(name)], surface, int(name), speaker)
    if base == f"{surface.id}/opening":
        return speaker.text("marks-thing", "opening", name=name)
    if ref == f"{surface.room}/floor":
        return speaker.text("marks-thing", "floor")
    if ref == f"{surface.room}/floor/shower":
        return speaker.text("marks-thing", "bed")
    if base == f"{surface.room}/bench":
        return speaker.text("marks-thing", "bench", name=name)
    return speaker.text("marks-thing", "part", name=speaker.within(ref))


def _face_edge(side: Side, surface: Surface) -> str:
    """An edge of a small face as it stands when its tile is set."""
    (base, _, own), (beside, _, other) = surface.id.rpartition("/"), side.meets.rpartition("/")
    if base == beside and _TILED.get(other, 0) < _TILED.get(own, 0):
        return "tile"
    if base == beside and other == "top":
        return "under_top"
    return "boards" if side.wall else "edge"


def _side(side: Side, surface: Surface, index: int, speaker: Speaker) -> str:
    if surface.part_of or surface.id.startswith(f"{surface.room}/bench/"):
        called = _face_edge(side, surface)
    elif side.kind is SideKind.FREE:
        a, b = list(sides(surface.outline))[index]
        across, up = b[0] - a[0], b[1] - a[1]
        names = ("lower", "upper") if abs(across) > abs(up) else ("right", "left")
        called = names[(across if abs(across) > abs(up) else up) < 0]
    elif side.kind is SideKind.FOOT or side.meets == f"{surface.room}/ceiling":
        called = "edge"
    elif side.corner:
        called = "corner_face"
    else:
        called = "wall_face" if side.wall else "edge"
    return speaker.text("marks-thing", called, name=speaker.edge(side))


def place_words(surface: Surface, mark: Mark, number: int, plan: Plan, speaker: Speaker) -> str:
    """What a mark of a pole stands for.

    Args:
        surface: Which it is on.
        mark: The mark.
        number: Which of the tiles along the pole begins there, counted from 1; of the last mark which one ends.
        plan: For tiles that come on sheets.
        speaker: In whose tongue.
    """
    base, _, name = mark.to.rpartition("/")
    upright = mark.line[0][1] == mark.line[1][1]
    if base.startswith(f"{surface.id}/line/"):
        return speaker.text("marks-place", _run_end(surface, name, upright))
    if base == f"{surface.id}/line":
        return speaker.text("marks-place", f"line_{name}")
    if base.startswith(f"{surface.id}/opening/"):
        return speaker.text("marks-place", f"opening_{name}", name=base.rpartition("/")[2])
    if mark.every > 1 and not _is_counted(surface, [mark], plan):
        step = "sheet"
    else:
        single = "row" if _is_counted(surface, [mark], plan) else "tile"
        step = "course" if upright and has_courses(surface) else single
    if name in ("high", "right"):
        if _is_counted(surface, [mark], plan):
            return speaker.text("marks-place", f"end_of_last_{step}")
        return speaker.text("marks-place", f"end_of_{step}", number=number)
    counted = speaker.text("marks-place", step, number=number)
    cut = [speaker.text("marks-place", "cut")] if mark.cut else []
    return ", ".join([counted, *([mark.stock] if mark.stock else []), *cut])


def _is_counted(surface: Surface, marks: Sequence[Mark], plan: Plan) -> bool:
    """Whether a pole shows every so-manyth row of tile that comes without sheets."""
    on_sheets = any(name in mosaics(plan) for area in surface.tiled for name in area.tiles)
    return not on_sheets and max(mark.every for mark in marks) > 1


def _step(surface: Surface, *, upright: bool) -> float:
    """How far the rows of a surface lie apart [mm]."""
    area = surface.tiled[0]
    return abs(area.step_b[1] if upright else area.step_a[0])


def row_number(surface: Surface, mark: Mark, first: int, shown: int, plan: Plan) -> int:
    """Which row a mark of a pole stands for, where not each is shown.

    Args:
        surface: Which it is on.
        mark: A mark at tile.
        first: Where the first tile along the pole begins [ticks].
        shown: How many of the pole's tiles begin up to it.
        plan: For tiles that come on sheets.
    """
    if not _is_counted(surface, [mark], plan):
        return shown
    step = _step(surface, upright=mark.line[0][1] == mark.line[1][1]) * TICKS_PER_MM
    # Of the first row a cut part may be left alone.
    return 1 + math.ceil((mark.distance - first) / step - _COUNTED)


def step_words(surface: Surface, marks: Sequence[Mark], upright: bool, plan: Plan, speaker: Speaker) -> str:
    """The sum by which a pole shows every so-manyth row of small tile; empty where it shows each, or sheets."""
    if not _is_counted(surface, marks, plan):
        return ""
    every, step = max(mark.every for mark in marks), _step(surface, upright=upright)
    one, total = (_fine(length, plan.job.tape) for length in (step, every * step))
    row = "course" if upright and has_courses(surface) else "row"
    return speaker.text("marks-step", every=every, what=row, one=one, total=total)


def _fine(length_mm: float, tape: Tape) -> str:
    """A length finer than a tape reads, for a sum."""
    return f"{length_mm / 25.4:.3f} in" if tape is Tape.INCH else f"{length_mm:.1f} mm"


def _run_end(surface: Surface, name: str, upright: bool) -> str:
    if surface.kind is not SurfaceKind.WALL:
        ends = ("lower", "upper") if upright else ("left", "right")
        return f"{'first' if upright else 'second'}_line_{ends[name == 'end']}"
    if upright:
        return "foot" if name == "start" else "top"
    return "left_end" if name == "start" else "right_end"
