"""Whether frame, panel and surface will carry tile, with every working and the remedies that would pass."""

from firstcourse.suitability.ceilings import Above, CeilingInput
from firstcourse.suitability.checks import Check
from firstcourse.suitability.cuts import Cut
from firstcourse.suitability.decks import Deck, Planks, judge_deck, judge_planks
from firstcourse.suitability.doorways import Doorway
from firstcourse.suitability.exposure import ExposedSurface, Zone, zone_working
from firstcourse.suitability.fittings import Fitting, ValveWindow
from firstcourse.suitability.flatness import Spot
from firstcourse.suitability.floors import Finish, FloorInput, Use
from firstcourse.suitability.ground import Ground, GroundJudgement, judge_ground
from firstcourse.suitability.joists import PointLoad
from firstcourse.suitability.judge import (
    FRAMES_NEED,
    JudgeInput,
    Judgement,
    WallInput,
    frame_unjudged,
    judge,
    judge_spacing,
)
from firstcourse.suitability.lumber import lumber
from firstcourse.suitability.panels import Panel
from firstcourse.suitability.plumb import Corner, Stance, judge_stance
from firstcourse.suitability.remedies import Remedy, floor_remedies
from firstcourse.suitability.sheets import JudgedMember
from firstcourse.suitability.surfaces import BuildUp, judge_build_up
from firstcourse.suitability.walls import SteelStud, Studs

__all__ = [
    "FRAMES_NEED",
    "Above",
    "BuildUp",
    "CeilingInput",
    "Check",
    "Corner",
    "Cut",
    "Deck",
    "Doorway",
    "ExposedSurface",
    "Finish",
    "Fitting",
    "FloorInput",
    "Ground",
    "GroundJudgement",
    "JudgeInput",
    "JudgedMember",
    "Judgement",
    "Panel",
    "Planks",
    "PointLoad",
    "Remedy",
    "Spot",
    "Stance",
    "SteelStud",
    "Studs",
    "Use",
    "ValveWindow",
    "WallInput",
    "Zone",
    "floor_remedies",
    "frame_unjudged",
    "judge",
    "judge_build_up",
    "judge_deck",
    "judge_ground",
    "judge_planks",
    "judge_spacing",
    "judge_stance",
    "lumber",
    "zone_working",
]
