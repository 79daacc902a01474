"""Lines to snap: they lie on joints, and what is measured at both ends leads back to them."""

import math
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import pytest
from shapely import LineString, MultiPolygon, Point, Polygon, box

from firstcourse.geometry.polygon import rectangle
from firstcourse.plan import (
    Board,
    Mark,
    Opening,
    OpeningKind,
    Segment,
    Side,
    SideKind,
    Surface,
    SurfaceKind,
    Tile,
    TileStock,
    Zone,
)
from firstcourse.tiles.lay import lay
from firstcourse.tiles.mark_site import Build, Site
from firstcourse.tiles.model import XY, RepeatCell
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.snap_lines import Snapped, snap_lines
from firstcourse.units import TICKS_PER_MM, Tape, mm

JOINT = 3.0


def _cell(pattern: str, width: float, height: float, *, angle: int = 0, joint: float = JOINT) -> RepeatCell:
    shape = "hexagon" if pattern == "hexagon" else "rectangle"
    tile = TileStock(id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="x", shape=shape, joint=mm(joint))
    return repeat_cell(pattern, [tile], joint, angle=angle)  # type: ignore[arg-type]


def _floor(outline: tuple[tuple[float, float], ...], *openings: Opening) -> Surface:
    walls = ("C-D", "B-C", "A-B", "D-A")
    return Surface(
        id="bath/floor",
        room="bath",
        kind=SurfaceKind.FLOOR,
        outline=tuple((mm(u), mm(v)) for u, v in outline),
        sides=tuple(Side(kind=SideKind.PERIMETER, meets=f"bath/wall/{wall}") for wall in walls),
        corners=("A", "B", "C", "D"),
        openings=openings,
    )


TAPERED = ((40.0, 0.0), (1500.0, 30.0), (1540.0, 2450.0), (0.0, 2450.0))


def _snap(
    surface: Surface,
    area: Polygon | MultiPolygon,
    cell: RepeatCell,
    shift: XY,
    others: Sequence[Surface] = (),
    tape: Tape = Tape.MM,
) -> tuple[Mark, ...]:
    tiles = tuple(
        Tile(
            id=f"tile {number}",
            outline=tuple((mm(round(u, 3)), mm(round(v, 3))) for u, v in tile.shape.exterior.coords[:-1]),
            whole=tile.whole,
            laid=tuple((mm(round(u, 3)), mm(round(v, 3))) for u, v in tile.laid),
        )
        for number, tile in enumerate(lay(cell, shift, area))
    )
    site = Site(
        surfaces={one.id: one for one in (surface, *others)},
        builds={one.id: Build(under=mm(10), over=None) for one in others},
    )
    tiled = surface.model_copy(update={"tiles": tiles})
    return snap_lines(tiled, Snapped(area=area, cell=cell, shift=shift), site, tape)


def _snapped(surface: Surface, cell: RepeatCell, *, tape: Tape = Tape.MM) -> tuple[Mark, ...]:
    area = Polygon([(u / TICKS_PER_MM, v / TICKS_PER_MM) for u, v in surface.outline])
    return _snap(surface, area.buffer(-6, join_style="mitre"), cell, (101.0, 203.0), tape=tape)


def _lines(marks: Sequence[Mark]) -> list[Segment]:
    return list(dict.fromkeys(mark.line for mark in marks if mark.kind != "square"))


def _at(marks: Sequence[Mark], line: Segment) -> list[Mark]:
    return [mark for mark in marks if mark.line == line and mark.kind != "square"]


def _told(marks: Sequence[Mark]) -> list[tuple[str, int]]:
    return [(mark.from_, round(mark.distance / TICKS_PER_MM)) for mark in marks]


def test_a_tapered_floor_is_measured_differently_at_both_ends() -> None:
    marks = _snapped(_floor(TAPERED), _cell("stacked", 300, 300))
    first, second = _lines(marks)
    (u, low), (_, high) = first
    # The first line stands upright on a joint: the same u at both ends, 1.5 mm before a tile's left edge.
    assert u == first[1][0]
    assert (u / TICKS_PER_MM - 101.0 + JOINT / 2) % 303.0 == pytest.approx(0.0, abs=0.01)
    foot, head = _at(marks, first)
    # Measured along the foot from D at (40, 0), and along the head from A at (0, 2450): 40 mm and a hair apart.
    assert foot.distance == pytest.approx(math.dist((mm(40), 0), (u, low)), abs=1)
    assert head.distance == u and high == mm(2450)
    assert (foot.from_, foot.at, head.at) == ("bath/floor/side/3", "bath/floor/side/0", "bath/floor/side/2")
    assert second[0][1] == second[1][1]
    assert [mark.at for mark in _at(marks, second)] == ["bath/floor/side/3", "bath/floor/side/1"]


