"""Lines to snap: they lie on joints, and what is measured at both ends leads back to them."""

import math
import re
from dataclasses import replace
from itertools import pairwise

import pytest
from shapely import LineString, Point, Polygon, box

from firstcourse.geometry.polygon import rectangle
from firstcourse.plan import Opening, OpeningKind, Side, SideKind, SnapLine, Surface, SurfaceKind, TileStock
from firstcourse.tiling.lay import lay
from firstcourse.tiling.model import RepeatCell
from firstcourse.tiling.patterns import repeat_cell
from firstcourse.tiling.snap_lines import snap_lines
from firstcourse.units import TICKS_PER_MM, Tape, mm, parse_length

JOINT = 3.0


def _cell(pattern: str, width: float, height: float, *, angle: int = 0, joint: float = JOINT) -> RepeatCell:
    shape = "hexagon" if pattern == "hexagon" else "rectangle"
    tile = TileStock(id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="x", shape=shape, joint=mm(joint))
    return repeat_cell(pattern, [tile], joint, angle=angle)  # type: ignore[arg-type]


def _floor(outline: tuple[tuple[float, float], ...], *openings: Opening) -> Surface:
    labels = ("wall C-D", "wall B-C", "wall A-B", "wall D-A")
    return Surface(
        id="bath/floor",
        room="bath",
        kind=SurfaceKind.FLOOR,
        outline=tuple((mm(u), mm(v)) for u, v in outline),
        sides=tuple(Side(kind=SideKind.PERIMETER, label=label) for label in labels),
        corners=("A", "B", "C", "D"),
        openings=openings,
    )


TAPERED = ((40.0, 0.0), (1500.0, 30.0), (1540.0, 2450.0), (0.0, 2450.0))


def _snapped(
    surface: Surface, cell: RepeatCell, *, before: float = 0.0, tape: Tape = Tape.MM
) -> tuple[SnapLine, ...]:
    area = Polygon([(u / TICKS_PER_MM, v / TICKS_PER_MM) for u, v in surface.outline]).buffer(
        -6, join_style="mitre"
    )
    depths = [mm(before)] * len(surface.outline)
    return snap_lines(surface, area, cell, (101.0, 203.0), before=depths, tape=tape)


def _figures(words: str) -> list[int]:
    return [int(found) for found in re.findall(r"(\d+) mm", words)]


def test_a_tapered_floor_is_measured_differently_at_both_ends() -> None:
    first, second = _snapped(_floor(TAPERED), _cell("stacked", 300, 300))
    (u, low), (_, high) = first.line
    # The first line stands upright on a joint: the same u at both ends, 1.5 mm before a tile's left edge.
    assert u == first.line[1][0]
    assert (u / TICKS_PER_MM - 101.0 + JOINT / 2) % 303.0 == pytest.approx(0.0, abs=0.01)
    at_foot, at_head = _figures(first.words)[:2]
    # Measured along the foot from D at (40, 0), and along the head from A at (0, 2450): 40 mm and a hair apart.
    assert at_foot == round(math.dist((40, 0), (u / TICKS_PER_MM, low / TICKS_PER_MM)))
    assert at_head == round(u / TICKS_PER_MM) and high == mm(2450)
    assert at_head - at_foot == pytest.approx(40, abs=1)
    assert "wall C-D" in first.words and "from corner D" in first.words and "from corner A" in first.words
    assert second.line[0][1] == second.line[1][1]
    assert "on wall D-A" in second.words and "on wall B-C" in second.words


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
    one, other = _snapped(_floor(TAPERED), _cell(pattern, *size, angle=angle))
    (a, b), (c, d) = one.line, other.line
    dot = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
    assert abs(dot) / math.dist(a, b) / math.dist(c, d) < 1e-4
    crossing = LineString([a, b]).intersection(LineString([c, d]))
    middle = Polygon([(mm(u), mm(v)) for u, v in TAPERED]).centroid
    assert isinstance(crossing, Point) and crossing.distance(middle) < mm(450)


def test_the_square_check_is_right_and_fits_the_lines() -> None:
    for tape in Tape:
        first, second = _snapped(_floor(TAPERED), _cell("stacked", 300, 300), tape=tape)
        check = second.words.split("(3-4-5)")[1]
        shape = r"\d+ mm" if tape is Tape.MM else r"(?:\d+' )?\d+(?:-\d+/\d+)?\""
        legs = [parse_length(text) for text in re.findall(shape, check)]
        assert math.hypot(legs[0], legs[1]) == legs[2]
        assert legs[0] < math.dist(*first.line) and legs[1] < math.dist(*second.line)


