"""Where a board gave way at a wall to spare a thin cut, an end that a notch parts in two moved in one part only.

Its blank then became shorter by less than its part on the sheet, or a tongue came out beside ground left as it
was.
"""

import datetime

import pytest

from firstcourse.boards import resized
from firstcourse.geometry import bounds
from firstcourse.plan import Board, Side, SideKind, Surface, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.units import Tape, ticks_from_mm

RULES = load_rules(datetime.date(2026, 1, 1))
MARK = Tape.INCH.graduation


def ring(*spots: tuple[float, float]) -> tuple[tuple[int, int], ...]:
    return tuple((ticks_from_mm(u), ticks_from_mm(v)) for u, v in spots)


def floor() -> Surface:
    return Surface(
        id="room/floor",
        room="room",
        kind=SurfaceKind.FLOOR,
        outline=ring((0, 0), (1000, 0), (1000, 1000), (0, 1000)),
        sides=(Side(kind=SideKind.PERIMETER),) * 4,
    )


def notched(lower: float) -> Board:
    """A board whose right end, 3.5 mm from the wall, is notched for a pipe; below the notch it ends at `lower`."""
    left, right = 3.5, 996.5
    return Board(
        id="room/floor#1",
        piece="P1",
        outline=ring(
            (left, 3.5),
            (lower, 3.5),
            (lower, 480),
            (800, 480),
            (800, 520),
            (right, 520),
            (right, 996.5),
            (left, 996.5),
        ),
    )


@pytest.mark.parametrize("by", [-MARK, MARK])
def test_the_end_without_a_notch_moves_where_the_other_is_parted(by: int) -> None:
    board = notched(996.3)
    now = resized(floor(), [board], (), 0, 0, by, RULES, MARK)
    assert now is not None
    assert bounds(now.outline)[0] == bounds(board.outline)[0] - by
    assert {u for u, _ in now.outline} - {u for u, _ in board.outline} == {bounds(now.outline)[0]}


def test_a_parted_end_moves_where_its_other_part_lies_far_in() -> None:
    board = notched(900)
    now = resized(floor(), [board], (), 0, 0, MARK, RULES, MARK)
    assert now is not None
    assert bounds(now.outline)[2] == bounds(board.outline)[2] + MARK
