"""The job document: shown, saved, sent and fetched; and one field of it set."""

from starlette.responses import Response

from firstcourse.app import Session
from firstcourse.errors import FirstcourseError
from firstcourse.store.jobs import Kind
from firstcourse.web.asking import Ask
from firstcourse.web.pages.saving import Draft, answer, revision
from firstcourse.web.pages.sent import sent_text


def show(ask: Ask) -> Response:
    """The document as text."""
    found = revision(ask)
    return _shown(ask, text=found.text, base=found.number)


def save(ask: Ask) -> Response:
    """Save a whole document, typed or sent as a file."""
    base, text = ask.number("base"), ask.form.get("text", "").replace("\r\n", "\n")
    sent = bool(ask.files.get("file", ("", b""))[1])
    try:
        text = sent_text(ask) if sent else text
        draft = Draft(text=text, base=base, kind=Kind.UPLOAD if sent else Kind.DOCUMENT)
        return answer(ask, draft, f"/jobs/{ask.job.id}")
    except FirstcourseError as error:
        return _shown(ask, status=422, text=text, base=base, fault=str(error))


def download(ask: Ask) -> Response:
    """The document as it stands, comments and all."""
    found = revision(ask)
    headers = {"content-disposition": f'attachment; filename="job-{ask.job.id}-{found.number}.yaml"'}
    return Response(found.text.encode(), media_type="application/yaml; charset=utf-8", headers=headers)


def set_field(ask: Ask) -> Response:
    """Set one field by its path, as `rooms[1].floor.openings[2].left`."""
    field, value, base = ask.form.get("field", ""), ask.form.get("value", ""), ask.number("base")
    found = revision(ask, base)
    try:
        session = Session(found.text, name=ask.job.name)
        session.edit(field, value)
        draft = Draft(text=session.text, base=base, kind=Kind.EDIT, about=field)
        return answer(ask, draft, f"/jobs/{ask.job.id}/document")
    except FirstcourseError as error:
        return _shown(ask, status=422, text=found.text, base=base, field=field, value=value, fault=str(error))


def _shown(
    ask: Ask, *, text: str, base: int, status: int = 200, field: str = "", value: str = "", fault: str = ""
) -> Response:
    values = {"text": text, "base": base, "field": field, "value": value, "fault": fault}
    return ask.page("document.html", status=status, job=ask.job, **values)
