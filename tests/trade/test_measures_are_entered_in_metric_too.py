"""Weights, stiffnesses and temperatures had to be entered in pounds, inches and degrees Fahrenheit alone.

Each takes a value with its unit now, inch or metric, and gives the same as its older name, which still works.
"""

import re

import pytest

from firstcourse.errors import JobError
from firstcourse.job import Exposure, Joists, WallStuds, job_text, read_job_text
from firstcourse.job.carrying import JoistLoad
from firstcourse.rules import load_rules
from firstcourse.steps.judging import judge_job
from firstcourse.survey import survey_job
from firstcourse.units import Tape
from firstcourse.words import Speaker

JOB = """
name: one floor on engineered joists
date: 2026-11-25
tape: inch
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5', B-C: 8', C-D: 5', D-A: 8'}
    diagonals: {A-C: 9' 5-1/4", B-D: 9' 5-1/4"}
    yearly_range: 65 C
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      joists: {span: 12', stiffness: 860 kN m2, loads: [{load: 1.1 kN, at: 5'}]}
      panels: {layers: [23/32 in], glued_and_screwed: no}
      tile: {kind: ceramic, thickness: 3/8 in}
      openings: [{id: tub, kind: tub, side: A-B, left: 0 in, out: 0 in, width: 60 in,
                  depth: 30 in, weight: 300 kg}]
"""
OLDER = (
    JOB.replace("yearly_range: 65 C", "yearly_range_f: 117")
    .replace("stiffness: 860 kN m2", "ei_lb_in2: 299676000")
    .replace("load: 1.1 kN", "load_lb: 247.29")
    .replace("weight: 300 kg", "weight_lb: 661.387")
)


def figures(text: str) -> tuple[list[str], list[float]]:
    """Every number on the floor's sheet: what is found and what is allowed of each line, and what was entered."""
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice, job.overrides())
    done = judge_job(job, survey_job(job, rules), rules)
    (sheet,) = done.structures
    shown = Speaker("us", Tape.INCH).sheet(sheet, done.workings)
    found = [f"{line.found} {line.limit}" for line in shown.lines] + list(shown.facts.values())
    numbers = re.findall(r"\d[\d,]*(?:\.\d+)?", " ".join(found))
    return [line.working for line in sheet.lines], [float(number.replace(",", "")) for number in numbers]


def test_metric_gives_the_same_as_the_older_names() -> None:
    (names, new), (older_names, old) = figures(JOB), figures(OLDER)
    assert names == older_names and len(new) > 20
    assert new == pytest.approx(old, rel=1e-2)


@pytest.mark.parametrize(
    ("got", "wanted"),
    [
        (JoistLoad.model_validate({"load": "100 kg", "at": "1 m"}).pounds, 220.462),
        (Joists.model_validate({"span": "3 m", "stiffness": "2.1 kN·m²"}).ei, 731_770),
        (Joists.model_validate({"span": "3 m", "stiffness": "2.1e12 N mm2"}).ei, 731_770_000),
        (WallStuds.model_validate({"steel": "90 mm", "thickness": "0.75 mm"}).thick_mils, 29.528),
        (WallStuds.model_validate({"steel": "90 mm", "inertia": "22.9 cm4"}).ix_in4, 0.55018),
        (Exposure.model_validate({"zone": "dry", "slab_emission": "14.647 g/m2"}).emission_lb, 3.0),
    ],
)
def test_units_are_converted(got: float, wanted: float) -> None:
    assert got == pytest.approx(wanted, rel=1e-4)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("weight: 300 kg", "weight: 300", "'300' has no unit; write it like 620 lb or 280 kg"),
        ("weight: 300 kg", "weight: 300 m", "not in a unit of a weight"),
        ("weight: 300 kg", "weight: 9e9 kg", "out of range"),
        ("weight: 300 kg", "weight: '1,300 kg'", "comma"),
        ("weight: 300 kg", "weight: heavy", "is not a weight"),
        ("weight: 300 kg", "weight: 300 kg, weight_lb: 661", "say the same"),
        ("load: 1.1 kN, ", "", "'load' is missing here"),
        ("stiffness: 860 kN m2", "stiffness: 0 kN m2", "out of range: it is more than 0"),
        ("65 C", "65 lb", "not in a unit of a range of temperature"),
    ],
)
def test_what_is_no_measure_is_refused_at_its_place(old: str, new: str, said: str) -> None:
    assert old in JOB
    with pytest.raises(JobError) as caught:
        read_job_text(JOB.replace(old, new))
    (problem,) = caught.value.problems
    assert said in problem.message and problem.line > 1


def test_a_job_is_written_back_as_it_was_entered() -> None:
    job = read_job_text(JOB)
    assert read_job_text(job_text(job)) == job
    assert "300 kg" in job_text(job) and "860 kN m2" in job_text(job)
