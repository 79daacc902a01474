"""How rooms put their results into words, in one place for every face that shows them."""

from firstcourse.papers.judgement_pages import remedy_tables
from firstcourse.papers.rule_values import shown_value
from firstcourse.survey import report_lines
from firstcourse.units import Tape
from firstcourse.values import Measure
from firstcourse.words import in_figures, speaker_for

__all__ = ["mass_text", "remedy_tables", "report_lines", "shown_value", "speaker_for"]


def mass_text(kg: float, tape: Tape) -> str:
    """A mass [kg] in the reader's unit."""
    return in_figures(Measure(value=kg, unit="kg"), tape)
