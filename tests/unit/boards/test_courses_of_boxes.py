"""Courses and boards that are rectangles take a shorter way; it must say what the longer one says."""

import datetime
from dataclasses import replace
from itertools import combinations

import pytest

from firstcourse.boards.field import BoardField, field_of
from firstcourse.boards.members import row_runs
from firstcourse.boards.seam_ground import CourseGround
from firstcourse.boards.seams import PIECE, SLIVER, Course
from firstcourse.plan import Side, SideKind, Stock, Surface, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.units import Tape, inches
from own_best import own_best_layout

RULES = load_rules(datetime.date(2026, 1, 1))
SHEET = (Stock(id="3x5", size=(inches(36), inches(60)), thickness=inches(0.5), kind="fibre_cement"),)


def surface(width: float, height: float, *, notched: bool = False) -> Surface:
    wide, high, cut = inches(width), inches(height), inches(10)
    outline = ((0, 0), (wide, 0), (wide, high), (0, high))
    if notched:
        outline = ((0, 0), (wide, 0), (wide, high - cut), (wide - cut, high - cut), (wide - cut, high), (0, high))
    sides = (Side(kind=SideKind.PERIMETER),) * len(outline)
    return Surface(id="bath/wall/A-B", room="bath", kind=SurfaceKind.WALL, outline=outline, sides=sides)


def field(width: float, height: float) -> BoardField:
    return field_of(surface(width, height), RULES, Tape.INCH.graduation, along_v=False)


@pytest.mark.parametrize("height", [4.0, 20.0, 35.0, 40.0, 61.0])
@pytest.mark.parametrize(("length", "across"), [(60, 36), (36, 60)])
def test_boards_of_a_course_cost_as_counted_one_by_one(height: float, length: int, across: int) -> None:
    made = field(130, height)
    _, lower, _, upper = made.box
    course = Course(made, (lower, upper), inches(length), inches(across))
    left, right = course.ends
    edges = [left, *(left + inches(at) for at in (0.03, 4, 5.9, 6, 30, 36, 36.1, 60, 60.1, 90)), right]
    quick = course._costs(edges)
    for start, end in combinations(edges, 2):
        assert quick[start, end] == course.cost(start, end)


def test_a_narrow_board_costs_a_sliver_more() -> None:
    made = field(130, 20)
    _, lower, _, upper = made.box
    course = Course(made, (lower, upper), inches(60), inches(36))
    left, _ = course.ends
    costs = course._costs([left])
    assert costs[left, left + inches(3)] == PIECE + SLIVER
    assert costs[left, left + inches(30)] == PIECE


def test_seams_of_rectangles_are_those_between_boards() -> None:
    layout = own_best_layout(surface(96, 70), SHEET, RULES, Tape.INCH)
    gap = RULES.ticks("boards.gap.between")
    assert len(layout.boards) > 1
    for seam in layout.seams:
        (au, av), (bu, bv) = seam.line
        beside = 0
        for board in layout.boards:
            (left, lower), (right, upper) = board.outline[0], board.outline[2]
            if au == bu:
                beside += gap in (2 * abs(left - au), 2 * abs(right - au)) and lower <= av and upper >= bv
            else:
                near = gap in (2 * abs(lower - av), 2 * abs(upper - av))
                beside += near and left < bu and right > au
        assert beside >= 2


def test_rectangles_and_other_boards_count_together() -> None:
    plain = own_best_layout(surface(96, 70), SHEET, RULES, Tape.INCH)
    notched = own_best_layout(surface(96, 70, notched=True), SHEET, RULES, Tape.INCH)
    assert any(len(board.outline) > 4 for board in notched.boards)
    assert len(notched.seams) >= len(plain.seams) > 0


@pytest.mark.parametrize("along_v", [False, True])
def test_courses_over_one_rectangle_are_as_if_clipped(along_v: bool) -> None:
    made = field_of(surface(96, 70, notched=True), RULES, Tape.INCH.graduation, along_v=along_v)
    left, lower, right, upper = made.box
    gap, clipped = made.limits.gap, replace(made, bands=())
    assert len(made.bands) == 2
    assert made.bands[1].left == left
    at = {made.bands[0].lower, made.bands[0].upper, made.bands[1].lower, made.bands[1].upper, lower, upper}
    levels = sorted({int(level) + by for level in at for by in (-inches(7), -1, 0, 1, inches(7))})
    levels = [level for level in levels if lower <= level <= upper]
    told = 0
    for span in combinations(levels, 2):
        quick, slow = CourseGround(made, span), CourseGround(clipped, span)
        assert (quick.ends, quick.is_box, quick.unbroken) == (slow.ends, slow.is_box, slow.unbroken)
        assert quick.area == pytest.approx(slow.area, abs=1e-3)
        told += quick.is_box
        for edge in (left - 1, left, left + inches(20), right - inches(5), right - gap, right):
            assert quick.runs(edge, gap) == slow.runs(edge, gap)
            if slow.is_box:
                assert quick.upright(edge) == slow.upright(edge)
            for start in (left, left + inches(3), right - inches(30)):
                assert quick.areas(start, edge) == slow.areas(start, edge)
                assert quick.boxes(start, edge) == slow.boxes(start, edge)
    assert told > 20
    for level in levels:
        assert row_runs(made, level) == row_runs(clipped, level)


def test_a_field_is_made_once_for_a_surface_and_anew_for_another() -> None:
    step = Tape.INCH.graduation
    one, other = surface(96, 70), surface(90, 70)
    assert field_of(one, RULES, step, along_v=False) is field_of(one, RULES, step, along_v=False)
    assert field_of(one, RULES, step, along_v=True).box == tuple(
        field_of(one, RULES, step, along_v=False).box[number] for number in (1, 0, 3, 2)
    )
    assert field_of(other, RULES, step, along_v=False).box != field_of(one, RULES, step, along_v=False).box
