"""Marks as the papers say them; what is said comes from the plan's values alone."""

import math
from collections.abc import Iterator, Sequence

from firstcourse.drawings.mosaic import mosaics
from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import Point, sides
from firstcourse.plan import Mark, Plan, Segment, Side, SideKind, Surface, SurfaceKind
from firstcourse.tiling.story_pole import has_courses
from firstcourse.units import TICKS_PER_MM, Tape, format_length

_COUNTED = 0.05
"""Rows are counted in spite of rounding by this share of a step."""
_ENDINGS = {2: "nd", 3: "rd"}
_NEAR_END = 64
"""A tape held this near to a line's end is held at it [ticks]."""


def line_words(surface: Surface, tape: Tape) -> Iterator[str]:
    """Each line to snap with what is measured, one sentence a line, and the check for square."""
    lines: dict[Segment, list[Mark]] = {}
    for mark in surface.marks:
        if mark.kind in ("first_course", "plumb", "snap"):
            lines.setdefault(mark.line, []).append(mark)
    for number, (line, marks) in enumerate(lines.items()):
        found = ", and ".join(_measured(mark, surface, tape) for mark in marks)
        yield f"{_line(marks[0].kind, line, number)}: {found}."
    square = [mark for mark in surface.marks if mark.kind == "square"]
    if len(square) == 3:
        legs = [format_length(mark.distance, tape) for mark in square]
        yield (
            f"Square check: from their crossing {legs[0]} along the first line and {legs[1]} along the second; "
            f"the two marks lie {legs[2]} apart."
        )


def start_words(surface: Surface, tape: Tape) -> Iterator[tuple[str, str]]:
    """The first joint of a face each way: what is measured, and how far from which edge."""
    lines: dict[Segment, list[Mark]] = {}
    for mark in surface.marks:
        if mark.kind == "start":
            lines.setdefault(mark.line, []).append(mark)
    for line, marks in lines.items():
        assert marks[0].measure is not None
        start, end = marks[0].measure
        level = line[0][1] == line[1][1]
        way = ("Up" if start[1] < end[1] else "Down") if level else "Across"
        lengths = list(dict.fromkeys(format_length(mark.distance, tape) for mark in marks))
        where = "" if len(lengths) == 1 else f", at its {'left and right' if level else 'lower and upper'} end"
        yield (
            f"{way} to {_first(surface, marks[0], tape)}",
            (f"{' and '.join(lengths)} from {thing(marks[0].from_, surface)}{where}"),
        )


def _first(surface: Surface, mark: Mark, tape: Tape) -> str:
    """What a start mark lies at: the first joint, points of slanting tile, or the edge of the only row."""
    name, _, part = mark.to.rpartition("/")
    side = ("left", "low", "right", "high").index(part)
    places = [bounds(tile.outline)[side] for tile in surface.tiles]
    tile = next(tile for tile in surface.tiles if tile.id == name)
    if abs(bounds(tile.outline)[side] - (max if side > 1 else min)(places)) < tape.graduation:
        return "the edge of the only row"
    axis = side % 2
    square = any(a[axis] == b[axis] for a, b in sides(tile.laid or tile.outline))
    return "the first joint" if square else "the first point"


def _line(kind: str, line: Segment, number: int) -> str:
    if kind == "first_course":
        return "Level line, lower edge of the lowest whole course"
    if kind == "plumb":
        return "Plumb line, edge of a tile near the middle"
    (a, b), (c, d) = line
    name = "Second line" if number else "First line"
    if a == c:
        return f"{name}, up the drawing"
    return f"{name}, across the drawing" if b == d else f"{name}, slanting"


def _measured(mark: Mark, surface: Surface, tape: Tape) -> str:
    length = format_length(mark.distance, tape)
    assert mark.measure is not None
    start, end = mark.measure
    from_ = thing(mark.from_, surface)
    if mark.kind == "first_course":
        over = "above" if start[1] < end[1] else "below"
        return f"{_spot(mark.line, end, ('left end', 'right end'), tape)} {length} {over} {from_}"
    if mark.kind == "plumb":
        return f"{_spot(mark.line, end, ('foot', 'top'), tape)} {length} from {from_}"
    if not mark.at:
        return f"in the open {length} from {from_}"
    along = "along" if _ends(mark.line, end) else "beside"
    return f"{along} {thing(mark.at, surface)} {length} from {from_}"


def _ends(line: Segment, at: Point) -> bool:
    return min(math.dist(at, end) for end in line) < _NEAR_END


def _spot(line: Segment, at: Point, names: tuple[str, str], tape: Tape) -> str:
    """Where along a line it is measured: at one of its ends, or so far from the nearer one."""
    near = [math.dist(at, end) for end in line]
    name = names[near[1] < near[0]]
    if min(near) <= TICKS_PER_MM:
        return f"at the {name}"
    return f"at {format_length(round(min(near)), tape)} from the {name},"


