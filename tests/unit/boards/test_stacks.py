"""Stacks with open seams: whatever seams are taken, the boards built are those foreseen."""

import datetime
from itertools import pairwise
from random import Random

import pytest

from firstcourse.boards import OpenStack, build_layout, least_board_area, open_stacks
from firstcourse.plan import (
    Opening,
    OpeningKind,
    Side,
    SideKind,
    Stock,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
)
from firstcourse.rules import load_rules
from firstcourse.units import Tape, inches

RULES = load_rules(datetime.date(2026, 1, 1))
STOCK = (Stock(id="3x5", size=(inches(36), inches(60)), thickness=inches(0.5), kind="fibre_cement"),)


def _box(left: float, lower: float, right: float, upper: float) -> tuple[tuple[int, int], ...]:
    a, b, c, d = inches(left), inches(lower), inches(right), inches(upper)
    return ((a, b), (c, b), (c, d), (a, d))


WALL = Surface(
    id="bath/wall/A-B",
    room="bath",
    kind=SurfaceKind.WALL,
    outline=_box(0, 0, 81.5, 84),
    sides=(Side(kind=SideKind.FOOT), *(Side(kind=SideKind.PERIMETER),) * 3),
    supports=tuple(
        Support(id=f"stud {at}", kind=SupportKind.STUD, outline=_box(at, 0, at + 1.5, 84))
        for at in range(0, 81, 16)
    ),
    framing_axis="v",
)
NICHE = Opening(id="niche", kind=OpeningKind.NICHE, outline=_box(17, 40, 31.5, 60))
FLOOR = Surface(
    id="bath/floor",
    room="bath",
    kind=SurfaceKind.FLOOR,
    outline=((0, 0), (inches(90), 0), (inches(90), inches(50)), (inches(40), inches(55)), (0, inches(70))),
    sides=(Side(kind=SideKind.PERIMETER),) * 5,
    supports=(),
    framing_axis="",
)
SURFACES = (WALL, WALL.model_copy(update={"openings": (NICHE,)}), FLOOR)


def drawn_seams(stack: OpenStack, random: Random) -> tuple[tuple[int, ...], ...] | None:
    """Legal edges of every course, ends included; None where neighbours come too close in every draw."""
    draws = (_draw(stack, random) for _ in range(40))
    return next((rows for rows in draws if rows is not None), None)


def _draw(stack: OpenStack, random: Random) -> tuple[tuple[int, ...], ...] | None:
    rows = []
    for course in stack.courses:
        last, row = len(course.edges) - 1, [0]
        onward = {i: [j for a, j, _ in course.boards if a == i] for i in range(last)}
        leads = {last}
        for i in range(last - 1, -1, -1):
            if any(j in leads for j in onward[i]):
                leads.add(i)
        while row[-1] != last:
            row.append(random.choice([j for j in onward[row[-1]] if j in leads]))
        rows.append(tuple(row))
    places = [[course.edges[n] for n in row[1:-1]] for course, row in zip(stack.courses, rows, strict=True)]
    stagger = RULES.ticks("boards.stagger.end_joints")
    close = any(abs(a - b) < stagger for low, high in pairwise(places) for a in low for b in high)
    return None if close else tuple(rows)


@pytest.mark.parametrize("surface", SURFACES, ids=["wall", "wall with a niche", "floor with a slope"])
def test_boards_are_those_foreseen_and_keep_the_rules(surface: Surface) -> None:
    random = Random(1)
    built = 0
    for stack in open_stacks(surface, STOCK, RULES, Tape.INCH):
        rows = drawn_seams(stack, random)
        if rows is None:
            continue
        layout = build_layout(surface, stack.choice("3x5", rows), STOCK, RULES, Tape.INCH)
        foreseen = [
            size
            for course, row in zip(stack.courses, rows, strict=True)
            for i, j, sizes in course.boards
            if (i, j) in set(pairwise(row))
            for size in sizes
        ]
        assert sorted(piece.blank for piece in layout.pieces) == sorted(foreseen)
        assert not {finding.code for finding in layout.findings} - {"BRD-204"}
        assert layout.added_supports == ()
        built += 1
    assert built > 3


def test_without_a_sheet_there_is_no_stack() -> None:
    assert open_stacks(WALL, (), RULES, Tape.INCH) == ()


def test_the_least_area_is_less_than_any_layout_but_not_by_much() -> None:
    area = least_board_area(WALL, RULES, Tape.INCH)
    assert 0.94 * inches(81.25) * inches(83.625) < area < inches(81.25) * inches(83.625)


def test_between_two_seams_there_is_room_for_a_board() -> None:
    """Sheets whose sides differ by less than a gap bring seams so near that only a gap lies between them."""
    column = Opening(id="column", kind=OpeningKind.COLUMN, outline=_box(30, 20, 42, 32))
    floor = FLOOR.model_copy(update={"openings": (column,)})
    sheets = tuple(STOCK[0].model_copy(update={"id": side, "size": (inches(36), inches(float(side)))})
                   for side in ("60", "59.9375"))  # fmt: skip
    gap = RULES.ticks("boards.gap.between")
    for stack in open_stacks(floor, sheets, RULES, Tape.INCH):
        for course in stack.courses:
            for i, j, _ in course.boards:
                if course.boards != ((0, 1, ()),):
                    assert course.edges[j] - course.edges[i] > gap
