"""The work on site: its parts, what is ticked and measured there, and what phones send of it."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from typing import Any
from urllib.parse import quote

from pydantic import AwareDatetime, BaseModel, ConfigDict, Field, ValidationError
from starlette.exceptions import HTTPException
from starlette.responses import JSONResponse, Response

from firstcourse.app import PlanResult, kept_plan
from firstcourse.app.site import SitePart, SiteWork, site_drawings, site_work
from firstcourse.errors import FirstcourseError, InputValueError
from firstcourse.store.ids import new_id
from firstcourse.store.site import SiteEvent
from firstcourse.web.asking import Ask
from firstcourse.web.pages import statics
from firstcourse.web.standing_site import SiteStand, site_stand

MOST_EVENTS = 500
"""So many are sent at once; a phone sends the rest after them."""
_AHEAD = timedelta(minutes=10)
"""A phone's clock may be so far ahead; what it entered later still is taken as entered now."""
_ALONE = "default-src 'none'; style-src 'unsafe-inline'; sandbox"
EVENT_ID = r"^[0-9a-z-]{8,64}$"


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """A planned job on site.

    Attributes:
        revision: The one that is planned.
    """

    revision: int
    result: PlanResult
    work: SiteWork
    stand: SiteStand


@dataclass(frozen=True, slots=True, kw_only=True)
class PartCard:
    """One part in the list: how much of it is ticked, and how much is written in."""

    number: int
    part: SitePart
    ticked: int
    ticks: int
    written: int
    blanks: int


class _Sent(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)

    id: str = Field(pattern=EVENT_ID)
    thing: str = Field(min_length=1, max_length=400)
    value: str = Field(max_length=1000)
    after: tuple[str, ...] = Field(max_length=50)
    revision: int = Field(ge=1, le=1_000_000)
    plan: str = Field(pattern=r"^[0-9a-f]{64}$")
    at: AwareDatetime


def site_of(ask: Ask) -> Site | None:
    """The job on site; None where it is not planned yet."""
    result = _result(ask, ask.job.planned)
    if result is None:
        return None

    def earlier(revision: int) -> SiteWork | None:
        found = _result(ask, revision)
        return None if found is None else site_work(found)

    work = site_work(result)
    stand = site_stand(ask.house.site.of(ask.job.id), work, earlier)
    return Site(revision=ask.job.planned, result=result, work=work, stand=stand)


def show(ask: Ask) -> Response:
    """The parts of the work, or one of them."""
    return page_of(ask)


def drawing(ask: Ask) -> Response:
    """A drawing of a part."""
    result = _result(ask, ask.job.planned)
    number = ask.query.get("n", "0")
    try:
        drawn = [] if result is None else site_drawings(result, ask.query.get("picture", ""))
        svg = drawn[int(number) if number.isascii() and number.isdigit() else 0].svg
    except (FirstcourseError, IndexError):
        raise HTTPException(404) from None
    return Response(svg, media_type="image/svg+xml", headers={"content-security-policy": _ALONE})


def along(ask: Ask) -> Response:
    """Addresses of all that a phone keeps to work on site without a network."""
    site = site_of(ask)
    if site is None:
        return JSONResponse([])
    base = f"/jobs/{ask.job.id}/site"
    paths = [f"/static/{name}" for name in sorted(statics.names())]
    paths += [base, *(f"{base}?part={number}" for number in range(len(site.work.parts)))]
    for picture in dict.fromkeys(part.section.picture for part in site.work.parts):
        count = len(site_drawings(site.result, picture)) if picture else 0
        paths += [drawing_path(ask.job.id, picture, number) for number in range(count)]
    return JSONResponse(paths)


def drawing_path(job: str, picture: str, number: int) -> str:
    """The address of a drawing, as pages and phones both have it."""
    return f"/jobs/{job}/site/drawing?picture={quote(picture)}&n={number}"


def enter(ask: Ask) -> Response:
    """A tick, or what was written into the blanks of a part, from a form."""
    site, nonce = site_of(ask), ask.form.get("nonce", "")
    if site is None or not nonce:
        raise HTTPException(400)
    entered: list[tuple[str, str, str]] = []
    if "tick" in ask.form:
        after, thing, value = [*ask.form["tick"].split("|", 2), "", ""][:3]
        entered.append((thing, value, after))
    for name, value in ask.form.items():
        kind, _, thing = name.partition(" ")
        before, _, was = ask.form.get(f"was {thing}", "").partition("|")
        if kind == "blank" and " ".join(value.split()) != was:
            entered.append((thing, value, before))
    try:
        events = [
            SiteEvent(
                id=sha256(f"{nonce} {thing} {value}".encode()).hexdigest()[:40],
                thing=thing,
                value=site.work.checked(thing, value),
                after=tuple(after.split()),
                revision=site.revision,
                plan=site.work.digest,
                at=datetime.now(UTC),
            )
            for thing, value, after in entered
        ]
        if ask.form.get("plan") != site.work.digest:
            raise InputValueError(ask.text("site-fault", "replanned"))
    except FirstcourseError as error:
        return page_of(ask, fault=str(error), typed=ask.form)
    ask.house.site.add(ask.job.id, events, by=ask.who.id)
    part = ask.form.get("part", "")
    return ask.go(
        f"/jobs/{ask.job.id}/site" + (f"?part={part}#ticks" if part.isascii() and part.isdigit() else "")
    )


