"""What a client sees of a job, and answers to it."""

import re
from datetime import UTC, datetime
from hashlib import sha256

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.app import PlanResult, kept_plan
from firstcourse.app.client import client_view, room_drawing
from firstcourse.app.site import site_work
from firstcourse.errors import FirstcourseError, InputValueError
from firstcourse.store.answers import Answer
from firstcourse.store.ids import new_id
from firstcourse.web.asking import Ask

_LONGEST_NAME, _LONGEST_WORDS, _LONGEST_SIGNATURE = 80, 2000, 20_000
_SIGNATURE = re.compile(r"(?:M\d{1,3} \d{1,3}(?: L\d{1,3} \d{1,3})* ?)*")
_ALONE = "default-src 'none'; style-src 'unsafe-inline'; sandbox"


def show(ask: Ask) -> Response:
    """The plan as its client sees it."""
    return _page(ask)


def drawing(ask: Ask) -> Response:
    """A room unfolded."""
    result = _result(ask)
    if result is None:
        raise HTTPException(404)
    try:
        svg = room_drawing(result, ask.query.get("room", ""))
    except FirstcourseError:
        raise HTTPException(404) from None
    return Response(svg, media_type="image/svg+xml", headers={"content-security-policy": _ALONE})


def answer(ask: Ask) -> Response:
    """That the client approves, or what is wrong."""
    result, nonce, do = _result(ask), ask.form.get("nonce", ""), ask.form.get("do", "")
    if result is None or not nonce or do not in ("approve", "wrong"):
        raise HTTPException(400)
    name = " ".join(ask.form.get("name", "").split())
    words = ask.form.get("words", "").strip().replace("\r\n", "\n")
    signature = ask.form.get("signature", "") if do == "approve" else ""
    try:
        digest = site_work(result).digest
        if ask.form.get("plan") != digest:
            raise InputValueError(ask.text("site-client", "replanned"))
        if not 1 <= len(name) <= _LONGEST_NAME:
            raise InputValueError(ask.text("site-client", "name_missing"), field="name")
        if len(words) > _LONGEST_WORDS or (do == "wrong" and not words):
            raise InputValueError(ask.text("site-client", "words_missing"), field="words")
        if len(signature) > _LONGEST_SIGNATURE or not _SIGNATURE.fullmatch(signature):
            raise InputValueError(ask.text("site-client", "signature_wrong"), field="signature")
        given = Answer(
            id=sha256(nonce.encode()).hexdigest()[:40],
            revision=ask.job.planned,
            plan=digest,
            approves=do == "approve",
            name=name,
            signature=signature,
            words=words,
            at=datetime.now(UTC),
        )
        link = None if ask.link is None else ask.link.id
        account = None if ask.account is None else ask.account.id
        ask.house.answers.add(ask.job.id, given, link=link, account=account)
    except FirstcourseError as error:
        return _page(ask, fault=str(error))
    return ask.go(f"/jobs/{ask.job.id}/client#answers")


def _result(ask: Ask) -> PlanResult | None:
    kept = ask.house.jobs.plan(ask.job.id, ask.job.planned) if ask.job.planned else None
    return None if kept is None else kept_plan(kept.document, kept.beside)


def _page(ask: Ask, *, fault: str = "") -> Response:
    result = _result(ask)
    return ask.page(
        "client.html",
        status=422 if fault else 200,
        job=ask.job,
        view=None if result is None else client_view(result, tongue=ask.tongue),
        digest="" if result is None else site_work(result).digest,
        answers=ask.house.answers.of(ask.job.id),
        typed=ask.form if fault else {},
        nonce=new_id(),
        fault=fault,
    )
