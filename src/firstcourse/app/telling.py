"""How rooms put their results into words, in one place for every face that shows them."""

from firstcourse.job import Job
from firstcourse.papers.judgement_pages import remedy_tables
from firstcourse.papers.rule_values import shown_value
from firstcourse.papers.schedule_pack import schedule_text
from firstcourse.plan import Plan, Schedule
from firstcourse.steps import Ahead
from firstcourse.units import Tape
from firstcourse.values import Measure
from firstcourse.words import Speaker, in_figures, speaker_for

__all__ = ["ahead_text", "mass_text", "remedy_tables", "schedule_lines", "shown_value", "speaker_for"]


def ahead_text(ahead: Ahead, job: Job) -> str:
    """About how much there is to lay out, in the words that the job's papers are written in."""
    speaker = Speaker(job.practice, job.tape, tongue=job.tongue)
    return speaker.text("cli-ahead", surfaces=ahead.surfaces, boards=ahead.boards, tiles=ahead.tiles)


def mass_text(kg: float, tape: Tape) -> str:
    """A mass [kg] in the reader's unit."""
    return in_figures(Measure(value=kg, unit="kg"), tape)


def schedule_lines(plan: Plan, calendar: Schedule) -> tuple[str, ...]:
    """A calendar line by line: tasks and hold points, visits, what others do first, what moves the end."""
    return schedule_text(calendar, speaker_for(plan))
