"""Fasteners of single boards, where the answer can be said by hand."""

import datetime
import math
from itertools import pairwise

import pytest

from firstcourse.boards import fasten
from firstcourse.boards.fastening import Fastened
from firstcourse.plan import Board, Ring, Support, SupportKind, Surface, SurfaceKind, Zone
from firstcourse.rules import load_rules
from firstcourse.units import Tape, inches, mm
from said import all_said

RULES = load_rules(datetime.date(2026, 1, 1))
EIGHT, EDGE, CORNER = inches(8), inches(0.375), inches(2)


def box(left: float, lower: float, right: float, upper: float) -> Ring:
    a, b, c, d = (inches(value) for value in (left, lower, right, upper))
    return ((a, b), (c, b), (c, d), (a, d))


def stud(left: float, height: float = 60) -> Support:
    return Support(id=f"stud {left}", kind=SupportKind.STUD, outline=box(left, 0, left + 1.5, height))


def wall(
    *outlines: Ring, supports: tuple[Support, ...], holes: tuple[Ring, ...] = (), zones: tuple[Zone, ...] = ()
) -> Surface:
    boards = tuple(
        Board(id=f"room/wall/A-B#{n}", piece=f"P{n}", outline=outline, holes=holes, mark=f"W1-{n}")
        for n, outline in enumerate(outlines, 1)
    )
    return Surface(
        id="room/wall/A-B",
        room="room",
        kind=SurfaceKind.WALL,
        outline=box(0, 0, 100, 100),
        framing_axis="v",
        supports=supports,
        no_fastener_zones=zones,
        boards=boards,
    )


def floor(outline: Ring, screws: tuple[tuple[int, int], ...] = ()) -> Surface:
    return Surface(
        id="room/floor",
        room="room",
        kind=SurfaceKind.FLOOR,
        outline=outline,
        supports=(Support(id="panel", kind=SupportKind.PANEL, outline=outline),),
        panel_screws=screws,
        boards=(Board(id="room/floor#1", piece="P1", outline=outline, mark="F1"),),
    )


def only(done: Fastened) -> tuple[tuple[int, int], ...]:
    (board,) = done.boards
    return board.fasteners


def codes(done: Fastened) -> list[str]:
    return [finding.code for finding in all_said(done.findings)]


def test_studs_carry_fasteners_on_their_centre_lines() -> None:
    done = fasten(wall(box(0, 0, 33.5, 60), supports=(stud(0), stud(16), stud(32))), RULES, Tape.INCH)
    assert codes(done) == []
    assert {u for u, _ in only(done)} == {inches(0.75), inches(16.75), inches(32.75)}
    middle = sorted(v for u, v in only(done) if u == inches(16.75))
    assert middle[0] == EDGE and middle[-1] == inches(60) - EDGE
    # 59 1/4 in in eight steps.
    assert len(middle) == 9
    assert done.counts == {"wall": len(only(done))}


def test_boards_that_share_a_stud_take_a_half_each() -> None:
    surface = wall(box(0, 0, 16.6875, 60), box(16.8125, 0, 33.5, 60), supports=(stud(0), stud(16), stud(32)))
    done = fasten(surface, RULES, Tape.INCH)
    assert codes(done) == []
    left = {u for u, _ in done.boards[0].fasteners if u > inches(8)}
    right = {u for u, _ in done.boards[1].fasteners if u < inches(24)}
    assert all(inches(16) <= u <= inches(16.6875) - EDGE for u in left)
    assert all(inches(16.8125) + EDGE <= u <= inches(17.5) for u in right)


@pytest.mark.parametrize("tape", list(Tape))
def test_places_lie_on_tape_marks_from_the_board_s_corner(tape: Tape) -> None:
    outline = ((0, 0), (mm(900), 0), (mm(900), mm(1500)), (0, mm(1500)))
    if tape is Tape.INCH:
        outline = box(0, 0, 36, 60)
    for u, v in only(fasten(wall(outline, supports=(stud(0.3), stud(14.41), stud(27.77))), RULES, tape)):
        assert u % tape.graduation == 0 and v % tape.graduation == 0


def test_plates_and_blocking_are_fastened_between_the_studs() -> None:
    plate = Support(id="bottom plate", kind=SupportKind.PLATE, outline=box(0, 0, 48, 1.5))
    surface = wall(box(0, 0, 48, 60), supports=(plate, stud(0), stud(24), stud(46.5)))
    done = fasten(surface, RULES, Tape.INCH)
    row = sorted(u for u, v in only(done) if v < inches(1.5))
    assert codes(done) == []
    assert all(b - a <= EIGHT for a, b in pairwise(row))