@pytest.mark.parametrize(
    ("pattern", "size", "angle"),
    [
        ("stacked", (300, 200), 0),
        ("running", (300, 100), 0),
        ("diagonal", (300, 300), 0),
        ("herringbone", (297, 97), 0),
        ("herringbone", (297, 97), 45),
        ("double_herringbone", (397, 97), 45),
        ("basket_weave", (197, 97), 0),
        ("hexagon", (60, 69.282), 0),
    ],
)
def test_every_pattern_gets_two_lines_square_to_each_other(
    pattern: str, size: tuple[float, float], angle: int
) -> None:
    (a, b), (c, d) = _lines(_snapped(_floor(TAPERED), _cell(pattern, *size, angle=angle)))
    dot = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
    assert abs(dot) / math.dist(a, b) / math.dist(c, d) < 1e-4
    crossing = LineString([a, b]).intersection(LineString([c, d]))
    middle = Polygon([(mm(u), mm(v)) for u, v in TAPERED]).centroid
    assert isinstance(crossing, Point) and crossing.distance(middle) < mm(450)


@pytest.mark.parametrize("tape", list(Tape))
def test_the_square_check_is_right_and_fits_the_lines(tape: Tape) -> None:
    marks = _snapped(_floor(TAPERED), _cell("stacked", 300, 300), tape=tape)
    one, other, long = (mark for mark in marks if mark.kind == "square")
    assert math.hypot(one.distance, other.distance) == long.distance and one.distance % tape.graduation == 0
    first, second = _lines(marks)
    assert one.distance < math.dist(*first) and other.distance < math.dist(*second)
    assert long.measure is not None and math.dist(*long.measure) == pytest.approx(long.distance, abs=3)


def _wall_of(corners: tuple[str, str], length: float, low: float = 0.0) -> Surface:
    """A boarded wall as another surface meets it."""
    outline = rectangle(0, mm(low), mm(length), mm(2400))
    return Surface(
        id=f"bath/wall/{'-'.join(corners)}",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=outline,
        sides=tuple(Side(kind=SideKind.PERIMETER) for _ in outline),
        corners=corners,
        extent=rectangle(0, 0, mm(length), mm(2400)),
        boards=(Board(id="b", piece="p", outline=outline),),
    )


ROOM = ((0.0, 0.0), (1540.0, 0.0), (1540.0, 2450.0), (0.0, 2450.0))


def test_lines_end_at_the_boards_and_at_what_stands_on_the_floor() -> None:
    tub = Opening(id="tub", kind=OpeningKind.TUB, outline=rectangle(mm(0), mm(1690), mm(1540), mm(2450)))
    walls = (_wall_of(("D", "A"), 2450), _wall_of(("B", "C"), 2450, low=380), _wall_of(("C", "D"), 1540))
    area = box(20, 20, 1520, 1680)
    marks = _snap(_floor(ROOM, tub), area, _cell("stacked", 300, 300), (0, 0), walls)
    first, second = _lines(marks)
    # Boards 10 mm thick stand along D-A and C-D; those of B-C end over the rim and leave the floor's edge bare.
    assert first[0][1] == mm(10) and first[1][1] == mm(1690)
    assert second[0][0] == mm(10) and second[1][0] == mm(1540)
    assert [(mark.from_, mark.at) for mark in _at(marks, first)] == [
        ("bath/floor/side/3", "bath/floor/side/0"),
        ("bath/floor/side/3", "bath/floor/opening/tub"),
    ]
    assert {mark.distance for mark in _at(marks, first)} == {first[0][0] - mm(10)}
    assert {mark.from_ for mark in _at(marks, second)} == {"bath/floor/opening/tub"}


def test_a_cabinet_is_never_measured_from_and_its_face_never_along() -> None:
    island = Opening(id="island", kind=OpeningKind.CABINET, outline=rectangle(mm(400), mm(0), mm(1200), mm(700)))
    marks = _snap(_floor(ROOM, island), box(6, 706, 1534, 2444), _cell("stacked", 300, 300), (0, 0))
    first, _ = _lines(marks)
    assert first[0][1] == mm(700)
    foot, head = _at(marks, first)
    # At the island's end the tape lies square to the line, from a wall.
    assert foot.at == "bath/floor/opening/island" and foot.from_.startswith("bath/floor/side/")
    assert foot.measure is not None and foot.measure[0][1] == foot.measure[1][1]
    assert not any("island" in mark.from_ for mark in marks) and head.at == "bath/floor/side/2"


