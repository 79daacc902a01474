"""The form for what a newcomer chooses: sheets, tile, which surface gets which, how floors are framed."""

from starlette.responses import Response

from firstcourse.app import Session
from firstcourse.app.choices import (
    SERVES,
    SHEET_FIELDS,
    TILE_FIELDS,
    chosen,
    sheet_rows,
    surface_choices,
    tile_rows,
)
from firstcourse.app.rack import with_pieces
from firstcourse.errors import FirstcourseError, InputValueError
from firstcourse.store.jobs import Kind
from firstcourse.units import Tape
from firstcourse.web.asking import Ask
from firstcourse.web.pages.rack import offered
from firstcourse.web.pages.saving import Draft, answer, revision
from firstcourse.web.pages.shown_surface import named


def show(ask: Ask) -> Response:
    """What is chosen, as a form."""
    found = revision(ask)
    return _page(ask, Session(found.text, name=ask.job.name), found.number)


def save(ask: Ask) -> Response:
    """Save what was chosen."""
    base = ask.number("base")
    session = Session(revision(ask, base).text, name=ask.job.name)
    taken: list[str] = []
    try:
        done = chosen(session, ask.form)
        pieces = [one for one, _ in offered(ask, done) if ask.form.get(f"rack {one.id}")]
        if len(pieces) < sum(name.startswith("rack ") for name in ask.form):
            raise InputValueError(ask.text("web-rack", "gone"))
        text = with_pieces(done, pieces).text
        # Taken before it is saved, so that no piece is in two jobs.
        ask.house.rack.take([one.id for one in pieces], ask.job.id)
        taken = [one.id for one in pieces]
        draft = Draft(text=text, base=base, kind=Kind.EDIT, about=ask.text("unfold-choices", "title"))
        return answer(ask, draft, f"/jobs/{ask.job.id}/room/1")
    except FirstcourseError as error:
        ask.house.rack.back(taken, ask.job.id)
        return _page(ask, session, base, fault=str(error), status=422)


def _page(ask: Ask, session: Session, base: int, *, fault: str = "", status: int = 200) -> Response:
    job = session.job
    choices = surface_choices(job)
    rooms = {one.where.surface: job.rooms[one.where.room - 1] for one in choices}
    return ask.page(
        "choices.html",
        status=status,
        job=ask.job,
        base=base,
        fault=fault,
        typed=ask.form if fault else {},
        sheets=sheet_rows(job),
        sheet_fields=SHEET_FIELDS,
        serves=SERVES,
        tiles=tile_rows(job),
        tile_fields=TILE_FIELDS,
        surfaces=[
            (one, rooms[one.where.surface].name, named(ask, one.where.surface, rooms[one.where.surface].name))
            for one in choices
        ],
        sides={one.where.surface: rooms[one.where.surface].side_pairs() for one in choices},
        inch=job.tape is Tape.INCH,
        rack=offered(ask, session),
    )
