"""Whether a surface will carry tile: flat, plumb, high enough, right for where it is, and what puts it right."""

from firstcourse.grounds.doorways import Doorway, judge_doorway
from firstcourse.grounds.fittings import Fitting, judge_drain, judge_flange
from firstcourse.grounds.materials import judge_exposure
from firstcourse.grounds.steam_rooms import judge_steam_room
from firstcourse.grounds.surfaces import SurfaceSide, boarded_m2, exposed_surfaces, judge_surface

__all__ = [
    "Doorway",
    "Fitting",
    "SurfaceSide",
    "boarded_m2",
    "exposed_surfaces",
    "judge_doorway",
    "judge_drain",
    "judge_exposure",
    "judge_flange",
    "judge_steam_room",
    "judge_surface",
]
