"""For the same sheets a plan set more boards than needed (a floor of two had four), to keep a larger offcut.

It could also buy more sheets than plain practice without a word of the rule that practice breaks.
"""

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.steps.plan import PlanResult
from said import worked

JOB = """
name: one surface
practice: us
date: 2026-11-25
tape: inch
stock:
  - {{id: board, size: [{short} in, {long} in], thickness: 1/2 in, for: [floor, wall]}}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: {wide} in, B-C: {deep} in, C-D: {wide} in, D-A: {deep} in}}
    diagonals: {{A-C: {across} mm, B-D: {across} mm}}
    heights: {{A: {high} in, B: {high} in, C: {high} in, D: {high} in}}
{surface}
"""
FLOOR = """
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 15 1/4 in}
      openings:
        - {id: flange, kind: flange, side: A-B, left: 20 in, out: 12 in, diameter: 4 1/2 in}
"""
WALL = "    walls: [{{wall: A-B, framing: {{spacing: 16 in, first: {first} in}}}}]"


def planned(sheet: tuple[int, int], room: tuple[int, int, int], surface: str, effort: int) -> PlanResult:
    wide, deep, high = room
    text = JOB.format(
        short=sheet[0],
        long=sheet[1],
        wide=wide,
        deep=deep,
        high=high,
        across=round((wide**2 + deep**2) ** 0.5 * 25.4),
        surface=surface,
    )
    return plan_job(read_job_text(text), effort=effort)


@pytest.mark.parametrize("effort", [0, 1])
@pytest.mark.parametrize(
    ("sheet", "room", "surface", "sheets", "boards"),
    [
        ((48, 60), (41, 109, 108), FLOOR, 2, 2),
        ((36, 60), (86, 74, 108), WALL.format(first=8), 5, 5),
        ((36, 60), (63, 79, 84), WALL.format(first=8), 3, 5),
    ],
)
def test_no_board_more_than_needed(
    sheet: tuple[int, int], room: tuple[int, int, int], surface: str, sheets: int, boards: int, effort: int
) -> None:
    plan = planned(sheet, room, surface, effort).plan
    assert (len(plan.sheets), sum(len(surface.boards) for surface in plan.surfaces)) == (sheets, boards)


def test_a_whole_sheet_goes_up_whole() -> None:
    plan = planned(
        (36, 60), (60, 72, 96), "    floor: {framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}}", 1
    )
    assert len(plan.plan.sheets) == len(plan.plan.pieces)


@pytest.mark.parametrize("wide", range(50, 150, 20))
def test_more_sheets_than_practice_only_where_practice_breaks_a_rule_that_is_named(wide: int) -> None:
    result = planned((48, 96), (wide, 70, 100), WALL.format(first=3), 0)
    for name, count in result.plan.counts.items():
        told = result.plan.workings[f"boards-practice@stock/{name}"]
        if count.used > told.result:
            assert any("(boards." in said for said in worked(told).argument)
