"""How rooms put their results into words, in one place for every face that shows them."""

from firstcourse.bedding import mass_text
from firstcourse.documents.rule_values import shown_value
from firstcourse.planning.judging import remedy_text
from firstcourse.survey.report import report_lines
from firstcourse.words import speaker_for

__all__ = ["mass_text", "remedy_text", "report_lines", "shown_value", "speaker_for"]
