"""From taped readings to outlines, with what they prove and what they leave open."""

from firstcourse.survey.advice import UnfixedError
from firstcourse.survey.flats import SideFrame, floor_surface, frames_of
from firstcourse.survey.members import placed_members
from firstcourse.survey.network import Residual, adjust
from firstcourse.survey.report import RoomReport, report
from firstcourse.survey.room import RoomSurvey
from firstcourse.survey.rooms import SurveyResult, survey_job
from firstcourse.survey.shapes import Reading
from firstcourse.survey.showers import SurveyedShower
from firstcourse.survey.standing import benches_at_walls
from firstcourse.survey.taping import NextReading, Taping, taping, walked_outline

__all__ = [
    "NextReading",
    "Reading",
    "Residual",
    "RoomReport",
    "RoomSurvey",
    "SideFrame",
    "SurveyResult",
    "SurveyedShower",
    "Taping",
    "UnfixedError",
    "adjust",
    "benches_at_walls",
    "floor_surface",
    "frames_of",
    "placed_members",
    "report",
    "survey_job",
    "taping",
    "walked_outline",
]
