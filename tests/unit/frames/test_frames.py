"""Ceilings, runs of joists, steel studs and practices without frame rules, from job to judgement."""

import datetime
from pathlib import Path

import pytest

from firstcourse.errors import JobError
from firstcourse.findings import Severity
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps.judging import JobJudgement, judge_job
from firstcourse.survey import survey_job
from firstcourse.units import Tape
from firstcourse.words import Speaker
from said import all_said

DAY = datetime.date(2026, 11, 25)
LIMBER = (Path(__file__).parents[3] / "examples" / "limber-floor" / "job.yaml").read_text(encoding="utf-8")
ROOM = """
name: Frames
practice: {practice}
date: 2026-11-25
tiles:
  - {{id: square, kind: ceramic, size: [6 in, 6 in], thickness: 1/4 in}}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 60 in, B-C: 96 in, C-D: 60 in, D-A: 96 in}}
    diagonals: {{A-C: 113 1/4 in, B-D: 113 1/4 in}}
    height: 8'
    {what}
"""
CEILING = (
    "ceiling: {{framing: {{parallel_to: A-B, spacing: {spacing} in, first: 8 in}}, exposure: {{zone: damp}}, "
    "joists: {{span: {span} in, size: 2x6, species: spf, grade: no2, above: {above}}}, tiling: {{tile: square}}}}"
)
STUDS = (
    "walls: [{{wall: A-B, framing: {{spacing: 16 in, first: 15 in}}, "
    "exposure: {{zone: damp}}, studs: {{{studs}}}}}]"
)


def judged(text: str) -> JobJudgement:
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice)
    return judge_job(job, survey_job(job, rules), rules)


def room(what: str, practice: str = "us") -> JobJudgement:
    return judged(ROOM.format(practice=practice, what=what))


def ceiling(span: int, above: str = "attic_storage", spacing: int = 16) -> JobJudgement:
    return room(CEILING.format(span=span, above=above, spacing=spacing))


def codes(done: JobJudgement, severity: Severity) -> set[str]:
    return {finding.code for finding in all_said(done.findings) if finding.severity is severity}


def test_a_ceiling_is_judged_with_what_hangs_below_it():
    done = ceiling(96)
    (sheet,) = done.structures
    assert (sheet.surface, sheet.kind, sheet.holds) == ("bath/ceiling", "ceiling", True)
    assert [layer.of for layer in sheet.layers] == ["board", "mortar", "tile"]
    shown = Speaker("us", Tape.INCH).sheet(sheet, done.workings)
    limits = {line.check: line.limit for line in shown.lines}
    assert limits["live deflection (finish)"] == "at least L/360"
    assert limits["live deflection (code)"] == "at least L/240"
    assert any("no limit is published" in line for line in shown.unjudged)


def test_a_ceiling_too_long_stops_and_names_the_span_that_would_hold():
    done = ceiling(170)
    assert {"SUI-107"} <= codes(done, Severity.STOP)
    assert any('" at most (' in finding.remedy for finding in all_said(done.findings))


def test_a_floor_above_loads_more_than_an_attic():
    failing = [
        sum(not line.holds for line in ceiling(130, above).structures[0].lines)
        for above in ("attic", "attic_storage", "floor")
    ]
    assert failing == sorted(failing) and failing[0] == 0 < failing[-1]


def test_wide_spacing_of_ceiling_joists_is_a_house_rule_and_stops_nothing():
    done = ceiling(80, spacing=24)
    assert "SUI-112" in codes(done, Severity.FIX) and not codes(done, Severity.STOP)


def test_known_spans_are_judged_by_their_own_coefficients():
    run = LIMBER.replace("span: 12' 6\"", "span: 12' 6\"\n        spans: [12' 6\", 12' 6\"]")
    simple = {line.name: line for line in judged(LIMBER).structures[0].lines}
    lines = {line.name: line for line in judged(run).structures[0].lines}
    # Two equal spans: the same moment over the support, far less deflection.
    assert lines["bending"].found.value == pytest.approx(simple["bending"].found.value)
    assert not simple["live_deflection_code"].holds and lines["live_deflection_code"].holds
    assert "run" in judged(run).structures[0].facts


def test_a_run_must_hold_its_longest_span():
    with pytest.raises(JobError, match="longest of spans"):
        judged(LIMBER.replace("span: 12' 6\"", "span: 12' 6\"\n        spans: [10', 11']"))


