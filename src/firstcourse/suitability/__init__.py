"""Whether frame, panel and surface will carry tile, with every working and the remedies that would pass."""

from firstcourse.suitability.buildup import Doorway, Layer
from firstcourse.suitability.checks import Check
from firstcourse.suitability.exposure import ExposedSurface, Zone
from firstcourse.suitability.flatness import Spot
from firstcourse.suitability.floors import Finish, FloorInput, Use
from firstcourse.suitability.joists import Cut, PointLoad
from firstcourse.suitability.judge import JudgeInput, Judgement, WallInput, judge
from firstcourse.suitability.lumber import lumber
from firstcourse.suitability.panels import Panel
from firstcourse.suitability.remedies import Remedy, floor_remedies
from firstcourse.suitability.walls import SteelStud, Studs

__all__ = [
    "Check",
    "Cut",
    "Doorway",
    "ExposedSurface",
    "Finish",
    "FloorInput",
    "JudgeInput",
    "Judgement",
    "Layer",
    "Panel",
    "PointLoad",
    "Remedy",
    "Spot",
    "SteelStud",
    "Studs",
    "Use",
    "WallInput",
    "Zone",
    "floor_remedies",
    "judge",
    "lumber",
]