def test_lines_cross_on_an_l_shaped_floor_not_in_its_corner() -> None:
    outline = ((0, 0), (900, 0), (900, 1800), (3000, 1800), (3000, 2600), (0, 2600))
    names = ("E-F", "D-E", "C-D", "B-C", "A-B", "F-A")
    floor = _floor(outline).model_copy(
        update={"sides": tuple(Side(kind=SideKind.PERIMETER, meets=f"bath/wall/{name}") for name in names)}
    )
    one, other = _lines(_snapped(floor, _cell("stacked", 300, 300)))
    crossing = LineString(one).intersection(LineString(other))
    assert Polygon([(mm(u), mm(v)) for u, v in outline]).buffer(-mm(20)).contains(crossing)


def _wall(outline: tuple[tuple[float, float], ...], sides: Sequence[tuple[SideKind, str]]) -> Surface:
    ring = tuple((mm(u), mm(v)) for u, v in outline)
    right, upper = max(u for u, _ in ring), max(v for _, v in ring)
    return Surface(
        id="bath/wall/A-B",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=ring,
        sides=tuple(Side(kind=kind, meets=meets) for kind, meets in sides),
        corners=("A", "B"),
        extent=rectangle(0, 0, right, upper),
    )


OVER_TUB = (
    (SideKind.FOOT, "bath/fixture/tub"),
    (SideKind.PERIMETER, "bath/corner/B"),
    (SideKind.FREE, "stops_here"),
    (SideKind.PERIMETER, "bath/corner/A"),
)


def test_a_wall_gets_a_level_line_at_the_first_whole_course_and_a_plumb_one() -> None:
    # The rim runs out of level by 8 mm and the wall's left end leans by 12 mm.
    wall = _wall(((0, 380), (1500, 388), (1500, 2100), (12, 2100)), OVER_TUB)
    area = Polygon([(3, 383), (1497, 391), (1497, 2100), (15, 2100)])
    marks = _snap(wall, area, _cell("running", 300, 100), (0.0, 330.0))
    level = [mark for mark in marks if mark.kind == "first_course"]
    plumb = [mark for mark in marks if mark.kind == "plumb"]
    # Courses stand at 330, 433, ...: the one at 330 is cut along the rim.
    assert {v for mark in level for _, v in mark.line} == {mm(433)}
    assert _told(level) == [("bath/wall/A-B/side/0", 53), ("bath/wall/A-B/side/0", 45)]
    assert {mark.to for mark in level} == {"bath/wall/A-B/row/2"}
    assert len({u for mark in plumb for u, _ in mark.line}) == 1
    foot, head = plumb
    assert foot.distance - head.distance == pytest.approx(mm(12), abs=mm(1))
    assert foot.from_ == head.from_ == "bath/wall/A-B/side/3"


def test_a_wall_whose_every_course_meets_something_has_its_lines_all_the_same() -> None:
    # A cut course at the foot and the head, and a niche that cuts into both courses between.
    foot = (SideKind.FOOT, "bath/fixture/tray")
    ends = (
        (SideKind.PERIMETER, "bath/corner/B"),
        (SideKind.PERIMETER, "bath/ceiling"),
        (SideKind.PERIMETER, "bath/corner/A"),
    )
    wall = _wall(((0, 0), (1500, 0), (1500, 2100), (0, 2100)), (foot, *ends))
    area = box(3, 3, 1497, 2097) - box(400, 900, 1150, 1300)
    marks = _snap(wall, area, _cell("running", 300, 600), (0.0, 450.0))
    # Courses begin at 450 and 1053; the niche reaches into both, and the one below 450 is cut at the foot.
    level = [mark for mark in marks if mark.kind == "first_course"]
    assert {v for mark in level for _, v in mark.line} == {mm(450)}
    assert _told(level) == [("bath/wall/A-B/side/0", 450)] * 2
    assert len(_lines(marks)) == 2


def test_a_bed_and_a_finished_floor_are_not_measured_from_where_they_are_not_known() -> None:
    ends = (
        (SideKind.PERIMETER, "bath/corner/B"),
        (SideKind.FREE, "stops_here"),
        (SideKind.PERIMETER, "bath/corner/A"),
    )
    wall = _wall(((0, 60), (1500, 60), (1500, 2100), (0, 2100)), ((SideKind.FOOT, "bath/fixture/tray"), *ends))
    zone = Zone(outline=rectangle(0, mm(60), mm(1500), mm(75)), why="bath/floor/shower")
    wall = wall.model_copy(update={"not_tiled": (zone,)})
    marks = _snap(wall, box(3, 78, 1497, 2100), _cell("stacked", 300, 100), (0.0, 78.0))
    level = [mark for mark in marks if mark.kind == "first_course"]
    # Down from the boards' upper edge.
    assert _told(level) == [("bath/wall/A-B/side/2", 2022)] * 2


