"""The survey drew sides square by up to 1.1 mm without a word, and nothing asked what the tape had touched."""

import math
import re

import pytest

from firstcourse.app import report_lines
from firstcourse.findings import Severity
from firstcourse.job import Job, job_guide, read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.survey import SurveyResult, survey_job
from firstcourse.survey.report import report
from firstcourse.units import to_mm
from firstcourse.words import Speaker
from said import worked

JOB = """\
name: Askew
date: 2026-11-25
tape: TAPE
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {SIDES}
    diagonals: {DIAGONALS}
    height: 8 ft
    TAPED
    walls:
      - {wall: A-B, framing: {spacing: 16 in, first: 16 in}}
"""
INCHES = ("inch", "A-B: 60 in, B-C: 96 in, C-D: 60 1/16 in, D-A: 96 in", "A-C: 113 1/4 in, B-D: 113 3/16 in")


def surveyed(
    taped: str = "", *, tape: str = INCHES[0], sides: str = INCHES[1], diagonals: str = INCHES[2]
) -> tuple[Job, SurveyResult]:
    text = JOB.replace("TAPED", taped).replace("TAPE", tape).replace("SIDES", sides)
    job = read_job_text(text.replace("DIAGONALS", diagonals))
    return job, survey_job(job, load_rules(job.date, job.practice))


@pytest.mark.parametrize(
    ("tape", "sides", "diagonals"),
    [INCHES, ("mm", "A-B: 1500 mm, B-C: 2400 mm, C-D: 1500 mm, D-A: 2401 mm", "A-C: 2830 mm, B-D: 2831 mm")],
)
def test_every_move_of_a_corner_is_told(tape: str, sides: str, diagonals: str) -> None:
    job, done = surveyed(tape=tape, sides=sides, diagonals=diagonals)
    (room,) = done.rooms
    # What was moved is what drawn and adjusted corners differ by, wherever the drawing lies.
    drawn = {name: (to_mm(u), to_mm(v)) for name, (u, v) in room.plan.items()}
    shifts = {
        name: (drawn[name][0] - at[0], drawn[name][1] - at[1]) for name, at in room.adjustment.corners_mm.items()
    }
    spread = max(math.dist(shifts[a], shifts[b]) for a in room.corners for b in room.corners)
    assert 0.05 < spread <= 2 * max(room.squared_mm.values()) + 0.01
    told = worked(done.workings["survey-square@bath"], job.tape)
    assert float(told.result) > 0 and told.unit.endswith("at most")
    assert f"by {told.result} " in "\n".join(report_lines(room, Speaker("us", job.tape)))
    assert {row.squared for row in report(room).corners} == {round(moved, 3) for moved in room.squared_mm.values()}


def test_what_the_tape_touched_is_asked_and_printed() -> None:
    told = {}
    for taped in ("", "taped_to: studs", "taped_to: finish"):
        job, done = surveyed(taped)
        (line,) = [line for line in report_lines(done.rooms[0], Speaker("us", job.tape)) if "taped to:" in line]
        assert worked(done.workings["survey-checks@bath"]).values["taped to"] in line
        told[taped] = (line, [f.severity for f in done.findings if f.code == "SUR-105"])
    assert "the job does not say" in told[""][0] and "does not say" not in told["taped_to: studs"][0]
    assert [found for _line, found in told.values()] == [[], [], [Severity.FIX]]


def test_the_report_is_told_in_spanish_with_the_same_figures() -> None:
    job, done = surveyed("taped_to: studs")
    told = {tongue: report_lines(done.rooms[0], Speaker("us", job.tape, tongue=tongue)) for tongue in ("en", "es")}
    assert len(told["es"]) == len(told["en"])
    assert "4 esquinas, 6 lecturas" in told["es"][0] and "montantes" in "\n".join(told["es"])
    assert [re.findall(r"\d+", line) for line in told["es"]] == [re.findall(r"\d+", line) for line in told["en"]]


def test_what_a_foot_is_is_explained() -> None:
    (row,) = [line for line in job_guide().splitlines() if line.startswith("| `foot` ")]
    for word in ("rim", "kerb", "boards.bottom", "boards.gap.foot", "no gap"):
        assert word in row


def test_corners_whose_mean_lies_between_two_ticks_are_proved() -> None:
    """Such a room was refused: the proof rounded the mean from another corner of the room than the survey did."""
    sides = "A-B: 1500 mm, B-C: 1500 mm, C-D: 1501 mm, D-A: 1500 mm"
    text = JOB.replace("TAPED", "").replace("TAPE", "mm").replace("SIDES", sides)
    text = text.replace("DIAGONALS", "A-C: 2121 mm, B-D: 2122 mm")
    planned = plan_job(read_job_text(text), effort=0).plan
    working = planned.workings["survey-square@bath"]
    assert working.formula == "survey-square"
