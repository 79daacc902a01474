"""Who saved what and when; going back to any of it; the difference of two."""

import difflib

from starlette.responses import Response

from firstcourse.app import Session
from firstcourse.store.jobs import Kind, SavedMeanwhileError
from firstcourse.web.asking import Ask
from firstcourse.web.pages.changes import plan_changes
from firstcourse.web.pages.saving import revision

_LINES_AROUND = 2


def listed(ask: Ask) -> Response:
    """All revisions of a job, the newest first."""
    return _listed(ask)


def undo(ask: Ask) -> Response:
    """Go back to an earlier text: a new revision that holds it."""
    found, base = revision(ask, ask.number("to")), ask.number("base")
    name = Session(found.text).job.name
    try:
        ask.house.jobs.save(
            ask.job.id, name, found.text, base=base, by=ask.who.id, kind=Kind.UNDO, about=str(found.number)
        )
    except SavedMeanwhileError:
        return _listed(ask, status=409)
    return ask.go(f"/jobs/{ask.job.id}/revisions")


def difference(ask: Ask) -> Response:
    """What changed between two revisions: lines of the document and, where both are planned, of the plan."""
    earlier, later = revision(ask, ask.number("from", query=True)), revision(ask, ask.number("to", query=True))
    lines = difflib.unified_diff(earlier.text.splitlines(), later.text.splitlines(), lineterm="", n=_LINES_AROUND)
    return ask.page(
        "difference.html",
        job=ask.job,
        earlier=earlier,
        later=later,
        lines=list(lines)[2:],
        changes=plan_changes(ask, earlier.number, later.number),
    )


def _listed(ask: Ask, status: int = 200) -> Response:
    revisions = ask.house.jobs.revisions(ask.job.id)
    planned = ask.house.jobs.planned(ask.job.id)
    values = {"revisions": revisions, "planned": planned, "meanwhile": revisions[0].by if status == 409 else ""}
    return ask.page("revisions.html", status=status, job=ask.job, head=revisions[0].number, **values)
