"""Floors as surfaces: what lies under them reaches no farther than they do."""

from pathlib import Path

from firstcourse.geometry import bounds
from firstcourse.job import read_job
from firstcourse.plan import SupportKind
from firstcourse.rules import load_rules
from firstcourse.survey import survey_job
from firstcourse.units import mm

# Its side D-A, which the joists run along, leans by 1/16 in against the axis.
LIMBER = Path(__file__).parents[3] / "examples" / "limber-floor" / "job.yaml"


def test_joists_askew_to_the_axes_end_with_the_floor():
    job = read_job(LIMBER)
    floor = survey_job(job, load_rules(job.date, job.practice)).surfaces[0]
    left, lower, right, upper = bounds(floor.outline)
    joists = [bounds(support.outline) for support in floor.supports if support.kind is SupportKind.JOIST]
    assert joists
    for box in joists:
        assert left <= box[0] and box[2] <= right
        assert lower - mm(1) <= box[1] and box[3] <= upper + mm(1)
        assert box[2] - box[0] <= mm(38.1 + 3)
