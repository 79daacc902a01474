"""The unfolded room, and one surface of it to work on: what is open in it, where its tile starts."""

from collections.abc import Callable
from typing import Any
from urllib.parse import quote

from starlette.exceptions import HTTPException
from starlette.responses import JSONResponse, Response

from firstcourse.app import Session, Task
from firstcourse.app.fields import moved, text_with_thing, typed, with_start, with_thing, without_thing
from firstcourse.app.one_surface import LightTask, held_of
from firstcourse.app.remedies import with_change
from firstcourse.app.room_view import room_view
from firstcourse.errors import FirstcourseError
from firstcourse.store.jobs import Kind
from firstcourse.units import Tape, format_length, ticks_from_mm
from firstcourse.web.asking import Ask
from firstcourse.web.pages.saving import Draft, answer, revision
from firstcourse.web.pages.shown_surface import (
    Shown,
    foot,
    found_flags,
    named,
    planned_as,
    sheet_of,
    shown_layers,
    shown_surface,
    start_choices,
)
from firstcourse.web.room_drawing import draw_unfolded
from firstcourse.web.surface_drawing import LAYERS, draw, draw_layers, pole_marks

_MOST_MM = 100_000.0


def room(ask: Ask) -> Response:
    """All surfaces of a room at once."""
    number = ask.request.path_params["number"]
    if not number.isdigit() or len(number) > 4:
        raise HTTPException(404)
    found = revision(ask)
    session = Session(found.text, name=ask.job.name)
    plan = planned_as(ask, found.number)
    rooms = [one.name for one in session.job.rooms]
    values: dict[str, Any] = {"job": ask.job, "rooms": rooms, "number": int(number), "planned": plan is not None}
    try:
        view = room_view(session, int(number), plan.plan if plan else None)
    except FirstcourseError as error:
        name = rooms[int(number) - 1] if 0 < int(number) <= len(rooms) else ""
        return ask.page("room.html", status=422, fault=str(error), picture="", surfaces=[], name=name, **values)
    if view is None:
        raise HTTPException(404)
    names = {one.surface.id: named(ask, one.surface.id, view.name) for one in view.placed}
    picture = draw_unfolded(view.placed, names, f"/jobs/{ask.job.id}/surface/", ask.text("unfold-room", "picture"))
    listed = [(name, quote(one)) for one, name in names.items()]
    return ask.page("room.html", fault="", picture=picture, surfaces=listed, name=view.name, **values)


def surface(ask: Ask) -> Response:
    """One surface to work on."""
    return _page(ask, _surface_id(ask), warm=True)


def put(ask: Ask) -> Response:
    """Put something elsewhere, or one more where it is not yet."""
    number = ask.number("number")

    def change(shown: Shown) -> Session:
        given = _given(ask, shown, number)
        return with_thing(shown.session, shown.where, number, given)

    return _changed(ask, change, ask.form.get("id", ""))


def remove(ask: Ask) -> Response:
    """Take something out of the document."""
    number = ask.number("number")

    def change(shown: Shown) -> Session:
        if not 1 <= number <= len(shown.things):
            raise HTTPException(400)
        return without_thing(shown.session, shown.where, number)

    return _changed(ask, change, ask.form.get("id", ""))


def start(ask: Ask) -> Response:
    """Lock one of the starts that were found, or have it found again."""
    rank = ask.number("rank")

    def change(shown: Shown) -> Session:
        if rank == 0:
            return with_start(shown.session, shown.where, None)
        choices = start_choices(ask, shown)
        if not 1 <= rank <= len(choices):
            raise HTTPException(400)
        return with_start(shown.session, shown.where, choices[rank - 1].at)

    return _changed(ask, change, "tiling.start")


def remedy(ask: Ask) -> Response:
    """Make the change that a finding asks for."""
    number = ask.number("flag")

    def change(shown: Shown) -> Session:
        change = next((one.change for one in found_flags(ask, shown) if one.number == number), None)
        if change is None:
            raise HTTPException(400)
        return with_change(shown.session, change)

    return _changed(ask, change, "")


def light(ask: Ask) -> Response:
    """Where something would be, and its surface planned lightly with it there: for a script, as JSON."""
    surface_id, number = _surface_id(ask), ask.number("number")
    shown = shown_surface(ask, surface_id, base=ask.number("base"), planned=False)
    given = _given(ask, shown, number)
    try:
        text = text_with_thing(shown.session, shown.where, number, given)
    except FirstcourseError as error:
        return JSONResponse({"fields": given, "fault": str(error)})
    plan = shown.last.plan if shown.last else None
    task = LightTask(text=text, name=ask.job.name, surface=surface_id, held=held_of(plan, surface_id))
    came = ask.house.light.ask(ask.job.id, task)
    if came.passed:
        return Response(status_code=204)
    if came.made is None:
        return JSONResponse({"fields": given, "fault": came.fault})
    shown = shown.lightly(came.made)
    answered = {
        "fields": given,
        "fault": "",
        "layers": draw_layers(sheet_of(ask, shown)),
        "foot": foot(ask, shown),
    }
    return JSONResponse(answered)


