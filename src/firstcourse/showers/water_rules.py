"""Where a membrane stops too low, is missing beside a shower floor, or would be pierced by fasteners."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds
from firstcourse.job import Job
from firstcourse.plan import Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.survey import SurveyedShower
from firstcourse.values import Name, least, length

_FEET = ("tray", "kerb")


def check_water(
    surfaces: Sequence[Surface],
    showers: Sequence[SurveyedShower],
    wet: frozenset[str],
    job: Job,
    rules: RuleSet,
) -> tuple[Finding, ...]:
    """Check wet walls for height, and the walls round shower floors for membrane and fasteners.

    Args:
        surfaces: Boarded surfaces.
        showers: Shower floors.
        wet: Ids of the surfaces with a membrane.
        job: The job.
        rules: Rules in force.
    """
    by_id = {surface.id: surface for surface in surfaces}
    found = [*_heights(surfaces, wet, rules)]
    for shower in showers:
        found += _round(shower, by_id, wet, job, rules)
    return tuple(found)


def _heights(surfaces: Sequence[Surface], wet: frozenset[str], rules: RuleSet) -> Iterator[Finding]:
    if not rules.has("water.wall.height"):
        return
    entry = rules.entry("water.wall.height")
    for surface in surfaces:
        if surface.id not in wet or surface.kind is not SurfaceKind.WALL:
            continue
        top = bounds(surface.outline)[3]
        if top < rules.ticks(entry.id):
            yield entry.found(
                "WAT-101",
                Severity.STOP,
                surface.id,
                measured=length(top),
                limit=least(length(rules.ticks(entry.id))),
                remedies=("higher",),
            )


def _round(
    shower: SurveyedShower, by_id: dict[str, Surface], wet: frozenset[str], job: Job, rules: RuleSet
) -> Iterator[Finding]:
    room = next(room for room in job.rooms if room.name == shower.surface.room)
    walls = {wall.wall: wall for wall in room.walls}
    entry = rules.entry("water.upturn.above_threshold")
    for name in dict.fromkeys(side.wall for side in shower.surface.sides if side.wall):
        surface_id, wall = f"{room.name}/wall/{name}", walls.get(name)
        if surface_id not in wet or surface_id not in by_id:
            yield entry.found("WAT-102", Severity.FIX, shower.surface.id, surface_id, remedies=("give_exposure",))
        if wall is not None and wall.foot not in _FEET:
            ban = rules.entry("fastening.no_fastener_above_tray")
            yield ban.found(
                "WAT-103",
                Severity.FIX,
                shower.surface.id,
                surface_id,
                remedies=("write_foot",),
                foot=Name(name=wall.foot),
            )
