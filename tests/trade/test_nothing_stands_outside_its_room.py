"""A shower taped along a wall that runs out of square got a third kerb, outside the room.

What ends near a wall stands at it and is told with the distance; a gap too narrow for its kerb is asked about; and
the verifier objects to what lies outside its room, and to a kerb with no floor beyond it.
"""

import json
import math
from typing import Any

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st
from shapely import Point, Polygon

from firstcourse.errors import JobError
from firstcourse.geometry import sides
from firstcourse.job import Job, read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.survey import SurveyResult, survey_job
from firstcourse.units import inches
from proving import verify
from said import all_said


def job_of(width: float, out: float, at_far_end: float, depth: float = 36) -> Job:
    """A room 60 in wide at A-B and wider or narrower by `out` at C-D, a shower so wide along A-B [in]."""
    far = 60 + out
    text = f"""
name: out of square
practice: us
date: 2026-11-25
tape: inch
stock: [{{id: b, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}}]
tiles: [{{id: mosaic, size: [2 in, 2 in], thickness: 1/4 in, joint: 1/8 in}}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 60 in, B-C: {math.hypot(96, out) * 25.4:.0f} mm, C-D: {far * 25.4:.0f} mm, D-A: 96 in}}
    diagonals: {{B-D: {math.hypot(60, 96) * 25.4:.0f} mm}}
    height: 96 in
    floor:
      shower:
        side: A-B
        left: {at_far_end:.0f} in
        out: 0 in
        width: {width * 25.4:.0f} mm
        depth: {depth:.0f} in
        drain: {{left: {at_far_end + width / 2:.0f} in, out: 18 in}}
        kerb: {{height: 4 1/2 in, width: 5 in}}
"""
    return read_job_text(text)


KERB = "bath/floor/shower/kerb"


def surveyed(job: Job) -> SurveyResult:
    return survey_job(job, load_rules(job.date, job.practice, ()))


@pytest.mark.parametrize("out", [-2.0, -1.6, 1.6])
def test_a_shower_from_wall_to_wall_has_one_kerb_and_says_what_was_moved(out: float) -> None:
    found = surveyed(job_of(60, out, 0))
    (shower,) = found.showers
    assert sum(side.is_kerb for side in shower.surface.sides) == 1
    assert any(finding.code == "SUR-106" and finding.measured for finding in all_said(found.findings))


def test_a_gap_too_narrow_for_its_kerb_is_asked_about_with_its_width() -> None:
    with pytest.raises(JobError, match=r'ends 2-1/2" short of wall B-C'):
        surveyed(job_of(57.5, 0, 0))
    assert not [f for f in all_said(surveyed(job_of(36, 0, 0)).findings) if f.code in ("SUR-106", "SUR-107")]


def test_a_shower_past_its_wall_is_refused_with_the_distance() -> None:
    with pytest.raises(JobError, match=r'2" past wall B-C'):
        surveyed(job_of(62, 0, 0))


@settings(max_examples=60, deadline=None)
@given(width=st.floats(40, 60.9), out=st.floats(-2.4, 2.4), depth=st.floats(30, 60))
def test_no_shower_and_no_kerb_lies_outside(width: float, out: float, depth: float) -> None:
    try:
        found = surveyed(job_of(width, out, 0, depth))
    except JobError:
        # In doubt it is asked, and nothing is planned.
        reject()
    (shower,), (room,) = found.showers, found.rooms
    ground = Polygon(room.outline)
    assert ground.buffer(4, join_style="mitre").covers(Polygon(shower.surface.outline))
    for (a, b), side in zip(sides(shower.surface.outline), shower.surface.sides, strict=True):
        if side.is_kerb:
            away = (b[1] - a[1]) / math.dist(a, b), (a[0] - b[0]) / math.dist(a, b)
            reach = inches(1)
            beyond = ((a[0] + b[0]) / 2 + away[0] * reach, (a[1] + b[1]) / 2 + away[1] * reach)
            assert ground.covers(Point(beyond))


def test_the_verifier_objects_to_what_stands_outside() -> None:
    document: dict[str, Any] = json.loads(plan_job(job_of(60, 1.6, 0), effort=0).document)
    assert not verify(document).objections
    (shower,) = (surface for surface in document["surfaces"] if surface["id"].endswith("/shower"))
    wall = next(side for side in shower["sides"] if side["meets"] != KERB)
    wall["meets"] = KERB
    assert "VER-109" in {objection.code for objection in verify(document).objections}
    for point in shower["outline"]:
        point[0] += 100
    assert "VER-108" in {objection.code for objection in verify(document).objections}


ELL = """
name: a room round a chimney
date: 2026-11-25
tape: mm
rooms:
  - name: bath
    corners: [A, B, C, D, E, F, G, H]
    sides: {A-B: 2000 mm, B-C: 2000 mm, C-D: 900 mm, D-E: 1000 mm,
            E-F: 200 mm, F-G: 1000 mm, G-H: 900 mm, H-A: 2000 mm}
    diagonals: {A-C: 2828 mm, B-H: 2828 mm, A-F: 1345 mm, B-E: 1345 mm, A-E: 1487 mm, B-F: 1487 mm,
                B-D: 2284 mm, A-G: 2193 mm, D-F: 1020 mm}
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 380 mm}
      openings: [{id: tub, kind: tub, side: A-B, left: 100 mm, out: 1100 mm, width: 1800 mm, depth: 700 mm}]
"""


def test_a_tub_through_a_wall_is_refused() -> None:
    """It was planned as taped, through the chimney, and the plan refused by its own proof."""
    with pytest.raises(JobError, match="opening 'tub' reaches through a wall of bath"):
        plan_job(read_job_text(ELL), effort=0)
    clear = ELL.replace("out: 1100 mm", "out: 250 mm")
    plan_job(read_job_text(clear), effort=0)