def test_lines_end_at_the_boards_and_at_what_stands_on_the_floor() -> None:
    tub = Opening(id="tub", kind=OpeningKind.TUB, outline=rectangle(mm(0), mm(1690), mm(1540), mm(2450)))
    floor = _floor(TAPERED, tub)
    area = box(20, 20, 1490, 1680)
    depths = [mm(10)] * 4
    first, second = snap_lines(floor, area, _cell("stacked", 300, 300), (0, 0), before=depths, tape=Tape.MM)
    assert first.line[1][1] == mm(1690)
    assert "on tub" in first.words and "from the face of wall D-A" in first.words
    assert "on the face of wall C-D" in first.words
    assert "of wall D-A" in second.words and "from tub" in second.words


def test_lines_cross_on_an_l_shaped_floor_not_in_its_corner() -> None:
    outline = ((0, 0), (900, 0), (900, 1800), (3000, 1800), (3000, 2600), (0, 2600))
    names = ("wall E-F", "wall D-E", "wall C-D", "wall B-C", "wall A-B", "wall F-A")
    floor = _floor(outline).model_copy(
        update={"sides": tuple(Side(kind=SideKind.PERIMETER, label=name) for name in names)}
    )
    one, other = _snapped(floor, _cell("stacked", 300, 300))
    crossing = LineString(one.line).intersection(LineString(other.line))
    assert Polygon([(mm(u), mm(v)) for u, v in outline]).buffer(-mm(20)).contains(crossing)


def test_a_wall_gets_a_level_line_at_the_first_whole_course_and_a_plumb_one() -> None:
    # The rim runs out of level by 8 mm and the wall's left end leans by 12 mm.
    outline = tuple((mm(u), mm(v)) for u, v in ((0, 380), (1500, 388), (1500, 2100), (12, 2100)))
    kinds = (SideKind.FOOT, SideKind.PERIMETER, SideKind.FREE, SideKind.PERIMETER)
    labels = ("tub rim", "corner B", "stops here", "corner A")
    wall = Surface(
        id="bath/wall/A-B",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=outline,
        sides=tuple(Side(kind=kind, label=label) for kind, label in zip(kinds, labels, strict=True)),
        corners=("A", "B"),
    )
    area = Polygon([(3, 383), (1497, 391), (1497, 2100), (15, 2100)])
    cell = _cell("running", 300, 100)
    level, plumb = snap_lines(wall, area, cell, (0.0, 330.0), before=[0] * 4, tape=Tape.MM)
    # Courses stand at 330, 433, ...: the one at 330 is cut along the rim.
    assert {v for _, v in level.line} == {mm(433)}
    assert "at A 53 mm above tub rim" in level.words and "at B 45 mm above tub rim" in level.words
    assert len({u for u, _ in plumb.line}) == 1
    foot, head = _figures(plumb.words)
    assert foot - head == pytest.approx(12, abs=1) and "from corner A" in plumb.words


def test_a_wall_whose_every_course_meets_something_has_its_lines_all_the_same() -> None:
    # A cut course at the foot and the head, and a niche that cuts into both courses between.
    wall = Surface(
        id="bath/wall/A-B",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=rectangle(0, 0, mm(1500), mm(2100)),
        sides=tuple(
            Side(kind=kind, label=label)
            for kind, label in (
                (SideKind.FOOT, "tray flange"),
                (SideKind.PERIMETER, "corner B"),
                (SideKind.PERIMETER, "ceiling"),
                (SideKind.PERIMETER, "corner A"),
            )
        ),
        corners=("A", "B"),
    )
    area = box(3, 3, 1497, 2097) - box(400, 900, 1150, 1300)
    cell = _cell("running", 300, 600)
    level, plumb = snap_lines(wall, area, cell, (0.0, 450.0), before=[0] * 4, tape=Tape.MM)
    # Courses begin at 450 and 1053; the niche reaches into both, and the one below 450 is cut at the foot.
    assert {v for _, v in level.line} == {mm(450)}
    assert "at A 450 mm above tray flange, at B 450 mm above tray flange" in level.words
    assert len({u for u, _ in plumb.line}) == 1


def _wall(outline: tuple[tuple[float, float], ...], *right: SideKind) -> Surface:
    kinds = (SideKind.FOOT, *right, SideKind.PERIMETER, SideKind.PERIMETER)
    return Surface(
        id="bath/wall/B-C",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=tuple((mm(u), mm(v)) for u, v in outline),
        sides=tuple(
            Side(kind=kind, label=label)
            for kind, label in zip(kinds, ("floor", "corner C", "ceiling", "corner B"), strict=True)
        ),
        corners=("B", "C"),
    )


