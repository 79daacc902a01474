"""A tile entered 3-7/8 x 11-7/8 in was laid upright without a word; it is asked about once, not on every wall."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.findings import Finding
from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from said import all_said

TUB = Path(__file__).parents[2] / "examples" / "tub-bathroom" / "job.yaml"


def findings(**tile: Any) -> list[Finding]:
    """The tub bathroom, whose three walls bear one tile, with that tile changed."""
    job = yaml.safe_load(TUB.read_text())
    job["tiles"][0] |= tile
    plan = plan_job(read_job_text(yaml.safe_dump(job, sort_keys=False)), effort=0).plan
    return [one for one in all_said(plan.findings) if one.code == "TIL-129"]


def test_it_is_asked_once_for_all_walls() -> None:
    (one,) = findings(size=["3 7/8 in", "11 7/8 in"])
    assert one.where == "tile wall tile" and one.severity == "note"
    assert one.measured == '3-7/8" x 11-7/8", width by height' and 'as 11-7/8" x 3-7/8"' in one.remedy
    assert one.message.count("wall") >= 3


@pytest.mark.parametrize("tile", [{}, {"size": ["3 7/8 in", "11 7/8 in"], "upright": True}])
def test_a_lying_tile_and_one_that_is_to_stand_are_not_asked_about(tile: dict[str, Any]) -> None:
    assert findings(**tile) == []


def test_what_does_not_agree_is_refused() -> None:
    with pytest.raises(JobError, match="upright does not agree with the size"):
        findings(upright=True)
