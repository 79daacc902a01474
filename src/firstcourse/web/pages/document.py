"""The job document: shown, saved, sent and fetched; and one field of it set."""

from starlette.responses import Response

from firstcourse.app.session import Session
from firstcourse.errors import FirstcourseError
from firstcourse.store.jobs import Kind, Revision, SavedMeanwhileError
from firstcourse.web.asking import Ask
from firstcourse.web.pages.sent import sent_text


def newest(ask: Ask) -> Revision:
    """The newest revision of the job."""
    found = ask.house.jobs.revision(ask.job.id)
    assert found is not None
    return found


def show(ask: Ask) -> Response:
    """The document as text."""
    found = newest(ask)
    return ask.page("document.html", job=ask.job, text=found.text, base=found.number, fault="", meanwhile="")


def save(ask: Ask) -> Response:
    """Save a whole document, typed or sent as a file."""
    base = ask.number("base")
    kind = Kind.UPLOAD if ask.files.get("file", ("", b""))[1] else Kind.DOCUMENT
    text = ask.form.get("text", "").replace("\r\n", "\n")
    try:
        text = sent_text(ask) if kind is Kind.UPLOAD else text
        name = Session(text).job.name
        ask.house.jobs.save(ask.job.id, name, text, base=base, by=ask.who.id, kind=kind)
    except SavedMeanwhileError as error:
        there = newest(ask)
        values = {"text": text, "base": error.head, "fault": "", "meanwhile": there.by}
        return ask.page("document.html", status=409, job=ask.job, **values)
    except FirstcourseError as error:
        values = {"text": text, "base": base, "fault": str(error), "meanwhile": ""}
        return ask.page("document.html", status=422, job=ask.job, **values)
    return ask.go(f"/jobs/{ask.job.id}")


def download(ask: Ask) -> Response:
    """The document as it stands, comments and all."""
    found = newest(ask)
    headers = {"content-disposition": f'attachment; filename="job-{ask.job.id}-{found.number}.yaml"'}
    return Response(found.text.encode(), media_type="application/yaml; charset=utf-8", headers=headers)


def set_field(ask: Ask) -> Response:
    """Set one field by its path, as `rooms[1].floor.openings[2].left`."""
    field, value, base = ask.form.get("field", ""), ask.form.get("value", ""), ask.number("base")
    found = newest(ask)
    session = Session(found.text)
    try:
        session.edit(field, value)
        if base != found.number:
            raise SavedMeanwhileError(found.number)
        name = session.job.name
        ask.house.jobs.save(ask.job.id, name, session.text, base=base, by=ask.who.id, kind=Kind.EDIT, about=field)
    except SavedMeanwhileError:
        values = {"text": found.text, "base": found.number, "fault": "", "meanwhile": found.by}
        return ask.page("document.html", status=409, job=ask.job, **values)
    except FirstcourseError as error:
        values = {"text": found.text, "base": found.number, "fault": str(error), "meanwhile": ""}
        return ask.page("document.html", status=422, job=ask.job, **values)
    return ask.go(f"/jobs/{ask.job.id}")
