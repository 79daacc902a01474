"""Photos from site, each a numbered pin on the drawing of a surface."""

import re
from dataclasses import dataclass
from hashlib import sha256

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.app import PlanResult, drawing, kept_plan
from firstcourse.app.photo import read_photo
from firstcourse.errors import FirstcourseError, InputValueError
from firstcourse.store.ids import new_id
from firstcourse.store.photos import KeptPhoto, Pin
from firstcourse.web.asking import Ask
from firstcourse.words import speaker_for

STAGES = ("found", "frame", "boards", "water", "tile", "done")
_LONGEST_NOTE = 200
_MIDDLE, _WHOLE = 500, 1000
_BOX = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)"')


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbered:
    """A photo with its number on the drawings.

    Attributes:
        x: Where its pin stands on the drawing, from the left [its millimetres].
        y: From above.
    """

    number: int
    photo: KeptPhoto
    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A surface that photos are pinned to."""

    id: str
    title: str


def listed(ask: Ask) -> Response:
    """All photos, or those of one surface with its drawing."""
    return _page(ask, ask.query.get("surface", ""))


def add(ask: Ask) -> Response:
    """Keep a photo."""
    surface, nonce = ask.form.get("surface", ""), ask.form.get("nonce", "")
    if not nonce or surface not in {one.id for one in _places(ask)}:
        raise HTTPException(400)
    try:
        stage, note = ask.form.get("stage", ""), " ".join(ask.form.get("note", "").split())
        if stage not in STAGES:
            raise InputValueError(f"'{stage[:80]}' is no stage of the work", field="stage")
        if len(note) > _LONGEST_NOTE:
            raise InputValueError(f"{len(note)} letters are too many ({_LONGEST_NOTE} at most)", field="note")
        across, up = _part(ask, "across"), _part(ask, "up")
        photo = read_photo(ask.files.get("photo", ("", b""))[1])
        pin = Pin(
            id=sha256(nonce.encode()).hexdigest()[:40],
            surface=surface,
            stage=stage,
            across=across,
            up=up,
            note=note,
            width=photo.width,
            height=photo.height,
        )
        ask.house.photos.add(ask.job.id, pin, photo.content, by=ask.who.id)
    except FirstcourseError as error:
        return _page(ask, surface, fault=str(error))
    return ask.go(f"/jobs/{ask.job.id}/site/photos#photos")


def shown(ask: Ask) -> Response:
    """A photo by itself."""
    content = ask.house.photos.content(ask.job.id, ask.request.path_params["photo"])
    if content is None:
        raise HTTPException(404)
    return Response(
        content, media_type="image/jpeg", headers={"content-security-policy": "default-src 'none'; sandbox"}
    )


def drop(ask: Ask) -> Response:
    """Take a photo away."""
    ask.house.photos.drop(ask.job.id, ask.form.get("photo", ""))
    return ask.go(f"/jobs/{ask.job.id}/site/photos")


def _part(ask: Ask, name: str) -> int:
    """Thousandths of a drawing."""
    text = ask.form.get(name, str(_MIDDLE))
    if not text.isascii() or not text.isdigit() or len(text) > 4 or int(text) > _WHOLE:
        raise InputValueError(f"'{text[:80]}': a place is 0 to {_WHOLE}", field=name)
    return int(text)


def _plan(ask: Ask) -> PlanResult | None:
    kept = ask.house.jobs.plan(ask.job.id, ask.job.planned) if ask.job.planned else None
    return None if kept is None else kept_plan(kept.document, kept.beside)


def _places(ask: Ask) -> tuple[Place, ...]:
    result = _plan(ask)
    if result is None:
        return ()
    speaker = speaker_for(result.plan, tongue=ask.tongue)
    return tuple(Place(id=one.id, title=speaker.words(speaker.title(one))) for one in result.plan.surfaces)


def _page(ask: Ask, surface: str, *, fault: str = "") -> Response:
    places, result = _places(ask), _plan(ask)
    here = next((one for one in places if one.id == surface), None)
    box = _BOX.search(drawing(result, surface)) if here and result else None
    width, height = (float(box[1]), float(box[2])) if box else (0.0, 0.0)
    photos = [
        Numbered(
            number=number,
            photo=one,
            x=round(width * one.across / _WHOLE, 2),
            y=round(height * (_WHOLE - one.up) / _WHOLE, 2),
        )
        for number, one in enumerate(ask.house.photos.of(ask.job.id), start=1)
    ]
    return ask.page(
        "photos.html",
        status=422 if fault else 200,
        job=ask.job,
        places=places,
        here=here,
        width=width,
        height=height,
        photos=[one for one in photos if here is None or one.photo.surface == here.id],
        titles={one.id: one.title for one in places},
        stages=STAGES,
        nonce=new_id(),
        fault=fault,
    )
