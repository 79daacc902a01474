"""Whatever boards of a small wall are up: planned again it verifies, keeps them, and takes no more in all."""

import json

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import firstcourse
from firstcourse.geometry import bounds
from firstcourse.plan import Board
from firstcourse.steps import PlanResult
from proving import verify

OPENING = ", openings: [{id: hole, kind: niche, left: 20 in, bottom: 40 in, width: 14 in, height: 20 in}]"


MOST_AT_WALL = 4_064
"""The widest gap at a wall, 1/4 in [ticks]."""


def apart(before: list[Board], after: PlanResult, name: str) -> int:
    """How far the sides of a board moved at the most [ticks]."""
    now = {board.id: board for surface in after.plan.surfaces for board in surface.boards}
    was = next(board for board in before if board.id == name)
    pairs = zip(bounds(was.outline), bounds(now[name].outline), strict=True)
    return max(abs(one - other) for one, other in pairs)


@st.composite
def walls(draw: st.DrawFn) -> str:
    long, high = draw(st.integers(50, 130)), draw(st.integers(70, 100))
    first = draw(st.integers(2, 16))
    diagonal = (long**2 + 60**2) ** 0.5
    return f"""
name: one wall
date: 2026-11-25
tape: {draw(st.sampled_from(["inch", "mm"]))}
stock: [{{id: board, size: [{draw(st.sampled_from(["36 in, 60 in", "32 in, 48 in"]))}], thickness: 1/2 in}}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: {long} in, B-C: 60 in, C-D: {long} in, D-A: 60 in}}
    diagonals: {{A-C: {diagonal:.2f} in, B-D: {diagonal:.2f} in}}
    height: {high} in
    walls:
      - {{wall: A-B, framing: {{spacing: 16 in, first: {first} in}}{draw(st.sampled_from(["", OPENING]))}}}
"""


@given(text=walls(), chosen=st.integers(0, 2**20 - 1), studs=st.integers(2, 32))
@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_what_is_up_stays_and_the_rest_takes_no_more(text: str, chosen: int, studs: int) -> None:
    session = firstcourse.Session(text)
    first = session.plan(effort=0)
    boards = [board for surface in first.plan.surfaces for board in surface.boards]
    up = [board for number, board in enumerate(boards) if chosen >> number & 1]
    session.mark_done(first.plan, boards=[board.id for board in up])
    again = session.plan(effort=0)
    assert verify(json.loads(again.document)).verified
    change = firstcourse.difference(first, again).replanned
    assert set(change.up) == {board.id for board in up}
    # Nothing was found, so nothing moves; at a wall a board may end otherwise, where that saves a thin cut.
    assert (change.new, change.gone) == ((), ())
    assert all(apart(boards, again, name) <= MOST_AT_WALL for name in change.moved)
    assert change.sheets.after["board"] <= change.sheets.before["board"] + 1
    # All studs stand elsewhere: what is up stays all the same.
    session.edit("rooms[1].walls[1].framing.first", f"{studs / 2} in")
    found = session.plan(effort=0)
    assert verify(json.loads(found.document)).verified
    now = {board.id: board for surface in found.plan.surfaces for board in surface.boards}
    assert all(now[board.id].fixed and now[board.id].outline == board.outline for board in up)
