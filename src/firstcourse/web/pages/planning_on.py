"""Planning what is left: boards that are up become fixed in the job's document, and the rest is planned anew."""

from datetime import UTC, datetime

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.app import Session, Task, kept_plan
from firstcourse.app.difference import difference
from firstcourse.app.site import what_is_done
from firstcourse.store.jobs import Kind
from firstcourse.web.asking import Ask
from firstcourse.web.pages.changes import plan_changes
from firstcourse.web.pages.onsite import site_of
from firstcourse.web.pages.saving import Draft, Saved, revision, save


def fix(ask: Ask) -> Response:
    """Write what is done into the document, save it, and ask the desk for the plan of what is left."""
    site = site_of(ask)
    if site is None:
        raise HTTPException(400)
    if site.stand.clashes:
        return ask.go(f"/jobs/{ask.job.id}/site#clashes")
    done, out = what_is_done(site.result, site.stand.values(site.work), datetime.now(UTC))
    base = revision(ask, site.revision)
    session = Session(base.text, name=ask.job.name)
    session.mark_done(
        site.result.plan,
        boards=done.boards,
        cut=done.cut(site.result.plan),
        taken_out=out,
        first_courses=done.first_courses,
    )
    draft = Draft(text=session.text, base=base.number, kind=Kind.EDIT, about="done")
    saved = save(ask, draft)
    if not isinstance(saved, Saved):
        return ask.page(
            "clash.html", status=409, job=ask.job, draft=draft, asked=saved, back=f"/jobs/{ask.job.id}"
        )
    text = revision(ask, saved.number).text
    ask.house.desk.ask(ask.job.id, saved.number, Task(text=text, name=ask.job.name, effort=1))
    return ask.go(f"/jobs/{ask.job.id}/site/left?before={site.revision}&after={saved.number}")


def left(ask: Ask) -> Response:
    """What became of the plan: boards that stay, moved, are new or gone, cuts, sheets and marks."""
    before, after = ask.number("before", query=True), ask.number("after", query=True)
    found = [ask.house.jobs.plan(ask.job.id, number) for number in (before, after)]
    plans = [None if one is None else kept_plan(one.document, one.beside) for one in found]
    earlier, later = plans
    replanned = difference(earlier, later).replanned if earlier and later else None
    marks = {board.id: board.mark for one in plans if one for part in one.plan.surfaces for board in part.boards}
    return ask.page(
        "site_left.html",
        job=ask.job,
        before=before,
        after=after,
        standing=ask.house.desk.standing(ask.job.id),
        replanned=replanned,
        marks=marks,
        changes=plan_changes(ask, before, after) if replanned else None,
    )