def test_nothing_is_driven_in_a_zone() -> None:
    zone = Zone(outline=box(0, 0, 48, 2), why="tray flange")
    done = fasten(
        wall(box(0, 0, 33.5, 60), supports=(stud(0), stud(16), stud(32)), zones=(zone,)), RULES, Tape.INCH
    )
    assert codes(done) == []
    assert min(v for _, v in only(done)) >= inches(2)


def test_a_hole_keeps_its_edge_distance() -> None:
    hole = tuple(reversed(box(15, 20, 19, 24)))
    done = fasten(
        wall(box(0, 0, 33.5, 60), supports=(stud(0), stud(16), stud(32)), holes=(hole,)), RULES, Tape.INCH
    )
    middle = [v for u, v in only(done) if u == inches(16.75)]
    assert codes(done) == []
    assert not [v for v in middle if inches(20) - EDGE < v < inches(24) + EDGE]
    assert max(v for v in middle if v < inches(20)) >= inches(20) - EIGHT


def test_too_little_bearing_is_told() -> None:
    done = fasten(wall(box(0, 0, 32.2, 60), supports=(stud(0), stud(16), stud(32))), RULES, Tape.INCH)
    assert "FST-101" not in codes(done)
    assert not [u for u, _ in only(done) if u > inches(31)]
    done = fasten(wall(box(0, 0, 32.4, 60), supports=(stud(0), stud(16), stud(32))), RULES, Tape.INCH)
    assert codes(done) == ["FST-101"]
    assert done.findings[0].at == (done.boards[0].id,)


def test_a_board_without_a_member_is_told() -> None:
    done = fasten(wall(box(3, 0, 13, 60), supports=(stud(0), stud(16))), RULES, Tape.INCH)
    assert codes(done) == ["FST-104"]
    assert only(done) == ()


def test_a_board_too_small_for_its_corners_is_told() -> None:
    done = fasten(wall(box(16, 0, 18.5, 2.5), supports=(stud(16.5),)), RULES, Tape.INCH)
    assert codes(done) == ["FST-103"]
    assert len(only(done)) >= 1


def test_a_board_already_up_keeps_its_fasteners() -> None:
    surface = wall(box(0, 0, 33.5, 60), supports=(stud(0), stud(16), stud(32)))
    fixed = surface.boards[0].model_copy(update={"fixed": True, "fasteners": ((5, 5),)})
    done = fasten(surface.model_copy(update={"boards": (fixed,)}), RULES, Tape.INCH)
    assert done.boards == (fixed,)
    assert done.counts == {"wall": 0}


def test_a_floor_board_has_a_row_along_every_edge_and_a_grid() -> None:
    done = fasten(floor(box(0, 0, 60, 36)), RULES, Tape.INCH)
    assert codes(done) == []
    points = only(done)
    bottom = sorted(u for u, v in points if v <= inches(0.75))
    assert bottom[0] <= EIGHT and bottom[-1] >= inches(60) - EIGHT
    assert all(b - a <= EIGHT for a, b in pairwise(bottom))
    # Eight steps along and five up; a corner's place moves aside along one of its edges.
    assert len(points) == 9 * 6


def test_floor_fasteners_keep_clear_of_panel_screws() -> None:
    screws = tuple((inches(u), inches(v)) for u in (8, 24, 40, 56) for v in range(1, 36, 6))
    done = fasten(floor(box(0, 0, 60, 36), screws), RULES, Tape.INCH)
    assert codes(done) == []
    assert min(math.dist(point, screw) for point in only(done) for screw in screws) >= inches(1)


def test_a_skewed_joist_is_followed() -> None:
    slope = ((inches(10), 0), (inches(11.5), 0), (inches(21.5), inches(60)), (inches(20), inches(60)))
    joist = Support(id="joist", kind=SupportKind.JOIST, outline=slope)
    done = fasten(wall(box(0, 0, 36, 60), supports=(joist,)), RULES, Tape.INCH)
    # The board's own ends have no member here.
    assert codes(done) == ["FST-105"]
    assert len(only(done)) >= 8
    for u, v in only(done):
        assert abs(u - inches(10.75) - v / 6) <= inches(0.125)


def test_the_same_surface_gives_the_same_fasteners() -> None:
    surface = floor(box(0, 0, 47, 31))
    assert fasten(surface, RULES, Tape.MM) == fasten(surface, RULES, Tape.MM)


def test_the_working_adds_up() -> None:
    done = fasten(floor(box(0, 0, 60, 36)), RULES, Tape.INCH)
    assert done.working is not None
    assert done.working.inputs["each"] == (len(only(done)),)
    assert done.working.result == len(only(done))
