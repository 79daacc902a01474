"""Planning a job, how far it is, and what came of it: drawings and papers."""

import asyncio
import json
from collections.abc import AsyncIterator
from dataclasses import asdict

from starlette.exceptions import HTTPException
from starlette.responses import Response, StreamingResponse

from firstcourse.app import PlanResult, Standing, Task, kept_plan
from firstcourse.app import drawing as drawn
from firstcourse.errors import FirstcourseError
from firstcourse.web.asking import Ask
from firstcourse.web.pages.kept import shown_plan

_LOOK_EVERY_S = 0.25
_KINDS = {
    "pdf": "application/pdf",
    "svg": "image/svg+xml",
    "json": "application/json",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "dxf": "image/vnd.dxf",
}
_SEEN = ("pdf", "svg", "json")
_ALONE = "default-src 'none'; style-src 'unsafe-inline'; sandbox"
"""A drawing that is opened by itself runs nothing and asks for nothing."""


def plan(ask: Ask) -> Response:
    """Ask the desk for a plan of the newest revision."""
    effort = ask.number("effort") if ask.form.get("effort") else 1
    if effort > 3:
        raise HTTPException(400)
    found = ask.house.jobs.revision(ask.job.id)
    assert found is not None
    ask.house.desk.ask(ask.job.id, found.number, Task(text=found.text, name=ask.job.name, effort=effort))
    return ask.go(f"/jobs/{ask.job.id}")


def stop(ask: Ask) -> Response:
    """Stop planning."""
    ask.house.desk.stop(ask.job.id)
    return ask.go(f"/jobs/{ask.job.id}")


def progress(ask: Ask) -> Response:
    """How far planning is, as events, until it is over."""
    desk, job, request = ask.house.desk, ask.job.id, ask.request

    async def events() -> AsyncIterator[str]:
        told = ""
        while not await request.is_disconnected():
            standing = desk.standing(job)
            event = f"data: {_told(standing)}\n\n"
            if event != told:
                told = event
                yield event
            if standing is None or standing.state.over:
                return
            await asyncio.sleep(_LOOK_EVERY_S)

    return StreamingResponse(events(), media_type="text/event-stream")


def surface(ask: Ask) -> Response:
    """One surface of the plan, drawn large."""
    plan = shown_plan(ask)
    wanted = ask.query.get("id", "")
    card = next((one for one in plan.surfaces if one.id == wanted), None) if plan else None
    if plan is None or card is None:
        raise HTTPException(404)
    return ask.page("surface.html", job=ask.job, plan=plan, surface=card, tile=ask.query.get("tile") == "yes")


def drawing(ask: Ask) -> Response:
    """The drawing of one surface, by itself."""
    try:
        svg = drawn(_plan(ask), ask.query.get("id", ""), tile=ask.query.get("tile") == "yes")
    except FirstcourseError:
        raise HTTPException(404) from None
    return Response(svg, media_type=_KINDS["svg"], headers={"content-security-policy": _ALONE})


def paper(ask: Ask) -> Response:
    """One paper of the newest plan."""
    name = ask.request.path_params["name"]
    content = ask.house.jobs.paper(ask.job.id, ask.job.planned, name)
    if content is None:
        raise HTTPException(404)
    ending = name.rpartition(".")[2]
    headers = {"content-security-policy": _ALONE} if ending == "svg" else {}
    if ending not in _SEEN:
        headers["content-disposition"] = f'attachment; filename="{name.replace("/", "-")}"'
    return Response(content, media_type=_KINDS.get(ending, "application/octet-stream"), headers=headers)


def _plan(ask: Ask) -> PlanResult:
    kept = ask.house.jobs.plan(ask.job.id, ask.job.planned) if ask.job.planned else None
    result = None if kept is None else kept_plan(kept.document, kept.beside)
    if result is None:
        raise HTTPException(404)
    return result


def _told(standing: Standing | None) -> str:
    return json.dumps(None if standing is None else {**asdict(standing), "over": standing.state.over})
