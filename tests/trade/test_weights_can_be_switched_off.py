"""A job could not switch a weight off: 0 was refused for every cost of a start and every labour of a remedy."""

import datetime

import pytest

from firstcourse.errors import InputValueError, JobError
from firstcourse.job import read_job_text
from firstcourse.rules import Override, load_rules
from firstcourse.steps import plan_job

DAY = datetime.date(2026, 11, 25)
SWITCHED_OFF = (
    *load_rules(DAY).ids("tiling.start.cost."),
    *load_rules(DAY).ids("tiling.sight."),
    "tiling.start.more_cuts",
)
JOB = """
name: laundry
date: 2026-11-25
tape: mm
rules: [{rules}]
stock: [{{id: board, size: [900 mm, 1500 mm], thickness: 12 mm}}]
tiles: [{{id: white, size: [298 mm, 298 mm], thickness: 8 mm, joint: 3 mm}}]
rooms:
  - name: laundry
    corners: [A, B, C, D]
    sides: {{A-B: 1600 mm, B-C: 1200 mm, C-D: 1600 mm, D-A: 1200 mm}}
    diagonals: {{A-C: 2000 mm, B-D: 2000 mm}}
    height: 2400 mm
    walls:
      - wall: A-B
        framing: {{spacing: 400 mm, first: 20 mm}}
        boards: {{top: 1300 mm}}
        tiling: {{tile: white}}
"""


def job(*rules: str) -> str:
    return JOB.format(rules=", ".join(f"{{rule: {rule}, value: 0, reason: no matter here}}" for rule in rules))


def test_a_job_plans_with_every_weight_of_a_start_off() -> None:
    assert len(SWITCHED_OFF) == 13
    plan = plan_job(read_job_text(job(*SWITCHED_OFF)), effort=0).plan
    (wall,) = [surface for surface in plan.surfaces if surface.tiles]
    assert any(not tile.whole for tile in wall.tiles)


@pytest.mark.parametrize("rule", [rule for rule in load_rules(DAY).ids("remedy.") if "labour" in rule])
def test_labour_that_is_not_counted_is_0(rule: str) -> None:
    assert load_rules(DAY, "us", (Override(rule=rule, value=0, unit="h", reason="own time"),)).number(rule) == 0


def test_what_0_would_make_nonsense_of_is_still_refused() -> None:
    for rule, unit in (("tiling.tiles.most", ""), ("floor.load.live", "psf"), ("water.test.hours", "h")):
        with pytest.raises(InputValueError, match=rule):
            load_rules(DAY, "us", (Override(rule=rule, value=0, unit=unit, reason="none"),))
    with pytest.raises(JobError, match=r"rules\[1\]"):
        read_job_text(job("tiling.tiles.most"))
