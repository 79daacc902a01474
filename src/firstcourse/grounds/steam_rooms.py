"""Which rooms of a job take steam, and how their ceilings fall."""

import math

import numpy as np

from firstcourse.findings import Finding
from firstcourse.geometry import bounds
from firstcourse.grounds.steam import judge_steam_ceiling, judge_steam_closed
from firstcourse.job import Job, Room
from firstcourse.rules import RuleSet
from firstcourse.survey import RoomSurvey
from firstcourse.units import to_mm

_STEAM = "steam"


def judge_steam_room(job: Job, room: Room, survey: RoomSurvey, rules: RuleSet) -> tuple[Finding, ...]:
    """Judge the ceiling of a room of which some surface is in steam; nothing where none is.

    Args:
        job: For its tape.
        room: The room.
        survey: The room as adjusted.
        rules: Rules in force.
    """
    ceiling = None if room.ceiling is None else room.ceiling.exposure
    exposures = (*(wall.exposure for wall in room.walls), ceiling)
    if not any(exposure is not None and exposure.zone == _STEAM for exposure in exposures):
        return ()
    left, low, right, high = bounds(tuple(survey.plan.values()))
    ref = f"{room.name}/ceiling"
    run = to_mm(min(right - left, high - low))
    return (
        *judge_steam_ceiling(rules, ref, _fall(room, survey), run, job.tape),
        *judge_steam_closed(rules, ref, "" if ceiling is None else ceiling.zone),
    )


def _fall(room: Room, survey: RoomSurvey) -> float | None:
    """Fall of the plane that fits the ceiling's corners best, rise over run; None where they are not known."""
    if room.height is None and not set(room.corners) <= set(room.heights):
        return None
    heights = [room.heights.get(name, room.height or 0) + room.levels.get(name, 0) for name in room.corners]
    rows = np.array([[*survey.plan[name], 1.0] for name in room.corners], dtype=float)
    along, across, _ = np.linalg.lstsq(rows, np.array(heights, dtype=float), rcond=None)[0]
    return math.hypot(float(along), float(across))
