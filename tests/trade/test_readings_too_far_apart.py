"""Readings further apart than the straightedge passed it: "Worst gap 0.00 mm, holds" stood beside a 15 mm hump.

A straightedge gives a verdict only of readings that lie under it together with two others; of the rest the sheet
and the findings say that it cannot tell, what is known, and how close to read.
"""

import datetime

import pytest

from firstcourse.findings import Severity
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps.judging import JobJudgement, judge_job
from firstcourse.survey import survey_job
from firstcourse.words import SaidWorking
from said import all_said, worked

RULES = load_rules(datetime.date(2026, 11, 25))
LONG, SHORT = "10' 0\"", "2' 0\""
SPOTS = [(12, 12, 0), (150, 12, 0), (288, 12, 0), (12, 108, 0), (150, 108, 0.59), (288, 108, 0), (12, 204, 0),
         (150, 204, 0), (288, 204, 0)]  # fmt: skip
JOB = """
name: large kitchen
date: 2026-11-25
tape: inch
rooms:
- name: kitchen
  corners: [A, B, C, D]
  sides: {A-B: 25', B-C: 18', C-D: 25', D-A: 18'}
  diagonals: {A-C: 30' 9-9/16", B-D: 30' 9-9/16"}
  floor:
    tile: {kind: ceramic, thickness: 3/8 in, edge: 24 in}
"""


def judged(spots: list[tuple[float, float, float]], gaps: str = "") -> JobJudgement:
    rows = "".join(f"    - {{left: {u} in, out: {v} in, height: {h} in}}\n" for u, v, h in spots)
    job = read_job_text(JOB + (f"    spots:\n{rows}" if spots else "") + gaps)
    return judge_job(job, survey_job(job, RULES), RULES)


def sheets_of(done: JobJudgement) -> list[SaidWorking]:
    return [worked(one) for one in done.workings.values() if one.formula == "ground-straightedge"]


def untold(done: JobJudgement) -> dict[str, Severity]:
    return {f.limit.partition(" under ")[2]: f.severity for f in all_said(done.findings) if f.code == "SUI-404"}


def test_a_hump_between_readings_further_apart_than_the_straightedge_does_not_hold_nor_pass() -> None:
    # The columns lie 8 ft apart, so that three of a row are 16 ft; along the rows they lie 11 ft 6 in apart.
    done = judged(SPOTS)
    sheets = sheets_of(done)
    assert [f"{sheet.result} {sheet.unit}" for sheet in sheets] == ["cannot tell", "cannot tell"]
    assert not any("holds" in text for sheet in sheets for text in sheet.values.values())
    # What is known: no two parallel planes hold all readings that are closer than some 10 mm.
    assert float(sheets[0].values["known"].split()[-3]) > 7 / 25.4
    assert untold(done) == {LONG: Severity.FIX, SHORT: Severity.FIX}
    said = next(f for f in all_said(done.findings) if f.code == "SUI-404")
    assert "between two parallel planes" in said.measured and "5' 0\" apart or closer" in said.remedy


def test_one_reading_that_no_straightedge_reaches_is_named_and_the_rest_do_not_pass_for_it() -> None:
    close = [(12 + 30 * i, 12 + 30 * j, 0.0) for i in range(3) for j in range(3)]
    done = judged([*close, (280, 200, 0.59)])
    sheet, short = sheets_of(done)
    assert f"{sheet.result} {sheet.unit}" == f"{short.result} {short.unit}" == "cannot tell"
    assert sheet.values["too far from others for it"] == "left 23' 4\" out 16' 8\""


def test_a_gap_seen_anywhere_fails_whatever_else_is_unseen() -> None:
    close = [(12 + 30 * i, 12 + 30 * j, 0.5 if (i, j) == (1, 1) else 0.0) for i in range(3) for j in range(3)]
    done = judged([*close, (280, 200, 0.0)])
    assert "DOES NOT HOLD" in sheets_of(done)[0].values["limit"]
    assert "SUI-401" in {finding.code for finding in all_said(done.findings)}


@pytest.mark.parametrize(
    ("gaps", "left"),
    [
        ("    straightedge: [{reach: 10 ft, gap: 1/16 in}]\n", set()),
        ("    straightedge: [{reach: 10 ft, gap: 1/8 in}]\n", {SHORT}),
        ("    straightedge: [{reach: 2 ft, gap: 1/16 in}]\n", {LONG}),
        ("    straightedge: [{reach: 6 ft, gap: 1/8 in}]\n", {LONG, SHORT}),
    ],
)
@pytest.mark.parametrize("read", [True, False])
def test_a_straightedge_that_was_laid_tells_of_its_own_length_alone(gaps: str, left: set[str], read: bool) -> None:
    assert set(untold(judged(SPOTS if read else [], gaps))) == left
