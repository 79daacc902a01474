"""The file of ticks that a phone saved from its pack, taken in as events."""

import json
from hashlib import sha256

from starlette.responses import Response

from firstcourse.app import kept_plan
from firstcourse.app.ticked import read_ticked
from firstcourse.errors import FirstcourseError, InputValueError
from firstcourse.store.site import SiteEvent
from firstcourse.web.asking import Ask
from firstcourse.web.pages.onsite import page_of


def take(ask: Ask) -> Response:
    """Keep what a phone saved; what is kept already stays, and what is said otherwise is asked about."""
    name, data = ask.files.get("file", ("", b""))
    try:
        events = _events(ask, data)
    except FirstcourseError as error:
        return page_of(ask, fault=f"{name[:80]}: {error}")
    ask.house.site.add(ask.job.id, events, by=ask.who.id)
    return ask.go(f"/jobs/{ask.job.id}/site")


def _events(ask: Ask, data: bytes) -> list[SiteEvent]:
    revision, document, beside = _planned(ask, data)
    result = kept_plan(document, beside)
    if result is None:
        raise InputValueError("its plan was made by an earlier version; plan it again")
    ticked = read_ticked(data, result.plan)
    entered = [(thing, "yes", at) for thing, at in ticked.ticks.items()]
    entered += [(thing, one.text, one.at) for thing, one in ticked.measured.items()]
    return [
        SiteEvent(
            # The same from the same file, or a later one of the same phone: it is kept once.
            id=sha256(f"{ticked.plan} {thing} {value} {at.isoformat()}".encode()).hexdigest()[:40],
            thing=thing,
            value=value,
            after=(),
            revision=revision,
            plan=ticked.plan,
            at=at,
        )
        for thing, value, at in entered
    ]


def _planned(ask: Ask, data: bytes) -> tuple[int, str, str]:
    """The planned revision that a file belongs to: its number, plan.json and what is told beside it.

    Raises:
        InputValueError: The job is not planned.
    """
    try:
        digest = json.loads(data).get("plan")
    except (ValueError, AttributeError, RecursionError):
        digest = None  # `read_ticked` says what is wrong with it
    found = None
    for number in sorted(ask.house.jobs.planned(ask.job.id)):
        kept = ask.house.jobs.plan(ask.job.id, number)
        if kept is not None:
            found = (number, kept.document, kept.beside)
            if sha256(kept.document.encode()).hexdigest() == digest:
                break
    if found is None:
        raise InputValueError(ask.text("site-work", "unplanned"))
    return found
