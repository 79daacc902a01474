"""A floor that climbs a wall, and a sheet named where it may not be used, were planned and then not verified."""

import pytest

from firstcourse.errors import JobError
from firstcourse.job import read_job_text

JOB = """\
name: Slips
practice: us
date: 2026-11-25
tape: inch
stock:
  - {id: ceiling board, size: [36 in, 60 in], thickness: 1/2 in, for: [ceiling]}
  - {id: any board, size: [36 in, 60 in], thickness: 1/2 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5' 0", B-C: 7' 6", C-D: 5' 0", D-A: 7' 6"}
    diagonals: {A-C: 9' 0-1/8", B-D: 9' 0-1/8"}
    height: 8'
    levels: {A: 1/4 in, B: 0 in, C: 0 in, D: 0 in}
    walls:
      - {wall: A-B, foot: floor, stock: [any board], framing: {spacing: 16 in, first: 16 in}}
"""


def test_the_job_itself_is_sound() -> None:
    assert read_job_text(JOB).rooms


def test_a_floor_that_climbs_is_a_slip() -> None:
    with pytest.raises(JobError) as caught:
        read_job_text(JOB.replace("A: 1/4 in", "A: 100 m"))
    said = [problem for problem in caught.value.problems if problem.field == "rooms[1].levels"]
    assert len(said) == 2 and all(
        problem.line == 14 and "no floor is so steep" in problem.message for problem in said
    )


SHORT = JOB.replace("5' 0", "0' 6").replace("9' 0-1/8", "7' 6-3/16").replace("wall: A-B", "wall: D-A")


def test_beside_a_short_wall_a_floor_may_step_up_as_a_stair_does_and_no_more() -> None:
    assert read_job_text(SHORT.replace("A: 1/4 in", "A: 200 mm")).rooms
    with pytest.raises(JobError, match=r"between the ends of A-B the floor rises .*: no floor is so steep"):
        read_job_text(SHORT.replace("A: 1/4 in", "A: 260 mm"))


def test_a_sheet_for_ceilings_is_not_put_on_a_wall() -> None:
    with pytest.raises(
        JobError, match="'ceiling board' is for a ceiling by its own `for`, not for a wall"
    ) as caught:
        read_job_text(JOB.replace("stock: [any board]", "stock: [any board, ceiling board]"))
    assert caught.value.problems[0].field == "rooms[1].walls[1].stock[2]"
