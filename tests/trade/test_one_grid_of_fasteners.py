"""Boards with a notch or a jog got a second grid beside the first: 164 screws where their neighbour had 95.

One grid is spread over what a board covers, members close together share a row, and no two fasteners of a board
stand nearer than the rule.
"""

import datetime
import math
from itertools import combinations

import pytest

from firstcourse.boards import fasten
from firstcourse.plan import Board, Ring, Support, SupportKind, Surface, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.units import Tape, inches

RULES = load_rules(datetime.date(2026, 1, 1))
APART = RULES.ticks("fastening.apart.min")


def ring(*points: tuple[float, float]) -> Ring:
    return tuple((inches(u), inches(v)) for u, v in points)


PLAIN = ring((0, 0), (36, 0), (36, 60), (0, 60))
JOG = ring((0, 0), (36, 0), (36, 30), (34, 30), (34, 60), (0, 60))
FOOT_JOG = ring((0, 0), (31, 0), (31, 2), (36, 2), (36, 60), (0, 60))
ELL = ring((0, 0), (36, 0), (36, 25), (17, 25), (17, 60), (0, 60))


def screws(outline: Ring, *, screwed: bool = False) -> tuple[tuple[int, int], ...]:
    panel = ring((0, 0), (96, 0), (96, 96), (0, 96))
    rows = [(inches(u), inches(v)) for u in range(8, 96, 16) for v in range(3, 96, 6)] if screwed else []
    done = fasten(
        Surface(
            id="r/floor",
            room="r",
            kind=SurfaceKind.FLOOR,
            outline=panel,
            supports=(Support(id="panel", kind=SupportKind.PANEL, outline=panel),),
            panel_screws=tuple(rows),
            boards=(Board(id="r/floor#1", piece="P", outline=outline),),
        ),
        RULES,
        Tape.INCH,
    )
    assert not done.findings
    return done.boards[0].fasteners


@pytest.mark.parametrize("outline", [JOG, FOOT_JOG, ELL])
@pytest.mark.parametrize("screwed", [False, True])
def test_a_notched_board_takes_little_more_than_a_plain_one(outline: Ring, screwed: bool) -> None:
    assert len(screws(outline, screwed=screwed)) <= 1.12 * len(screws(PLAIN, screwed=screwed))


@pytest.mark.parametrize("outline", [PLAIN, JOG, FOOT_JOG, ELL])
def test_no_two_stand_too_near(outline: Ring) -> None:
    for screwed in (False, True):
        for one, other in combinations(screws(outline, screwed=screwed), 2):
            assert math.dist(one, other) >= APART - 2


def test_studs_side_by_side_share_a_row() -> None:
    studs = [(0.0, 1.5), (1.5, 3.0), (16.0, 17.5), (32.0, 33.5)]
    wall = Surface(
        id="r/wall/A-B",
        room="r",
        kind=SurfaceKind.WALL,
        outline=ring((0, 0), (34, 0), (34, 60), (0, 60)),
        framing_axis="v",
        supports=tuple(
            Support(
                id=f"stud {low}", kind=SupportKind.STUD, outline=ring((low, 0), (high, 0), (high, 60), (low, 60))
            )
            for low, high in studs
        ),
        boards=(Board(id="r/wall/A-B#1", piece="P", outline=ring((0, 0), (33.5, 0), (33.5, 60), (0, 60))),),
    )
    done = fasten(wall, RULES, Tape.INCH)
    assert not done.findings
    columns = {u for u, _ in done.boards[0].fasteners}
    assert len(columns) == 3 and min(columns) < inches(1.5)
