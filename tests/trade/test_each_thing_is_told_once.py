"""A floor too limber for its tile and for the code was told twice, and so was a wall that leans."""

import json

import yaml

from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from proving import verify_text
from said import all_said

JOB = """
name: told once
practice: us
date: 2026-11-25
tape: inch
stock: [{id: board, size: [36 in, 60 in], thickness: 1/4 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in, B-D: 84 7/8 in}
    height: 96 in
    plumb: {A-B: 3/4 in}
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 15 1/4 in}
      joists: {span: SPAN, size: 2x8, species: dfl, grade: no2, bearing: 3 1/2 in}
      panels: {layers: [23/32 in, 15/32 in], glued_and_screwed: yes}
      tile: {kind: KIND, thickness: 3/8 in, edge: 12 in}
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 16 in}
        studs: {size: 2x4, species: spf, grade: no2, height: 91 1/2 in}
        exposure: {zone: wet, membrane: yes}
        tile: {kind: ceramic, thickness: 3/8 in, edge: 12 in}
"""


def planned(span: str, kind: str) -> Plan:
    return plan_job(read_job_text(JOB.replace("SPAN", span).replace("KIND", kind)), effort=0).plan


def test_a_floor_that_bends_too_far_for_two_limits_is_told_by_the_one_that_asks_most() -> None:
    plan = planned("15 ft", "stone")
    sag = [finding for finding in all_said(plan.findings) if finding.message.startswith("Live deflection")]
    assert [finding.code for finding in sag] == ["SUI-107"]
    (sheet,) = [sheet for sheet in plan.structures if sheet.surface == "bath/floor"]
    # The sheet for the engineer has both limits, and neither is kept.
    assert [line.holds for line in sheet.lines if line.name.startswith("live_deflection")] == [False, False]
    document = json.loads(plan.model_dump_json(by_alias=True))
    document["findings"] = [one for one in document["findings"] if one["code"] != "SUI-107"]
    told = [one.message for one in verify_text(json.dumps(document)).objections if one.code == "VER-913"]
    assert len(told) == 2


def test_a_wall_that_leans_is_told_by_who_says_what_to_do() -> None:
    told = [f for f in all_said(planned("8 ft", "ceramic").findings) if "leans" in f.message]
    assert [finding.code for finding in told] == ["SUI-411"]


def test_a_lean_that_nobody_judges_is_told_by_the_survey() -> None:
    job = yaml.safe_load(JOB.replace("SPAN", "8 ft").replace("KIND", "ceramic"))
    job["rooms"][0]["plumb"] = {"C-D": "3/4 in"}
    plan = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan
    assert [finding.code for finding in all_said(plan.findings) if "leans" in finding.message] == ["SUR-104"]