def _given(ask: Ask, shown: Shown, number: int) -> dict[str, str]:
    """Fields as typed; or where something is after it was moved on the drawing."""
    tape, where = shown.session.job.tape, shown.where
    thing = next((one for one in shown.things if one.number == number), None)
    if thing is not None and (ask.form.get("du") or ask.form.get("dv")):
        by = tuple(ticks_from_mm(_moved_mm(ask.form.get(name, "0"))) for name in ("du", "dv"))
        told = moved(thing, where, shown.surveyed, (by[0], by[1]), tape)
        if told is None:
            raise HTTPException(400)
        return told
    given = {name: typed(ask.form.get(name, ""), tape) for name in where.names}
    if thing is None:
        if number != len(shown.things) + 1:
            raise HTTPException(400)
        kind = ask.form.get("kind", "")
        given |= {"id": " ".join(ask.form.get("id", "").split()), "kind": kind}
        if where.part != "wall":
            given["side"] = ask.form.get("side", "")
    return given


def _moved_mm(text: str) -> float:
    try:
        value = float(text or 0)
    except ValueError:
        raise HTTPException(400) from None
    if not -_MOST_MM <= value <= _MOST_MM:
        raise HTTPException(400)
    return value


def _changed(ask: Ask, change: Callable[[Shown], Session], about: str) -> Response:
    """Save a change, have it planned, and show the surface again; what is wrong is told, and nothing is lost."""
    surface_id, base = _surface_id(ask), ask.number("base")
    try:
        shown = shown_surface(ask, surface_id, base=base)
        text = change(shown).text
        back = f"/jobs/{ask.job.id}/surface/{quote(surface_id)}?{_view(ask)}"
        said = f"{surface_id} {about}".strip()
        done = answer(ask, Draft(text=text, base=base, kind=Kind.EDIT, about=said), back)
    except FirstcourseError as error:
        return _page(ask, surface_id, fault=str(error), status=422)
    if done.status_code == 303:
        newest = revision(ask)
        ask.house.desk.ask(ask.job.id, newest.number, Task(text=newest.text, name=ask.job.name))
    return done


def _surface_id(ask: Ask) -> str:
    return str(ask.request.path_params.get("surface") or ask.form.get("surface", ""))


def _view(ask: Ask) -> str:
    """The address of what is shown, as a form carries it."""
    names = [name for name in ask.form.get("view", "").split() if name in LAYERS]
    return "&".join(["set=1", *(f"show={name}" for name in names)]) if "view" in ask.form else ""


def _page(ask: Ask, surface_id: str, *, fault: str = "", status: int = 200, warm: bool = False) -> Response:
    standing = ask.house.desk.standing(ask.job.id)
    try:
        shown = shown_surface(ask, surface_id)
    except FirstcourseError as error:
        return ask.page("work_fault.html", status=422, job=ask.job, fault=fault or str(error), name=surface_id)
    if warm and shown.plan is not None and shown.things:
        held = held_of(shown.plan.plan, surface_id)
        task = LightTask(text=shown.session.text, name=ask.job.name, surface=surface_id, held=held)
        ask.house.light.soon(ask.job.id, task, wait_s=0)
    sheet, tape = sheet_of(ask, shown), shown.session.job.tape
    flags = found_flags(ask, shown)
    room_name = shown.session.job.rooms[shown.where.room - 1].name
    return ask.page(
        "work.html",
        status=status,
        job=ask.job,
        name=named(ask, surface_id, room_name),
        room=shown.where.room,
        room_name=room_name,
        surface=surface_id,
        address=f"/jobs/{ask.job.id}/surface/{quote(surface_id)}",
        base=shown.base,
        where=shown.where,
        things=shown.things,
        sides=shown.session.job.rooms[shown.where.room - 1].side_pairs(),
        layers=LAYERS,
        layers_shown=shown_layers(ask),
        picture=draw(sheet, label=ask.text("unfold-surface", "picture")),
        foot=foot(ask, shown),
        standing=standing,
        planned=shown.plan is not None,
        flags=flags,
        marks=[(one, [named(ask, ref, "") for ref in one.refs]) for one in pole_marks(shown.surface)],
        starts=start_choices(ask, shown),
        locked=shown.locked,
        typed={"number": "", "kind": "", "id": "", "side": "", **(ask.form if fault else {})},
        inch=tape is Tape.INCH,
        height_of=lambda ticks: format_length(ticks, tape, feet=False),
        fault=fault,
    )
