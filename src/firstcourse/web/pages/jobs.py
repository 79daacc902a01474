"""The list of jobs, and one job with what is known of its plan."""

from starlette.responses import Response

from firstcourse.app import Session, new_job_text
from firstcourse.errors import FirstcourseError
from firstcourse.store.accounts import Role
from firstcourse.store.jobs import Kind
from firstcourse.web.asking import Ask
from firstcourse.web.pages.kept import shown_plan
from firstcourse.web.pages.onsite import site_of
from firstcourse.web.pages.sent import sent_text

_PRACTICES, _TAPES = ("us", "uk", "au"), ("inch", "mm")


def home(ask: Ask) -> Response:
    """The list of jobs; for a client the one job."""
    return ask.go("/jobs" if ask.link is None else f"/jobs/{ask.link.job}/client")


def listed(ask: Ask) -> Response:
    """The jobs that may be worked on, the last changed first."""
    archived = ask.query.get("archived") == "yes"
    everything = ask.who.role is Role.OWNER
    cards = ask.house.jobs.cards(None if everything else ask.who.id, archived=archived)
    return ask.page("jobs.html", cards=cards, archived=archived, fault="")


def new_form(ask: Ask) -> Response:
    """What a new job is asked."""
    given = {"name": "", "practice": "us", "tape": "inch", "job_tongue": ask.tongue}
    return ask.page("new_job.html", given=given, practices=_PRACTICES, tapes=_TAPES, fault="")


def new(ask: Ask) -> Response:
    """Make a job."""
    given = {name: ask.form.get(name, "") for name in ("name", "practice", "tape", "job_tongue")}
    name = " ".join(given["name"].split())
    try:
        text = new_job_text(name=name, practice=given["practice"], tape=given["tape"], tongue=given["job_tongue"])
    except FirstcourseError as error:
        values = {"given": given, "practices": _PRACTICES, "tapes": _TAPES, "fault": str(error)}
        return ask.page("new_job.html", status=422, **values)
    return ask.go(f"/jobs/{ask.house.jobs.create(name, text, by=ask.who.id)}")


def upload(ask: Ask) -> Response:
    """Make a job of a document that was sent."""
    try:
        text = sent_text(ask)
        name = Session(text).job.name
    except FirstcourseError as error:
        everything = ask.who.role is Role.OWNER
        cards = ask.house.jobs.cards(None if everything else ask.who.id)
        return ask.page("jobs.html", status=422, cards=cards, archived=False, fault=str(error))
    return ask.go(f"/jobs/{ask.house.jobs.create(name, text, by=ask.who.id, kind=Kind.UPLOAD)}")


def show(ask: Ask) -> Response:
    """One job: how its plan stands, and what is known of it."""
    standing = ask.house.desk.standing(ask.job.id)
    answers = ask.house.answers.of(ask.job.id)
    site = site_of(ask) if answers else None
    return ask.page(
        "job.html",
        job=ask.job,
        standing=standing,
        plan=shown_plan(ask),
        answers=answers,
        digest=site.work.digest if site else "",
    )


def copy(ask: Ask) -> Response:
    """A new job with the same document."""
    found = ask.house.jobs.revision(ask.job.id)
    assert found is not None
    made = ask.house.jobs.create(ask.job.name, found.text, by=ask.who.id, kind=Kind.COPY, about=ask.job.name)
    return ask.go(f"/jobs/{made}")


def archive(ask: Ask) -> Response:
    """Put a job away, or take it out again."""
    ask.house.jobs.archive(ask.job.id, away=not ask.job.archived)
    return ask.go("/jobs" if not ask.job.archived else f"/jobs/{ask.job.id}")
