"""UK and AU jobs that described their frame opened with a stop, and Australian studs at 450 mm were flagged.

What is published there is held against the frame now: spacing of studs and joists, and panels by their kind. The
rest is a note of what cannot be told and whom to ask, and the work is not halted for want of a table.
"""

import json

import pytest

from firstcourse.findings import Finding
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.steps.judging import judge_job
from firstcourse.survey import survey_job
from proving import verify
from said import all_said

JOB = """
name: one bathroom of a metric practice
practice: PRACTICE
date: 2026-11-25
tape: mm
stock: [{id: board, size: [900 mm, 1200 mm], thickness: 10 mm}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 1800 mm, B-C: 2400 mm, C-D: 1800 mm, D-A: 2400 mm}
    diagonals: {A-C: 3000 mm, B-D: 3000 mm}
    height: 2400 mm
    floor:
      framing: {parallel_to: A-B, spacing: 450 mm, first: 225 mm}
      joists: {span: 3.2 m, stiffness: 500 kN m2}
      panels: {layers: [22 mm], material: chipboard}
      tile: {kind: ceramic, thickness: 10 mm}
    walls:
      - wall: A-B
        framing: {spacing: 450 mm, first: 19 mm}
        studs: {steel: 92 mm, thickness: 0.75 mm}
"""


def found(practice: str, *changes: tuple[str, str]) -> list[Finding]:
    text = JOB.replace("PRACTICE", practice)
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice, job.overrides())
    return list(judge_job(job, survey_job(job, rules), rules).findings)


def named(findings: list[Finding]) -> dict[str, str]:
    return {finding.code: finding.severity for finding in findings}


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_nothing_stops_for_want_of_a_table(practice: str) -> None:
    findings = found(practice)
    told = named(findings)
    assert "stop" not in told.values() and "SUI-301" not in told and "SUI-101" not in told
    notes = [finding for finding in findings if finding.code == "SUI-901"]
    assert {note.at[0] for note in notes} == {"bath/floor", "bath/wall/A-B"}
    told_so = all_said(notes, practice=practice)
    for note in told_so:
        assert note.severity == "note" and "engineer" in note.remedy and "1/360" in note.remedy
    asked = {"uk": "TRADA", "au": "AS 1684.2"}[practice]
    assert all(asked in note.remedy for note in told_so if note.where.endswith("floor"))


CHIPBOARD = "layers: [22 mm], material: chipboard"
JOISTS, STUDS = "spacing: 450 mm, first: 225 mm", "spacing: 450 mm, first: 19 mm"
FAR = (JOISTS, "spacing: 600 mm, first: 225 mm")


@pytest.mark.parametrize(
    ("practice", "panels", "far", "code"),
    [
        ("uk", CHIPBOARD, True, ""),
        ("uk", "layers: [18 mm], material: chipboard", False, ""),
        ("uk", "layers: [18 mm], material: chipboard", True, "SUI-210 stop"),
        ("uk", "layers: [18 mm], material: plywood", True, ""),
        ("uk", "layers: [15 mm]", False, "SUI-210 fix"),
        ("au", "layers: [19 mm], material: chipboard", False, ""),
        ("au", "layers: [18 mm], material: chipboard", False, "SUI-210 stop"),
        ("au", "layers: [17 mm], material: plywood", False, "SUI-212 note"),
    ],
)
def test_panels_are_held_against_kind_and_spacing(practice: str, panels: str, far: bool, code: str) -> None:
    findings = found(practice, (CHIPBOARD, panels), *([FAR] if far else []))
    told = [f"{one.code} {one.severity}" for one in findings if one.code in ("SUI-210", "SUI-212")]
    assert told == ([code] if code else [])


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_studs_at_600_are_told(practice: str) -> None:
    wide = named(found(practice, (STUDS, "spacing: 600 mm, first: 19 mm")))
    assert wide["SUI-301"] == "fix"


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_the_plan_says_what_is_borrowed_and_verifies(practice: str) -> None:
    plan = json.loads(plan_job(read_job_text(JOB.replace("PRACTICE", practice)), effort=0).document)
    assert verify(plan).objections == ()
    rules = {rule["id"]: rule for rule in plan["given"]["rules"]}
    assert rules["frame.ask.deflection"]["taken_from"] == "us"
    assert not rules["framing.stud_spacing.max"].get("taken_from")
