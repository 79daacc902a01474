"""Findings told what was well, told cautions twice, and let joists be sistered and floors ground with no caution.

"Verified" stood in one line with the counts of a plan whose work is stopped.
"""

from functools import cache
from pathlib import Path

import pytest

import firstcourse
from firstcourse.cli import run
from firstcourse.findings import Finding, Severity
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.words import SaidFinding, alike_together
from said import all_said, worked

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = ("tub-bathroom", "limber-floor", "out-of-true", "tiled-shower")
GRINDING = "extraction"


@cache
def judged(name: str) -> tuple[Finding, ...]:
    return all_said(firstcourse.open(EXAMPLES / name / "job.yaml").judge().findings)


@pytest.mark.parametrize("name", NAMES)
def test_where_grinding_is_told_dust_and_old_layers_are(name: str) -> None:
    done = firstcourse.open(EXAMPLES / name / "job.yaml").judge()
    told = [finding.remedy for finding in all_said(done.findings) if "grind" in finding.remedy.lower()]
    printed = [worked(one) for one in done.workings.values()]
    told += [" ".join((one.title, *one.argument)) for one in printed if "grind" in one.title.lower()]
    assert told or name != "out-of-true"
    for text in told:
        assert GRINDING in text and "asbestos" in text, text


def test_where_a_frame_is_changed_an_engineer_comes_first() -> None:
    told = [finding.remedy for finding in judged("limber-floor") if "ister each joist" in finding.remedy]
    assert told and all(text.startswith("An engineer first") for text in told)


@pytest.mark.parametrize("name", NAMES)
def test_no_taper_or_rise_within_its_limit_is_told(name: str) -> None:
    assert all(f.severity is not Severity.NOTE for f in judged(name) if f.code in ("SUI-413", "SUI-414"))


@pytest.mark.parametrize("name", NAMES)
def test_a_caution_stands_once_on_the_terminal(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    run(["judge", str(EXAMPLES / name / "job.yaml")])
    said = capsys.readouterr().out
    assert said.count("not a design") == 1
    if name == "limber-floor":
        assert "an engineer first" in said


def test_that_it_is_sound_and_that_work_must_wait_are_two_lines(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["plan", str(EXAMPLES / "limber-floor" / "job.yaml"), "--effort", "0", "--out", str(tmp_path)]) == 1
    lines = capsys.readouterr().out.splitlines()
    (consistent,) = [line for line in lines if "the plan is consistent" in line]
    assert "stop" not in consistent.lower() and not any("verified" in line for line in lines)
    assert any(line.startswith("STOPS THE WORK") for line in lines)
    assert run(["verify", str(tmp_path)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert any(line.startswith("the work is stopped: SUI-1") for line in lines)
    assert lines[-1].endswith("plan.json: consistent, verified")


VALVE_ON_A_STUD = """
name: a valve on a stud
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in, B-D: 84 7/8 in}
    height: 90 in
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 16 in}
        studs: {size: 2x4, species: spf, grade: stud}
        openings: [{id: mixer, kind: valve, left: 32 in, bottom: 40 in, diameter: 5 in, depth: [1 in, 3 in]}]
        exposure: {zone: wet, membrane: yes}
        tile: {kind: ceramic, thickness: 3/8 in, edge: 12 in}
"""


def test_a_valve_on_a_stud_is_told_once() -> None:
    found = all_said(plan_job(read_job_text(VALVE_ON_A_STUD), effort=0).plan.findings)
    assert [f.code for f in found if "stud" in f.message and ("valve" in f.message or "mixer" in f.message)] == [
        "SUR-108"
    ]


def test_cuts_too_thin_on_many_sheets_are_one_finding() -> None:
    found = [
        SaidFinding(
            code="BRD-206", severity=Severity.NOTE, where=f"sheet S{n}", message="thin", measured=f"{n}/16"
        )
        for n in (1, 3, 5)
    ]
    (one,) = alike_together(found)
    assert one.where == "sheet S1; sheet S3; sheet S5"
    assert one.measured == "sheet S1 1/16; sheet S3 3/16; sheet S5 5/16"
