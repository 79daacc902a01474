"""A subfloor of planks, as old houses have it, could not be entered: tile went onto what nobody had asked about.

Planks are entered with their thickness and how they lie. Nothing is set straight onto them: a panel over them is
asked for and judged, their own thickness is held against the joists' spacing, and their mass counts.
"""

import json
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.steps.judging import JobJudgement, judge_job
from firstcourse.survey import survey_job
from firstcourse.words import SaidFinding
from proving import verify
from said import all_said

JOB = """
name: one floor on planks
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5', B-C: 8', C-D: 5', D-A: 8'}
    diagonals: {A-C: 9' 5-1/4", B-D: 9' 5-1/4"}
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      joists: {span: 9', size: 2x10, species: dfl, grade: no2}
      planks: {thickness: 3/4 in, width: 5 1/2 in}
      panels: {layers: [19/32 in]}
      tile: {kind: ceramic, thickness: 3/8 in}
"""
BARE = JOB.replace("      panels: {layers: [19/32 in]}\n", "")


def judged(text: str) -> JobJudgement:
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice, job.overrides())
    return judge_job(job, survey_job(job, rules), rules)


def found(text: str) -> dict[str, SaidFinding]:
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice, job.overrides())
    findings = judge_job(job, survey_job(job, rules), rules).findings
    return {one.code: one for one in all_said(findings, job.tape, job.practice, sources=rules.sources())}


def test_tile_straight_on_planks_stops() -> None:
    told = found(BARE)["SUI-207"]
    assert "with two screws, and" in told.remedy
    assert "three screws, and" in found(BARE.replace("width: 5 1/2 in", "width: 7 1/4 in"))["SUI-207"].remedy
    assert (
        "three where it is wider than 5-1/2 in" in found(BARE.replace(", width: 5 1/2 in", ""))["SUI-207"].remedy
    )
    assert told.severity == "stop" and "19/32 in" in told.limit and "NTCA" in told.source
    plan: dict[str, Any] = json.loads(plan_job(read_job_text(BARE), effort=0).document)
    assert "SUI-207" in {finding["code"] for finding in plan["findings"]}


def test_a_panel_over_planks_is_judged_and_their_mass_counts() -> None:
    planks = "      planks: {thickness: 3/4 in, width: 5 1/2 in}\n"
    with_planks, without = judged(JOB), judged(JOB.replace(planks, ""))
    codes = {finding.code for finding in with_planks.findings}
    assert "SUI-211" in codes and not codes & {"SUI-207", "SUI-208", "SUI-209"}
    assert not [f for f in with_planks.findings if f.severity == "stop"]
    loads = [
        next(line.found.value for line in done.structures[0].lines if line.name == "dead_load")
        for done in (with_planks, without)
    ]
    assert loads[0] - loads[1] == pytest.approx(0.75 * 3.3, abs=0.11)
    assert ("planks", pytest.approx(2.475)) in with_planks.structures[0].other


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"layers: [19/32 in]": "layers: [15/32 in]"}, "SUI-208"),
        ({"3/4 in, width": "1/2 in, width"}, "SUI-209"),
        # At 24 in the code asks 11/16 in square to the joists, 3/4 in on the diagonal.
        ({"3/4 in, width": "11/16 in, width", "spacing: 16 in": "spacing: 24 in"}, ""),
        ({"3/4 in, width": "11/16 in, lie: diagonal, width"}, ""),
        ({"3/4 in, width": "11/16 in, lie: diagonal, width", "spacing: 16 in": "spacing: 24 in"}, "SUI-209"),
        ({"spacing: 16 in": "spacing: 30 in"}, "SUI-209"),
    ],
)
def test_thin_planks_and_panels_stop(changes: dict[str, str], code: str) -> None:
    text = JOB
    for old, new in changes.items():
        assert old in text
        text = text.replace(old, new)
    told = {name: one.severity for name, one in found(text).items() if name in ("SUI-207", "SUI-208", "SUI-209")}
    assert told == ({code: "stop"} if code else {})


def test_uk_floorboards_ask_for_15_mm_over_them() -> None:
    british = JOB.replace("date:", "practice: uk\ndate:").replace("tape: inch", "tape: mm")
    thin = british.replace("layers: [19/32 in]", "layers: [12 mm]").replace("3/4 in, width: 5 1/2 in", "21 mm")
    told = found(thin)
    assert told["SUI-208"].limit == "at least 15 mm" and "BS 5385-3" in told["SUI-208"].source
    assert "SUI-209" not in told
    assert "SUI-208" not in found(thin.replace("[12 mm]", "[15 mm]"))


def test_au_planks_are_told_to_be_unknown_and_whom_to_ask() -> None:
    told = found(JOB.replace("date:", "practice: au\ndate:").replace("tape: inch", "tape: mm"))
    assert told["SUI-212"].severity == "note" and told["SUI-212"].remedy.startswith("Ask ")


def test_a_table_that_cannot_be_read_is_refused_by_its_row() -> None:
    changed = JOB + "rules: [{rule: deck.planks, value: '16 in to 5/8', reason: our own}]\n"
    told = found(changed)["SUI-902"]
    assert "deck.planks" in told.message


def test_the_plan_verifies() -> None:
    assert verify(json.loads(plan_job(read_job_text(JOB), effort=0).document)).objections == ()
