"""Who saved what and when; going back to any of it; the difference of two."""

import difflib

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.app.session import Session
from firstcourse.store.jobs import Kind, Revision
from firstcourse.web.asking import Ask


def listed(ask: Ask) -> Response:
    """All revisions of a job, the newest first."""
    return ask.page("revisions.html", job=ask.job, revisions=ask.house.jobs.revisions(ask.job.id))


def undo(ask: Ask) -> Response:
    """Go back to an earlier text: a new revision that holds it."""
    found = _revision(ask, ask.number("to"))
    name = Session(found.text).job.name
    jobs = ask.house.jobs
    jobs.save(
        ask.job.id,
        name,
        found.text,
        base=ask.number("base"),
        by=ask.who.id,
        kind=Kind.UNDO,
        about=str(found.number),
    )
    return ask.go(f"/jobs/{ask.job.id}/revisions")


def difference(ask: Ask) -> Response:
    """What changed between two revisions: the lines of the document."""
    earlier, later = _revision(ask, ask.number("from", query=True)), _revision(ask, ask.number("to", query=True))
    lines = list(difflib.unified_diff(earlier.text.splitlines(), later.text.splitlines(), lineterm="", n=2))[2:]
    return ask.page("difference.html", job=ask.job, earlier=earlier, later=later, lines=lines)


def _revision(ask: Ask, number: int) -> Revision:
    found = ask.house.jobs.revision(ask.job.id, number)
    if found is None:
        raise HTTPException(404)
    return found
