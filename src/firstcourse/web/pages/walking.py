"""Round the room with the tape: the walk, then one reading after another, then the room in the job document."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import cast

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.app.bath import TYPED, USUAL, fitted
from firstcourse.app.session import Session
from firstcourse.app.walk import FieldValue, NextReading, Turn, Walk, begun, path_mm, written
from firstcourse.errors import FirstcourseError
from firstcourse.store.jobs import Kind
from firstcourse.units import Tape, ceil_to, ticks_from_mm, ticks_from_mm_ceil
from firstcourse.values import length
from firstcourse.web.asking import Ask
from firstcourse.web.pages.saving import Draft, answer, revision
from firstcourse.web.sketch import path_sketch, sketch
from firstcourse.words import Speaker

TURNS: tuple[Turn, ...] = (90, -90, 45, -45)
_MOST_LEGS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One walk as it stands in a list."""

    id: str
    walk: Walk


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One reading as it is shown.

    Attributes:
        length: On the tape.
        off: How far the room as adjusted is from it, on the tape; empty where nothing checks it.
    """

    pair: str
    length: str
    off: str


@cache
def _on_tape(tape: Tape, tongue: str) -> Speaker:
    return Speaker("us", tape, tongue=tongue)


def listed(ask: Ask) -> Response:
    """Rooms that are being taped, and where one begins."""
    rooms = Session(revision(ask).text).job.rooms
    return _begin_page(ask, legs=(), room=rooms[0].name if len(rooms) == 1 else "")


def lay(ask: Ask) -> Response:
    """One more side of a walk, or one less, or the walk as a whole."""
    room, tape = " ".join(ask.form.get("room", "").split()), _tape(ask)
    legs = _legs(ask.form.get("legs", ""))
    do = ask.form.get("do", "")
    try:
        if do == "plain":
            long, wide = _about(ask, "long", tape), _about(ask, "wide", tape)
            legs = ((90, long), (90, wide), (90, long), (90, wide))
        elif do == "back":
            legs = legs[:-1]
        elif do in map(str, TURNS):
            if len(legs) >= _MOST_LEGS:
                raise HTTPException(400)
            legs = (*legs, (cast(Turn, int(do)), _about(ask, "about", tape)))
            path_mm(legs)
        if do not in ("plain", "begin"):
            return _begin_page(ask, legs=legs, room=room)
        walk = begun(room, tape, legs)
    except FirstcourseError as error:
        kept = _legs(ask.form.get("legs", ""))
        return _begin_page(ask, legs=kept, room=room, fault=str(error))
    return ask.go(f"/jobs/{ask.job.id}/walk/{ask.house.walks.begin(ask.job.id, walk.model_dump_json())}")


def show(ask: Ask) -> Response:
    """What to tape next."""
    return _walk_page(ask, _walk(ask))


def tape(ask: Ask) -> Response:
    """A reading, a distance that cannot be taped, or one that was a slip."""
    pair, do = ask.form.get("pair", ""), ask.form.get("do", "")
    changes: dict[str, Callable[[Walk], Walk]] = {
        "read": lambda walk: walk.taped(pair, _reading(ask, walk.tape)),
        "skip": lambda walk: walk.skipping(pair),
        "without": lambda walk: walk.without(pair),
    }
    if do not in changes:
        raise HTTPException(400)

    def changed(document: str) -> str:
        return changes[do](Walk.model_validate_json(document)).model_dump_json()

    try:
        if not ask.house.walks.change(ask.job.id, ask.request.path_params["walk"], changed):
            raise HTTPException(404)
    except FirstcourseError as error:
        return _walk_page(ask, _walk(ask), pair=pair, fault=str(error), status=422)
    # Below what stands on every page, so that sketch and keys are in sight at once.
    return ask.go(f"/jobs/{ask.job.id}/walk/{ask.request.path_params['walk']}#here")


def drop(ask: Ask) -> Response:
    """Give a walk up."""
    ask.house.walks.drop(ask.job.id, ask.request.path_params["walk"])
    return ask.go(f"/jobs/{ask.job.id}/walk")


def finish_form(ask: Ask) -> Response:
    """What else is known of the room, and where it goes in the document."""
    return _finish_page(ask, _walk(ask))


def finish(ask: Ask) -> Response:
    """Write the room into the job document."""
    walk, base = _walk(ask), ask.number("base")
    found = revision(ask, base)
    where, _, number = ask.form.get("where", "").partition(" ")
    session = Session(found.text, name=ask.job.name)
    try:
        index = len(session.job.rooms) + 1 if where == "new" else int(number)
        besides = _besides(ask, walk, new=where != "readings")
        done = written(session, walk, index=index, besides=besides, in_place=where == "place")
        draft = Draft(text=done.text, base=base, kind=Kind.EDIT, about=walk.room)
        # A room that is there but for its tile: that is chosen next.
        gone = answer(ask, draft, f"/jobs/{ask.job.id}{'' if done.job.tiles else '/choices'}")
    except (FirstcourseError, ValueError) as error:
        return _finish_page(ask, walk, fault=str(error), status=422)
    if gone.status_code == 303:
        ask.house.walks.drop(ask.job.id, ask.request.path_params["walk"])
    return gone


def _besides(ask: Ask, walk: Walk, *, new: bool) -> dict[str, FieldValue]:
    """What else is said of a room: its height, and where it is new what stands in it and is boarded.

    Raises:
        InputValueError: A length is none, or a side is none of the room's.
    """
    height = _measure(ask, "height", walk.tape)
    besides: dict[str, FieldValue] = {"height": height} if height else {}
    if not new:
        return besides
    stands = fitted(walk, ask.form)
    if ask.form.get("floor"):
        besides["floor"] = {"openings": list(stands.floor)} if stands.floor else {}
    walls: list[FieldValue] = [
        {"wall": side, "framing": _studs(ask, side, walk.tape), **stands.walls.get(side, {})}
        for side in _sides(walk)
        if ask.form.get(f"wall {side}") or side in stands.walls
    ]
    return besides | ({"walls": walls} if walls else {})


def _sides(walk: Walk) -> list[str]:
    return [f"{a}-{b}" for a, b in zip(walk.corners, [*walk.corners[1:], walk.corners[0]], strict=True)]


def _walk(ask: Ask) -> Walk:
    found = ask.house.walks.get(ask.job.id, ask.request.path_params["walk"])
    if found is None:
        raise HTTPException(404)
    return Walk.model_validate_json(found.document)


def _tape(ask: Ask) -> Tape:
    return Session(revision(ask).text).job.tape


def _legs(text: str) -> tuple[tuple[Turn, str], ...]:
    """The sides walked so far, as a form carries them: a turn and a length each, such as `90 8 ft; 90 5 ft`."""
    legs: list[tuple[Turn, str]] = []
    for one in filter(None, text.split(";")):
        turn, _, about = one.strip().partition(" ")
        if turn not in map(str, TURNS) or len(legs) >= _MOST_LEGS:
            raise HTTPException(400)
        legs.append((cast(Turn, int(turn)), about))
    return tuple(legs)


def _about(ask: Ask, name: str, tape: Tape) -> str:
    """About how far, in feet or metres."""
    return f"{ask.form.get(name, '').strip().replace(',', '.')} {'ft' if tape is Tape.INCH else 'm'}"


def _studs(ask: Ask, side: str, tape: Tape) -> FieldValue:
    """How a wall is framed: how far its studs are apart, and where the first stands."""
    unit = "in" if tape is Tape.INCH else "mm"
    typed = {"spacing": ask.form.get("spacing", ""), "first": ask.form.get(f"first {side}", "")}
    return {name: f"{text.strip()} {unit}" for name, text in typed.items() if text.strip()}


def _reading(ask: Ask, tape: Tape) -> str:
    typed = ask.form.get("length", "").strip()
    return typed or _measure(ask, "", tape)


def _measure(ask: Ask, name: str, tape: Tape) -> str:
    """A length from its fields: feet, inches and sixteenths, or millimetres; empty where all are."""

    def digits(field: str) -> str:
        return ask.form.get(f"{name} {field}".strip(), "").strip()

    if tape is Tape.MM:
        return f"{digits('mm')} mm" if digits("mm") else ""
    feet, inches, parts = digits("feet"), digits("inches"), digits("sixteenths")
    if not (feet or inches or parts.strip("0")):
        return ""
    fraction = f" {parts}/16" if parts.strip("0") else ""
    return f"{feet or 0}' {inches or 0}{fraction}\""


def _begin_page(ask: Ask, *, legs: Sequence[tuple[Turn, str]], room: str, fault: str = "") -> Response:
    rows = [Row(id=one.id, walk=Walk.model_validate_json(one.document)) for one in ask.house.walks.of(ask.job.id)]
    closes = sum(int(turn) for turn, _ in legs) == 360 and len(legs) >= 3
    return ask.page(
        "walks.html",
        status=422 if fault else 200,
        job=ask.job,
        rows=rows,
        room=room,
        legs=";".join(f"{turn} {about}" for turn, about in legs),
        count=len(legs),
        closes=closes,
        picture=path_sketch(path_mm(legs)) if legs else "",
        inch=_tape(ask) is Tape.INCH,
        turns=TURNS,
        fault=fault,
    )


def _walk_page(ask: Ask, walk: Walk, *, pair: str = "", fault: str = "", status: int = 200) -> Response:
    stands = walk.stands(Session(revision(ask).text).rules)
    speaker = _on_tape(walk.tape, ask.tongue)
    known = pair.count("-") == 1 and {*pair.split("-")} <= {*walk.corners}
    asked = pair if known else stands.next.pair if stands.next else ""
    by_pair = {frozenset((one.reading.one, one.reading.other)): one for one in stands.residuals}
    lines = []
    for one in walk.readings:
        off = by_pair.get(frozenset(one.pair.split("-")))
        checked = off is not None and off.standardised is not None
        shown = (
            speaker.text("walk-length", length=length(ticks_from_mm(abs(off.residual_mm))))
            if checked and off
            else ""
        )
        lines.append(Line(pair=one.pair, length=speaker.text("walk-length", length=length(one.length)), off=shown))
    within = max(stands.uncertainty_mm.values(), default=0.0)
    return ask.page(
        "walk.html",
        status=status,
        job=ask.job,
        id=ask.request.path_params["walk"],
        walk=walk,
        stands=stands,
        asked=asked,
        said=_said(speaker, walk, lines, stands.next) if not fault else "",
        why=_why(speaker, stands.next, walk) if stands.next and asked == stands.next.pair else "",
        lines=lines,
        within=speaker.text("walk-length", length=length(ticks_from_mm_ceil(within))) if within else "",
        picture=sketch(walk, stands.corners_mm, stands.uncertainty_mm, asked),
        inch=walk.tape is Tape.INCH,
        fault=fault,
    )


def _said(speaker: Speaker, walk: Walk, lines: Sequence[Line], upcoming: NextReading | None) -> str:
    """What the last reading is answered: it closes, it looks wrong, or it is noted."""
    if not walk.readings:
        return ""
    last = lines[-1]
    if upcoming is not None and upcoming.why in ("again", "contradicts"):
        return _why(speaker, upcoming, walk)
    if last.off:
        return speaker.text("walk-answer", "closes", pair=last.pair, length=last.length, off=last.off)
    return speaker.text("walk-answer", "noted", pair=last.pair, length=last.length)


def _why(speaker: Speaker, upcoming: NextReading, walk: Walk) -> str:
    """Why a distance is asked for."""
    if upcoming.why != "again" or upcoming.error_mm is None:
        return speaker.text("walk-why", upcoming.why, pair=upcoming.pair)
    by = length(ceil_to(ticks_from_mm(abs(upcoming.error_mm)), walk.tape.graduation))
    among = ", ".join(upcoming.among)
    way = "long" if upcoming.error_mm > 0 else "short"
    if len(upcoming.among) == 1:
        return speaker.text("walk-why", way, pair=upcoming.pair, by=by)
    return speaker.text("walk-why", "among", pair=upcoming.pair, by=by, among=among)


def _finish_page(ask: Ask, walk: Walk, *, fault: str = "", status: int = 200) -> Response:
    found = revision(ask)
    usual = USUAL[walk.tape]
    return ask.page(
        "walk_done.html",
        status=status,
        job=ask.job,
        id=ask.request.path_params["walk"],
        walk=walk,
        rooms=[room.name for room in Session(found.text).job.rooms],
        base=found.number,
        sides=_sides(walk),
        inch=walk.tape is Tape.INCH,
        typed=ask.form,
        told={name: ask.form.get(name, usual.get(name, "")) for name in TYPED},
        fault=fault,
    )
