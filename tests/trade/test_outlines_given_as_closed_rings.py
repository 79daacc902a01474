"""An outline whose first point is repeated at its end, as drawing programs give it, divided by nothing."""

import pytest

from firstcourse.errors import JobError
from firstcourse.job import Job, read_job_text
from firstcourse.plan import Surface
from firstcourse.rules import load_rules
from firstcourse.survey import survey_job

OPEN = "[10 in, 10 in], [20 in, 10 in], [20 in, 20 in], [12 in, 20 in]"
CLOSED = f"{OPEN}, [10 in, 10 in]"
DOUBLED = f"[10 in, 10 in], {OPEN}"
ON_A_SIDE = f"{OPEN.replace('[20 in, 20 in]', '[20 in, 15 in], [20 in, 20 in]')}"


def surfaces_of(points: str) -> tuple[Surface, ...]:
    job: Job = read_job_text(f"""
name: ring
practice: us
date: 2026-11-25
tape: inch
stock: [{{id: b, size: [36 in, 60 in], thickness: 1/4 in}}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 60 in, B-C: 96 in, C-D: 60 in, D-A: 96 in}}
    diagonals: {{B-D: 113 1/4 in}}
    height: 96 in
    floor:
      openings: [{{id: o, kind: other, points: [{points}]}}]
    walls:
      - wall: A-B
        framing: {{spacing: 16 in, first: 16 in}}
        openings: [{{id: o, kind: window, points: [{points}]}}]
""")
    return survey_job(job, load_rules(job.date, job.practice, ())).surfaces


@pytest.mark.parametrize("points", [CLOSED, DOUBLED, ON_A_SIDE])
def test_the_same_outline_however_it_is_written(points: str) -> None:
    assert surfaces_of(points) == surfaces_of(OPEN)


@pytest.mark.parametrize(
    "points", ["[1 in, 1 in], [9 in, 1 in], [1 in, 1 in]", "[1 in, 1 in], [2 in, 2 in], [3 in, 3 in]"]
)
def test_an_outline_without_area_is_told(points: str) -> None:
    with pytest.raises(JobError, match=r"openings\[1\].*has no area"):
        surfaces_of(points)
