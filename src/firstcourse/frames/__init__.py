"""Whether joists, panels and studs will carry tile: every working, and the remedies that would pass."""

from firstcourse.frames.asked import NO_FRAME_RULES, FloorGround, asked_frame
from firstcourse.frames.askew import judge_askew
from firstcourse.frames.checks import Check
from firstcourse.frames.judge import judge
from firstcourse.frames.remedies import Remedy
from firstcourse.frames.structure import remedy_workings, structure_sheet
from firstcourse.frames.walls import check_backing_mass

__all__ = [
    "NO_FRAME_RULES",
    "Check",
    "FloorGround",
    "Remedy",
    "asked_frame",
    "check_backing_mass",
    "judge",
    "judge_askew",
    "remedy_workings",
    "structure_sheet",
]