def test_a_gap_beside_a_tub_is_too_narrow_to_measure_in() -> None:
    sides = ((SideKind.FOOT, "bath/floor"), *OVER_TUB[1:])
    tub = Opening(id="tub", kind=OpeningKind.TUB, outline=rectangle(mm(700), 0, mm(1494), mm(380)))
    wall = _wall(((0, 0), (1500, 0), (1500, 2100), (0, 2100)), sides).model_copy(update={"openings": (tub,)})
    area = box(3, 3, 1497, 2100) - box(697, 0, 1500, 383)
    marks = _snap(wall, area, _cell("stacked", 300, 100), (0.0, 3.0))
    left, right = (mark for mark in marks if mark.kind == "first_course")
    # Not the course on the floor, which stops at the tub, but the lowest over its rim, whole all along.
    assert left.line[0][1] == mm(415)
    assert (left.from_, right.from_) == ("bath/floor", "bath/wall/A-B/opening/tub")
    assert (left.distance, right.distance) == (mm(415), mm(35))


def test_under_a_sloping_ceiling_the_plumb_line_is_measured_from_the_end_that_stands_so_high() -> None:
    sides = (
        (SideKind.FOOT, "bath/floor"),
        (SideKind.PERIMETER, "bath/corner/B"),
        (SideKind.PERIMETER, "bath/ceiling"),
        OVER_TUB[3],
    )
    wall = _wall(((0, 0), (2000, 0), (2000, 2300), (0, 1200)), sides)
    area = Polygon([(3, 3), (1997, 3), (1997, 2290), (3, 1190)])
    marks = _snap(wall, area, _cell("running", 300, 100), (0.0, 3.0))
    foot, head = (mark for mark in marks if mark.kind == "plumb")
    assert foot.from_ == "bath/wall/A-B/side/3"
    assert head.measure is not None and head.from_ in ("bath/wall/A-B/side/1", "bath/wall/A-B/side/3")
    assert head.measure[0][1] == head.measure[1][1]


def test_a_wall_of_a_turned_pattern_gets_the_patterns_axes() -> None:
    wall = _wall(((0, 0), (1500, 0), (1500, 2400), (0, 2400)), ((SideKind.FOOT, "bath/floor"), *OVER_TUB[1:]))
    marks = _snap(wall, box(3, 3, 1497, 2400), _cell("diagonal", 300, 300), (0, 0), tape=Tape.INCH)
    assert {mark.kind for mark in marks} == {"snap", "square"}
    for (a, b), (c, d) in _lines(marks):
        assert a != c and b != d
    assert any(mark.at == "bath/wall/A-B/side/3" for mark in marks)


def test_no_crossing_no_lines() -> None:
    floor = _floor(((0, 0), (1500, 0), (1500, 30), (0, 30)))
    assert _snap(floor, box(3, 3, 1497, 27), _cell("stacked", 300, 300), (0, 0)) == ()


# Their joints recur at no step that both of the repeat's steps share.
@pytest.mark.parametrize("tile", [(150.0, 67.3), (300.0, 71.234)])
@pytest.mark.parametrize("pattern", ["herringbone", "double_herringbone"])
def test_a_herringbone_of_any_size_has_two_lines_square_to_each_other(
    pattern: str, tile: tuple[float, float]
) -> None:
    (a, b), (c, d) = _lines(_snapped(_floor(TAPERED), _cell(pattern, *tile)))
    across = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
    assert abs(across) < 1e-4 * math.dist(a, b) * math.dist(c, d)


def test_rows_shifted_by_no_even_part_of_a_tile_have_lines_too() -> None:
    cell = replace(_cell("running", 300, 100), step_b=(147.123, 103.0))
    assert len(_lines(_snapped(_floor(TAPERED), cell))) == 2


@pytest.mark.parametrize("size", [(297.0, 97.0), (303.2, 74.6)])
@pytest.mark.parametrize("pattern", ["herringbone", "double_herringbone"])
def test_a_herringbone_is_snapped_through_the_points_of_its_stairs(
    pattern: str, size: tuple[float, float]
) -> None:
    cell = _cell(pattern, *size)
    area = box(6, 6, 2394, 2394)
    square = ((0.0, 0.0), (2400.0, 0.0), (2400.0, 2400.0), (0.0, 2400.0))
    corners = [Point(p) for tile in lay(cell, (101.0, 203.0), area) for p in tile.laid]
    for snap in _lines(_snapped(_floor(square), cell)):
        line = LineString([(u / TICKS_PER_MM, v / TICKS_PER_MM) for u, v in snap])
        along = sorted(line.project(corner) for corner in corners if line.distance(corner) <= JOINT)
        assert along[-1] - along[0] > 0.8 * line.length
        # No stretch without a point to set by is longer than two tiles.
        assert max(b - a for a, b in pairwise(along)) <= 2 * (size[0] + 2 * size[1])
