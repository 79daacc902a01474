"""Whether a surface will carry tile: flat, plumb, high enough, right for where it is, and what puts it right."""

from firstcourse.suitability.doorways import Doorway
from firstcourse.suitability.exposure import ExposedSurface, Zone, zone_working
from firstcourse.suitability.fittings import Fitting, ValveWindow
from firstcourse.suitability.flatness import Spot
from firstcourse.suitability.ground import Ground, GroundJudgement, judge_ground
from firstcourse.suitability.plumb import Corner, Stance, judge_stance
from firstcourse.suitability.surfaces import BuildUp, judge_build_up

__all__ = [
    "BuildUp",
    "Corner",
    "Doorway",
    "ExposedSurface",
    "Fitting",
    "Ground",
    "GroundJudgement",
    "Spot",
    "Stance",
    "ValveWindow",
    "Zone",
    "judge_build_up",
    "judge_ground",
    "judge_stance",
    "zone_working",
]