def events(ask: Ask) -> Response:
    """What a phone entered, each event by itself: what is answered as kept is on the disk."""
    try:
        told = json.loads(ask.form.get("events", ""))
    except (ValueError, RecursionError):
        raise HTTPException(400) from None
    if not isinstance(told, list) or len(told) > MOST_EVENTS:
        raise HTTPException(400)
    kept: list[SiteEvent] = []
    refused: list[dict[str, str]] = []
    works: dict[int, SiteWork | None] = {}
    for one in told:
        try:
            kept.append(_event(ask, _Sent.model_validate(one), works))
        except ValidationError:
            refused.append({"id": str(one.get("id", "") if isinstance(one, dict) else "")[:64], "why": "form"})
        except FirstcourseError as error:
            refused.append({"id": one["id"], "why": str(error)})
    ask.house.site.add(ask.job.id, kept, by=ask.who.id)
    return JSONResponse({"kept": [event.id for event in kept], "refused": refused})


def _event(ask: Ask, sent: _Sent, works: dict[int, SiteWork | None]) -> SiteEvent:
    if sent.revision not in works:
        result = _result(ask, sent.revision)
        works[sent.revision] = None if result is None else site_work(result)
    work, value = works[sent.revision], sent.value
    if work is not None and work.digest == sent.plan:
        value = work.checked(sent.thing, value)
    # A plan that was made anew with another effort is there no more: what was ticked on it is kept all the same.
    return SiteEvent(
        id=sent.id,
        thing=sent.thing,
        value=value,
        after=tuple(name[:64] for name in sent.after),
        revision=sent.revision,
        plan=sent.plan,
        at=min(sent.at, datetime.now(UTC) + _AHEAD),
    )


def _result(ask: Ask, revision: int) -> PlanResult | None:
    kept = ask.house.jobs.plan(ask.job.id, revision) if revision else None
    return None if kept is None else kept_plan(kept.document, kept.beside)


def _cards(site: Site) -> Sequence[PartCard]:
    values = site.stand.values(site.work)
    cards = []
    for number, part in enumerate(site.work.parts):
        ticks = [item.id for item in part.section.items] + list((part.section.tiles or {}).values())
        blanks = [entry.id for entry in part.section.entries]
        cards.append(
            PartCard(
                number=number,
                part=part,
                ticked=sum(bool(values.get(name)) for name in ticks),
                ticks=len(ticks),
                written=sum(bool(values.get(name)) for name in blanks),
                blanks=len(blanks),
            )
        )
    return cards


def page_of(ask: Ask, *, fault: str = "", typed: Mapping[str, str] | None = None) -> Response:
    """The page on site, or of one part.

    Args:
        ask: Which part it asks for.
        fault: What was wrong with what was entered.
        typed: What was typed into the form that was wrong.
    """
    site = site_of(ask)
    if site is None:
        return ask.page("site_none.html", job=ask.job)
    asked = (typed or ask.query).get("part", "")
    number = int(asked) if asked.isascii() and asked.isdigit() and len(asked) < 6 else -1
    values: dict[str, Any] = {
        "job": ask.job,
        "site": site,
        "stand": site.stand,
        "values": site.stand.values(site.work),
        "nonce": new_id(),
        "fault": fault,
    }
    status = 422 if fault else 200
    if not 0 <= number < len(site.work.parts):
        cards = _cards(site)
        new = [name for name, value in values["values"].items() if name.startswith("board/") and value]
        values |= {"cards": cards, "set": len(set(new) - site.work.up), "names": _names(site.work)}
        return ask.page("site.html", status=status, **values)
    part = site.work.parts[number]
    drawn = site_drawings(site.result, part.section.picture) if part.section.picture else []
    pictures = [
        (drawing_path(ask.job.id, part.section.picture, number), one.name) for number, one in enumerate(drawn)
    ]
    values |= {
        "number": number,
        "part": part,
        "pictures": pictures,
        "typed": typed or {},
        "last": len(site.work.parts),
    }
    return ask.page("site_part.html", status=status, **values)


def _names(work: SiteWork) -> dict[str, tuple[int, str]]:
    """By the id of each thing: the number of its part, and what it is called there."""
    names: dict[str, tuple[int, str]] = {}
    for number, part in enumerate(work.parts):
        section = part.section
        names |= {item.id: (number, f"{section.title}: {item.strong or item.text}") for item in section.items}
        names |= {entry.id: (number, entry.label) for entry in section.entries}
        names |= {thing: (number, f"{section.title}: {name}") for name, thing in (section.tiles or {}).items()}
    return names
