"""From taped readings to outlines, with what they prove and what they leave open."""

from firstcourse.survey.advice import UnfixedError
from firstcourse.survey.members import placed_members
from firstcourse.survey.network import Adjustment, Residual, adjust
from firstcourse.survey.room import RoomSurvey
from firstcourse.survey.rooms import SurveyResult, survey_job
from firstcourse.survey.shapes import Reading
from firstcourse.survey.showers import SurveyedShower
from firstcourse.survey.standing import benches_at_walls

__all__ = [
    "Adjustment",
    "Reading",
    "Residual",
    "RoomSurvey",
    "SurveyResult",
    "SurveyedShower",
    "UnfixedError",
    "adjust",
    "benches_at_walls",
    "placed_members",
    "survey_job",
]
