"""The examples planned once for all tests of a run: planning them in every file anew takes long."""

from functools import cache
from pathlib import Path

import firstcourse
from firstcourse.papers.pages import Paper
from firstcourse.papers.site_pack import site_pack
from firstcourse.plan import Plan
from firstcourse.steps import PlanResult
from sharing import shared

EXAMPLES = Path(__file__).parents[1] / "examples"


@cache
def result_of(name: str) -> PlanResult:
    """An example planned, its layouts not improved; frozen, so that whoever shares it cannot change it."""
    return shared(f"plan-{name}", lambda: firstcourse.open(EXAMPLES / name / "job.yaml").plan(effort=0))


def plan_of(name: str) -> Plan:
    """The plan of an example, see `result_of`."""
    return result_of(name).plan


@cache
def site_pack_of(name: str, paper: Paper) -> bytes:
    """The site pack of an example, as PDF."""
    return shared(f"site-pack-{name}-{paper}", lambda: site_pack(plan_of(name), paper))
