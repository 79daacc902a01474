"""What is made of a plan or a judgement to be printed and read."""

from collections.abc import Iterator
from itertools import chain

from firstcourse.app.files import PLAN
from firstcourse.drawings import draw_surface, draw_tiling, to_svg
from firstcourse.errors import InputValueError
from firstcourse.papers.calendar_file import calendar_file
from firstcourse.papers.judgement_pack import judgement_pack
from firstcourse.papers.pages import PAGE_SIZES
from firstcourse.papers.papers import Paper, all_papers
from firstcourse.papers.schedule_pack import schedule_pack
from firstcourse.plan import Plan, Schedule
from firstcourse.steps import JobJudgement, PlanResult
from firstcourse.words import Speaker


def drawing(plan: PlanResult, surface: str, *, tile: bool = False) -> str:
    """Draw one surface of a plan.

    Args:
        plan: A plan.
        surface: Its id, such as `hall bath/wall/A-B`.
        tile: Its tile instead of its boards.

    Returns:
        An SVG document, its lengths in millimetres on paper.

    Raises:
        InputValueError: The plan has no such surface.
    """
    found = next((one for one in plan.plan.surfaces if one.id == surface), None)
    if found is None:
        known = ", ".join(one.id for one in plan.plan.surfaces)
        raise InputValueError(f"the plan has no surface '{surface}'; it has {known}")
    return to_svg((draw_tiling if tile else draw_surface)(plan.plan, found))


def plan_papers(result: PlanResult, *, poles: bool = False) -> Iterator[Paper]:
    """plan.json and all papers of a plan, each as it is made.

    Args:
        result: A plan.
        poles: Story poles at full size too.
    """
    return chain([Paper(PLAN, result.document.encode())], all_papers(result.plan, poles=poles))


def judgement_papers(judgement: JobJudgement) -> Iterator[Paper]:
    """A judgement's sheets on both paper sizes, each as it is made.

    Args:
        judgement: What was judged.
    """
    speaker = Speaker(judgement.practice, judgement.tape, sources=judgement.sources, tongue=judgement.tongue)
    for paper in PAGE_SIZES:
        sheets = judgement_pack(
            paper,
            job=judgement.job,
            date=judgement.date,
            practice=judgement.practice,
            speaker=speaker,
            structures=judgement.structures,
            findings=judgement.findings,
            workings=judgement.workings,
            cautions=judgement.cautions,
        )
        yield Paper(f"judgement-{paper}.pdf", sheets)


def schedule_papers(plan: Plan, calendar: Schedule) -> Iterator[Paper]:
    """A calendar on both paper sizes and as a file for calendars, each as it is made.

    Args:
        plan: A plan.
        calendar: Its calendar.
    """
    for paper in PAGE_SIZES:
        yield Paper(f"schedule-{paper}.pdf", schedule_pack(plan, calendar, paper))
    yield Paper("schedule.ics", calendar_file(plan, calendar))
