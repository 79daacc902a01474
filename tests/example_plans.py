"""The examples planned once for all tests of a process: planning them in every file anew takes long."""

from functools import cache
from pathlib import Path

import firstcourse
from firstcourse.papers.pages import Paper
from firstcourse.papers.site_pack import site_pack
from firstcourse.plan import Plan

EXAMPLES = Path(__file__).parents[1] / "examples"


@cache
def plan_of(name: str) -> Plan:
    """The plan of an example, its layouts not improved; frozen, so that whoever shares it cannot change it."""
    return firstcourse.open(EXAMPLES / name / "job.yaml").plan(effort=0).plan


@cache
def site_pack_of(name: str, paper: Paper) -> bytes:
    """The site pack of an example, as PDF."""
    return site_pack(plan_of(name), paper)