def test_under_a_sloping_ceiling_the_plumb_line_is_measured_from_the_end_that_stands_so_high() -> None:
    wall = _wall(((0, 0), (2000, 0), (2000, 2300), (0, 1200)), SideKind.PERIMETER)
    area = Polygon([(3, 3), (1997, 3), (1997, 2290), (3, 1190)])
    cell = _cell("running", 300, 100)
    _, plumb = snap_lines(wall, area, cell, (0.0, 3.0), before=[0] * 4, tape=Tape.MM)
    foot, head = _figures(plumb.words)
    assert foot + head == pytest.approx(2000, abs=1)
    assert "from corner B at the foot" in plumb.words and "from corner C at the top" in plumb.words
    assert "ceiling" not in plumb.words


def test_a_level_line_names_the_boards_edge_where_they_stop_before_the_corner() -> None:
    wall = _wall(((0, 0), (1200, 0), (1200, 2300), (0, 2300)), SideKind.FREE)
    level, _ = snap_lines(
        wall, box(3, 3, 1200, 2297), _cell("running", 300, 100), (0, 3), before=[0] * 4, tape=Tape.MM
    )
    assert "at B 3 mm above floor, at the boards' right edge 3 mm above floor" in level.words


def test_a_wall_of_a_turned_pattern_gets_the_patterns_axes() -> None:
    wall = Surface(
        id="bath/wall/A-B",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=rectangle(0, 0, mm(1500), mm(2400)),
        sides=tuple(
            Side(kind=kind, label=label)
            for kind, label in (
                (SideKind.FOOT, "floor"),
                (SideKind.PERIMETER, "corner B"),
                (SideKind.FREE, "stops here"),
                (SideKind.PERIMETER, "corner A"),
            )
        ),
        corners=("A", "B"),
    )
    area = box(3, 3, 1497, 2400)
    lines = snap_lines(wall, area, _cell("diagonal", 300, 300), (0, 0), before=[0] * 4, tape=Tape.INCH)
    assert [line.words.split(":")[0] for line in lines] == ["slanting", "slanting"]
    assert "mark in corner A" in lines[0].words


def test_no_crossing_no_lines() -> None:
    floor = _floor(((0, 0), (1500, 0), (1500, 30), (0, 30)))
    cell = _cell("stacked", 300, 300)
    assert snap_lines(floor, box(3, 3, 1497, 27), cell, (0, 0), before=[0] * 4, tape=Tape.MM) == ()


# Their joints recur at no step that both of the repeat's steps share.
@pytest.mark.parametrize("tile", [(150.0, 67.3), (300.0, 71.234)])
@pytest.mark.parametrize("pattern", ["herringbone", "double_herringbone"])
def test_a_herringbone_of_any_size_has_two_lines_square_to_each_other(
    pattern: str, tile: tuple[float, float]
) -> None:
    first, second = _snapped(_floor(TAPERED), _cell(pattern, *tile))
    (a, b), (c, d) = first.line, second.line
    across = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
    assert abs(across) < 1e-4 * math.dist(a, b) * math.dist(c, d)


def test_rows_shifted_by_no_even_part_of_a_tile_have_lines_too() -> None:
    cell = replace(_cell("running", 300, 100), step_b=(147.123, 103.0))
    assert len(_snapped(_floor(TAPERED), cell)) == 2


@pytest.mark.parametrize("size", [(297.0, 97.0), (303.2, 74.6)])
@pytest.mark.parametrize("pattern", ["herringbone", "double_herringbone"])
def test_a_herringbone_is_snapped_through_the_points_of_its_stairs(
    pattern: str, size: tuple[float, float]
) -> None:
    cell = _cell(pattern, *size)
    area = box(6, 6, 2394, 2394)
    square = ((0.0, 0.0), (2400.0, 0.0), (2400.0, 2400.0), (0.0, 2400.0))
    corners = [Point(p) for tile in lay(cell, (101.0, 203.0), area) for p in tile.laid]
    for snap in _snapped(_floor(square), cell):
        line = LineString([(u / TICKS_PER_MM, v / TICKS_PER_MM) for u, v in snap.line])
        along = sorted(line.project(corner) for corner in corners if line.distance(corner) <= JOINT)
        assert along[-1] - along[0] > 0.8 * line.length
        # No stretch without a point to set by is longer than two tiles.
        assert max(b - a for a, b in pairwise(along)) <= 2 * (size[0] + 2 * size[1])
