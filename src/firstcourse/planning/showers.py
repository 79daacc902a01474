"""The shower floors of a job: how each falls, and what stands in its way."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from firstcourse.findings import Finding
from firstcourse.job import Job
from firstcourse.plan import Stock, Surface
from firstcourse.planning.tile_ground import wall_finish
from firstcourse.rules import RuleSet
from firstcourse.survey import SurveyResult
from firstcourse.tiling.shower_floor import plan_fall
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowerFloors:
    """Shower floors with their falls; they are tiled on a bed, not boarded."""

    surfaces: tuple[Surface, ...] = ()
    findings: tuple[Finding, ...] = ()
    workings: dict[str, Working] = field(default_factory=dict)


def shower_floors(job: Job, survey: SurveyResult, stock: Sequence[Stock], rules: RuleSet) -> ShowerFloors:
    """Plan the falls of every shower floor.

    Args:
        job: The job.
        survey: Its showers as they lie in their rooms.
        stock: Sheets that serve walls, whose boards come before the framing.
        rules: Rules in force.
    """
    rooms = {room.name: room for room in job.rooms}
    surfaces: list[Surface] = []
    findings: list[Finding] = []
    workings: dict[str, Working] = {}
    for shower in survey.showers:
        room = rooms[shower.surface.room]
        finish = wall_finish(room, stock, job.tiles, rules)
        found = plan_fall(shower, job.tiles, rules, job.tape, wall_finish=finish)
        surfaces.append(shower.surface.model_copy(update={"fall": found.fall}))
        findings += found.findings
        workings |= found.workings
    return ShowerFloors(surfaces=tuple(surfaces), findings=tuple(findings), workings=workings)
