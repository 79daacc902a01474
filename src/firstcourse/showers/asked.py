"""The shower floors of a job: how each falls, and what stands in its way."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from firstcourse.details import room_floor
from firstcourse.findings import Finding
from firstcourse.job import Job, Room
from firstcourse.layers import tile_layers, tiling_tile
from firstcourse.plan import Fall, Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.showers.shower_floor import plan_fall
from firstcourse.showers.shower_heights import upturn_top
from firstcourse.survey import SurveyResult
from firstcourse.tiles import wall_finish
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowerFloors:
    """Shower floors with their falls; they are tiled on a bed, not boarded."""

    surfaces: tuple[Surface, ...] = ()
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def shower_floors(
    job: Job,
    survey: SurveyResult,
    boarded: Sequence[Surface],
    stock: Mapping[SurfaceKind, tuple[Stock, ...]],
    rules: RuleSet,
) -> ShowerFloors:
    """Plan the falls of every shower floor.

    Args:
        job: The job.
        survey: Its showers as they lie in their rooms.
        boarded: Boarded surfaces, for the floors beside showers.
        stock: Sheets by what they serve; boards come before the framing and lie under the room's tile.
        rules: Rules in force.
    """
    rooms = {room.name: room for room in job.rooms}
    surfaces: list[Surface] = []
    findings: list[Finding] = []
    workings: list[Working] = []
    for shower in survey.showers:
        room = rooms[shower.surface.room]
        finish = wall_finish(room, stock[SurfaceKind.WALL], job, rules)
        tile = None if shower.shower.tiling is None else tiling_tile(job, shower.shower.tiling)
        found = plan_fall(
            shower,
            job.tiles,
            rules,
            job.tape,
            wall_finish=finish,
            set_in=None if tile is None else (tile.thickness, tile.mortar(rules)),
            room_floor=room_floor(job, room, boarded, stock, rules),
        )
        fall = found.fall
        if fall is not None:
            fall = fall.model_copy(update={"threshold": _threshold(fall, room)})
            fall = fall.model_copy(update={"upturn_top": upturn_top(fall, rules, job.tape)})
        layers = () if tile is None else tile_layers(tile, rules)
        surfaces.append(shower.surface.model_copy(update={"fall": fall, "layers": layers}))
        findings += found.findings
        workings += found.workings
    return ShowerFloors(surfaces=tuple(surfaces), findings=tuple(findings), workings=tuple(workings))


def _threshold(fall: Fall, room: Room) -> int | None:
    """Where a floor that is all shower ends: at the lowest floor beyond its doorways, over the drain [ticks]."""
    assert room.floor is not None
    beyond = [door.other_floor for door in room.floor.doorways]
    if not beyond or fall.drain_height is None or fall.room_floor is not None or fall.kerb is not None:
        return None
    return min(beyond) - fall.drain_height
