"""The rack: pieces that jobs left over, put there, thrown away, and used up by the next job."""

from collections.abc import Sequence
from dataclasses import dataclass
from hashlib import sha256

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.app import Session, kept_plan
from firstcourse.app.fields import typed
from firstcourse.app.rack import LeftOver, left_over, stock_for, without_pieces
from firstcourse.errors import FirstcourseError, InputValueError
from firstcourse.store.accounts import Role
from firstcourse.store.jobs import Kind
from firstcourse.store.rack import NewPiece, RackPiece
from firstcourse.units import LengthError, Tape, format_length, parse_length
from firstcourse.web.asking import Ask
from firstcourse.web.pages.saving import Draft, answer, revision

_TICK = "piece "
_FIELDS = ("width", "length", "thickness")


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownPiece:
    """A piece in a reader's words.

    Attributes:
        key: What its form sends.
        size: Width and length on its tape.
        thickness: On its tape.
        job: The job that left it, where the reader may work on that; else None.
    """

    key: str
    label: str
    board: str
    size: str
    thickness: str
    job: tuple[str, str] | None = None


def shown(ask: Ask) -> Response:
    """All that lies there."""
    return _rack_page(ask)


def add(ask: Ask) -> Response:
    """Put a piece there by hand."""
    tape = Tape.MM if ask.form.get("tape") == "mm" else Tape.INCH
    board = " ".join(ask.form.get("board", "").split())
    try:
        if not board or len(board) > 60:
            raise InputValueError(
                "the sheet that it was cut from needs a name of up to 60 characters", field="board"
            )
        width, length, thickness = (_length(ask, name, tape) for name in _FIELDS)
        kind = " ".join(ask.form.get("kind", "").split())[:60] or "fibre_cement"
        piece = NewPiece(board=board, kind=kind, size=(width, length), thickness=thickness, tape=tape.value)
        ask.house.rack.put([piece], account=ask.who.id)
    except FirstcourseError as error:
        return _rack_page(ask, fault=str(error), status=422)
    return ask.go("/rack")


def throw(ask: Ask) -> Response:
    """Take a piece off for good."""
    ask.house.rack.throw(ask.form.get("piece", ""))
    return ask.go("/rack")


def of_job(ask: Ask) -> Response:
    """What a job left over, and what it has from the rack."""
    return _job_page(ask)


def put(ask: Ask) -> Response:
    """Put what was ticked of a plan's left-over pieces there."""
    digest, tape, left = _left(ask)
    # What was ticked belongs to the plan that was shown.
    if left and ask.form.get("plan") != digest:
        return _job_page(ask, fault=ask.text("web-rack", "planned_again"), status=409)
    wanted = _ticked(ask)
    pieces = [
        NewPiece(
            board=one.board,
            kind=one.kind,
            size=one.size,
            thickness=one.thickness,
            tape=tape.value,
            job=ask.job.id,
            plan=digest,
            part=one.part,
        )
        for one in left
        if one.part in wanted
    ]
    try:
        ask.house.rack.put(pieces, account=ask.who.id)
    except FirstcourseError as error:
        return _job_page(ask, fault=str(error), status=422)
    return ask.go(f"/jobs/{ask.job.id}/rack")


def back(ask: Ask) -> Response:
    """Put a piece back that the job has, and take it out of the job's document."""
    number = ask.number("base")
    piece = next((one for one in ask.house.rack.used_in(ask.job.id) if one.id == ask.form.get("piece")), None)
    if piece is None:
        raise HTTPException(400)
    session = Session(revision(ask, number).text, name=ask.job.name)
    try:
        text = without_pieces(session, [piece.label]).text
        draft = Draft(text=text, base=number, kind=Kind.EDIT, about=piece.label)
        done = answer(ask, draft, f"/jobs/{ask.job.id}/rack")
    except FirstcourseError as error:
        return _job_page(ask, fault=str(error), status=422)
    if done.status_code == 303:
        ask.house.rack.back([piece.id], ask.job.id)
    return done


def offered(ask: Ask, session: Session) -> Sequence[tuple[RackPiece, ShownPiece]]:
    """What lies on the rack and is of one of a job's sheets."""
    return [(one, _shown(ask, one)) for one in ask.house.rack.pieces() if stock_for(session.job, one)]


def _rack_page(ask: Ask, *, fault: str = "", status: int = 200) -> Response:
    pieces = [_shown(ask, one) for one in ask.house.rack.pieces()]
    given = ask.form if fault else {}
    return ask.page("rack.html", status=status, pieces=pieces, fault=fault, given=given, fields=_FIELDS)


def _job_page(ask: Ask, *, fault: str = "", status: int = 200) -> Response:
    digest, tape, left = _left(ask)
    put_there = ask.house.rack.parts_put(ask.job.id, digest) if digest else frozenset()
    return ask.page(
        "job_rack.html",
        status=status,
        job=ask.job,
        base=revision(ask).number,
        plan=digest,
        left=[
            ShownPiece(
                key=one.part,
                label=one.part,
                board=one.board,
                size=_size(one.size, tape),
                thickness=format_length(one.thickness, tape, feet=False),
            )
            for one in left
            if one.part not in put_there
        ],
        put=len(put_there),
        used=[_shown(ask, one) for one in ask.house.rack.used_in(ask.job.id)],
        fault=fault,
    )


def _left(ask: Ask) -> tuple[str, Tape, Sequence[LeftOver]]:
    """The digest of a job's newest plan, its tape, and what it leaves over; none where there is no plan."""
    kept = ask.house.jobs.plan(ask.job.id, ask.job.planned) if ask.job.planned else None
    result = None if kept is None else kept_plan(kept.document, kept.beside)
    if result is None:
        return "", Tape.INCH, ()
    tape = Session(revision(ask, ask.job.planned).text).job.tape
    return sha256(result.document.encode()).hexdigest(), tape, left_over(result.plan)


def _shown(ask: Ask, piece: RackPiece) -> ShownPiece:
    tape = Tape(piece.tape)
    card = None if piece.job is None else ask.house.jobs.card(piece.job)
    seen = card is not None and (ask.who.role is Role.OWNER or ask.house.jobs.may_work_on(card.id, ask.who.id))
    return ShownPiece(
        key=piece.id,
        label=piece.label,
        board=piece.board,
        size=_size(piece.size, tape),
        thickness=format_length(piece.thickness, tape, feet=False),
        job=(card.id, card.name) if card is not None and seen else None,
    )


def _size(size: tuple[int, int], tape: Tape) -> str:
    return " × ".join(format_length(side, tape, feet=False) for side in size)


def _ticked(ask: Ask) -> set[str]:
    return {name.removeprefix(_TICK) for name in ask.form if name.startswith(_TICK)}


def _length(ask: Ask, name: str, tape: Tape) -> int:
    text = typed(ask.form.get(name, ""), tape)
    try:
        found = parse_length(text)
    except LengthError as error:
        raise InputValueError(str(error), field=name) from None
    if not 0 < found <= 64_000_000:
        raise InputValueError(f"'{text}' is no length of a piece", field=name)
    return found