def thing(ref: str, surface: Surface) -> str:
    """What a reference names, as one calls it who stands before the surface."""
    base, _, name = ref.rpartition("/")
    if base == f"{surface.id}/side" and name.isdigit():
        return _side(surface.sides[int(name)], surface, int(name))
    if base == f"{surface.id}/opening":
        return f"the {name}"
    if ref == f"{surface.room}/floor":
        return "the floor before its tile"
    if ref == f"{surface.room}/floor/shower":
        return "the shower's bed before its tile"
    if base == f"{surface.room}/bench":
        return f"the {name}"
    return f"the {ref.removeprefix(f'{surface.room}/').replace('/', ', ')}"


def _face_edge(side: Side, surface: Surface) -> str:
    """An edge of a small face as it stands when its tile is set."""
    part = side.label.rpartition(" ")[2]
    if surface.id.endswith(("/left", "/right")) and part in ("sill", "head", "back"):
        return f"the tile of the {side.label}"
    if side.label == "niche back":
        return "the tile of the niche back"
    if side.label == "under its top":
        return "its upper edge, before the top is set"
    return f"the boards of {side.label}" if side.label.startswith("wall ") else f"the {side.label}"


def _side(side: Side, surface: Surface, index: int) -> str:
    if surface.part_of or surface.id.startswith(f"{surface.room}/bench/"):
        return _face_edge(side, surface)
    if side.kind is SideKind.FREE:
        a, b = list(sides(surface.outline))[index]
        across, up = b[0] - a[0], b[1] - a[1]
        names = ("lower", "upper") if abs(across) > abs(up) else ("right", "left")
        return f"the boards' {names[(across if abs(across) > abs(up) else up) < 0]} edge"
    if side.kind is SideKind.FOOT or side.label == "ceiling":
        return f"the {side.label}"
    if side.label.startswith("corner "):
        return f"the face in {side.label}"
    return f"the face of {side.label}" if side.label.startswith("wall ") else f"the {side.label}"


def place_words(surface: Surface, mark: Mark, number: int, plan: Plan) -> str:
    """What a mark of a pole stands for.

    Args:
        surface: Which it is on.
        mark: The mark.
        number: Which of the tiles along the pole begins there, counted from 1; of the last mark which one ends.
        plan: For tiles that come on sheets.
    """
    base, _, name = mark.to.rpartition("/")
    upright = mark.line[0][1] == mark.line[1][1]
    if base.startswith(f"{surface.id}/line/"):
        return _run_end(surface, name, upright)
    if base == f"{surface.id}/line":
        return f"{name} line"
    if base.startswith(f"{surface.id}/opening/"):
        edge = {"low": "lower edge", "high": "upper edge", "left": "left edge", "right": "right edge"}
        return f"{base.rpartition('/')[2]}, {edge.get(name, name)}"
    if mark.every > 1 and not _is_counted(surface, [mark], plan):
        step = "sheet"
    else:
        single = "row" if _is_counted(surface, [mark], plan) else "tile"
        step = "course" if upright and has_courses(surface) else single
    if name in ("high", "right"):
        if _is_counted(surface, [mark], plan):
            return f"end of the last {step}"
        return f"end of {step} {number}"
    return ", ".join([f"{step} {number}", *([mark.stock] if mark.stock else []), *(["cut"] if mark.cut else [])])


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


def step_words(surface: Surface, marks: Sequence[Mark], upright: bool, plan: Plan) -> str:
    """The sum by which a pole shows every so-manyth row of small tile; empty where it shows each, or sheets."""
    if not _is_counted(surface, marks, plan):
        return ""
    every, step = max(mark.every for mark in marks), _step(surface, upright=upright)
    one, total = (_fine(length, plan.job.tape) for length in (step, every * step))
    row = "course" if upright and has_courses(surface) else "row"
    return f"every {every}{_ENDINGS.get(every, 'th')} {row}: {every} x {one} = {total}"


def _fine(length_mm: float, tape: Tape) -> str:
    """A length finer than a tape reads, for a sum."""
    return f"{length_mm / 25.4:.3f} in" if tape is Tape.INCH else f"{length_mm:.1f} mm"


def _run_end(surface: Surface, name: str, upright: bool) -> str:
    if surface.kind is not SurfaceKind.WALL:
        ends = ("lower", "upper") if upright else ("left", "right")
        return f"{'first' if upright else 'second'} line, {ends[name == 'end']} end"
    if upright:
        return "foot" if name == "start" else "top"
    return "left end" if name == "start" else "right end"
