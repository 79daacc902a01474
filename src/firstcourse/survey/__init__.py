"""From taped readings to outlines, with what they prove and what they leave open."""

from firstcourse.survey.network import Adjustment, Reading, Residual, UnfixedError, adjust
from firstcourse.survey.rooms import RoomSurvey, SurveyResult, survey_job

__all__ = [
    "Adjustment",
    "Reading",
    "Residual",
    "RoomSurvey",
    "SurveyResult",
    "UnfixedError",
    "adjust",
    "survey_job",
]
