"""`firstcourse done`: what is done of a plan, written into its job."""

from pathlib import Path
from typing import Annotated

from cyclopts import Parameter

from firstcourse.errors import InputValueError
from firstcourse.units import LengthError, parse_length

Boards = Annotated[tuple[str, ...], Parameter(consume_multiple=True, negative="")]


def done(
    job: Path,
    /,
    *,
    plan: Path,
    boards: Boards = (),
    cut: Boards = (),
    taken_out: Boards = (),
    first_course: Boards = (),
    ticked: Path | None = None,
    out: Path | None = None,
) -> int:
    """Write into the job which boards of a plan are up, so that the next plan keeps them and plans the rest.

    Then enter what was found, such as where a stud really stands, and plan again. What is left of the sheets that
    are cut up is written under offcuts. Comments stay.

    Args:
        job: The job document (YAML or JSON).
        plan: The plan that was built from: its plan.json, or the folder it lies in.
        boards: Boards that are up, by mark or id, such as W1-1 W1-2. Those that were up in the plan are still.
        cut: Boards whose pieces are cut and not up.
        taken_out: Boards that were up and had to come out again.
        first_course: Where the first course of a tiled wall stands, such as "bath/wall/A-B=3 5/8 in".
        ticked: What a phone saved of its pack: boards that are up, sheets that are cut, first courses.
        out: Where to write the job; over itself where not given.
    """
    from firstcourse.app import open_job, proven_plan
    from firstcourse.words import speaker_for

    if not (boards or cut or taken_out or first_course or ticked):
        raise InputValueError("nothing is said to be done: name boards, such as --boards W1-1 W1-2")
    session = open_job(job)
    built = proven_plan(plan)
    courses = dict(map(_course, first_course))
    if ticked is not None:
        sent = session.ticked(built, ticked)
        # What is said by hand stands over what the phone says.
        boards = (*boards, *(board for board in sent.boards if board not in taken_out))
        cut, courses = (*cut, *sent.cut(built)), sent.first_courses | courses
    session.mark_done(built, boards=boards, cut=cut, taken_out=taken_out, first_courses=courses)
    target = job if out is None else out
    session.save(target)
    given = session.job.done
    up = 0 if given is None else sum(board.up for part in given.surfaces for board in part.boards)
    print(speaker_for(built).text("cli-done", file=str(target), count=up, offcuts=len(session.job.offcuts)))
    return 0


def _course(said: str) -> tuple[str, int]:
    surface, equals, height = said.partition("=")
    try:
        if not equals:
            raise LengthError("there is no '='")
        return surface.strip(), parse_length(height.strip())
    except LengthError as error:
        raise InputValueError(f"'{said}' is not like \"bath/wall/A-B=3 5/8 in\": {error}") from None