def test_a_gauge_alone_is_asked_about_and_says_what_it_may_be():
    done = room(STUDS.format(studs="steel: 3 5/8 in"))
    (asked,) = [finding for finding in all_said(done.findings) if finding.code == "SUI-310"]
    assert "30 mil" in asked.message and "33 mil" in asked.message and "mils" in asked.remedy
    assert not any("stiffness" in line.name for line in done.structures[0].lines)


def test_a_makers_table_goes_before_the_shape():
    plain = room(STUDS.format(studs="steel: 3 5/8 in, mils: 33"))
    table = room(STUDS.format(studs="steel: 3 5/8 in, mils: 33, inertia_in4: 0.551"))
    ratio = [
        next(line.found for line in done.structures[0].lines if line.name == "stud_stiffness_tile")
        for done in (plain, table)
    ]
    assert ratio[0].value < ratio[1].value


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_a_practice_without_frame_rules_says_so_once(practice: str):
    told = room(STUDS.format(studs="size: 2x4"), practice)
    (only,) = [finding for finding in all_said(told.findings) if finding.code == "SUI-901"]
    assert f"{practice.upper()} practice" in only.message and told.structures == ()
    # A rule that the practice lacks is none that the finding could be held to.
    assert only.severity is Severity.NOTE and only.rule == ""
    untold = room(
        CEILING.replace(
            "joists: {{span: {span} in, size: 2x6, species: spf, grade: no2, above: {above}}}, ", ""
        ).format(spacing=16),
        practice,
    )
    (note,) = [finding for finding in all_said(untold.findings) if finding.code == "SUI-910"]
    assert "no values for frames in this practice" in note.message
    # Nothing that can be entered brings a rule into the book.
    assert note.remedy == "Have an engineer, or who is licensed for it, confirm the frames by the local code."
    more = room("floor: {framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}}", practice)
    (note,) = [finding for finding in all_said(more.findings) if finding.code == "SUI-910"]
    assert "Enter what stands in brackets" in note.remedy


WALL = "walls: [{{wall: A-B, framing: {framing}{opening}}}]"
WIDE = "{spacing: 24 in, first: 6 in}"


@pytest.mark.parametrize("practice", ["us", "uk", "au"])
def test_a_wide_spacing_is_told_of_studs_of_which_nothing_else_is_known(practice: str):
    (told,) = [
        one
        for one in all_said(room(WALL.format(framing=WIDE, opening=""), practice).findings)
        if one.code == "SUI-301"
    ]
    assert told.severity is Severity.FIX
    assert told.where == "bath: wall A-B"
    assert "add a stud" in told.remedy


def test_a_wide_spacing_is_told_as_the_tape_reads():
    text = ROOM.format(practice="uk", what=WALL.format(framing="{spacing: 600 mm, first: 24 mm}", opening=""))
    done = judged(text.replace("date:", "tape: mm\ndate:", 1))
    (told,) = [finding for finding in all_said(done.findings, Tape.MM) if finding.code == "SUI-301"]
    assert (told.measured, told.limit) == ("600 mm", "at most 450 mm")
    assert "farther apart than 450 mm" in told.remedy


def test_studs_at_the_widest_spacing_allowed_are_not_told():
    done = room(WALL.format(framing="{spacing: 16 in, first: 6 in}", opening=""))
    assert "SUI-301" not in {finding.code for finding in all_said(done.findings)}


@pytest.mark.parametrize(("hole", "told"), [("", True), ("12 3/4 in", False), ("18 in", True)])
def test_a_bay_that_an_opening_takes_up_is_carried_by_its_own_frame(hole: str, told: bool):
    """The bay from 12 in to 36 in is wide; a window from face to face of its studs leaves no board to cross it."""
    members = "{members: [{at: 1 in}, {at: 12 in}, {at: 36 in}, {at: 48 in}, {at: 59 in}]}"
    window = (
        f", openings: [{{id: light, kind: window, left: {hole}, bottom: 40 in, width: 22 1/2 in, height: 30 in}}]"
    )
    done = room(WALL.format(framing=members, opening=window if hole else ""))
    assert ("SUI-301" in {finding.code for finding in all_said(done.findings)}) is told


def test_a_wide_spacing_of_joists_is_told():
    done = room("floor: {{framing: {{parallel_to: A-B, spacing: 30 in, first: 8 in}}}}".format())
    (told,) = [finding for finding in all_said(done.findings) if "joist spacing" in finding.message.lower()]
    assert (told.code, told.severity, told.measured) == ("SUI-101", Severity.STOP, "30 in")
