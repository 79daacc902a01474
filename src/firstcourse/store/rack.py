"""The rack: pieces of sheets that jobs left over, kept for the next; one for all who work with a database."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import func, select, update
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import Session

from firstcourse.errors import InputValueError
from firstcourse.store.database import Database
from firstcourse.store.ids import new_id
from firstcourse.store.tables import RackRow

MOST_THERE = 1000
"""Pieces on the rack at a time."""
_TRIES = 5
"""To give a piece a number that somebody else takes at the same moment."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPiece:
    """A piece that is put on the rack.

    Attributes:
        board: What its sheet is called.
        kind: Board family.
        size: Width and length of its good rectangle [ticks].
        thickness: [ticks].
        tape: The tape that it was cut by.
        job: The job that left it; None where it is entered by hand.
        plan: SHA-256 of that job's plan.json, and `part` its id there; empty by hand.
    """

    board: str
    kind: str
    size: tuple[int, int]
    thickness: int
    tape: str
    job: str | None = None
    plan: str = ""
    part: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RackPiece(NewPiece):
    """A piece of the rack.

    Attributes:
        number: What is written on it; no other piece ever has it.
        put: When it came.
        used_in: The job that has it now; None while it lies there.
    """

    id: str
    number: int
    put: datetime
    used_in: str | None

    @property
    def label(self) -> str:
        """What is written on it, and what job documents call it."""
        return f"R{self.number}"


class Rack:
    """The rack of a database."""

    def __init__(self, database: Database) -> None:
        """Take an open database."""
        self._database = database

    def pieces(self) -> tuple[RackPiece, ...]:
        """What lies there, by number."""
        with self._database.reading() as session:
            wanted = select(RackRow).where(RackRow.gone.is_(None)).order_by(RackRow.number)
            return tuple(_read(row) for row in session.scalars(wanted))

    def used_in(self, job: str) -> tuple[RackPiece, ...]:
        """What a job has taken, by number."""
        with self._database.reading() as session:
            wanted = select(RackRow).where(RackRow.used_in == job).order_by(RackRow.number)
            return tuple(_read(row) for row in session.scalars(wanted))

    def parts_put(self, job: str, plan: str) -> frozenset[str]:
        """Parts of a plan that were put on the rack, whatever became of them."""
        with self._database.reading() as session:
            wanted = select(RackRow.part).where(RackRow.job == job, RackRow.plan == plan)
            return frozenset(session.scalars(wanted))

    def put(self, pieces: Sequence[NewPiece], *, account: str) -> tuple[int, ...]:
        """Put pieces on the rack; a part of a plan that was put there before stays as it is.

        Returns:
            Their numbers.

        Raises:
            InputValueError: The rack is full.
        """
        for attempt in range(_TRIES):
            try:
                with self._database.writing() as session:
                    return _put(session, pieces, account)
            except IntegrityError:  # somebody else took the number at this moment
                if attempt == _TRIES - 1:
                    raise
        raise AssertionError

    def throw(self, piece: str) -> bool:
        """Take a piece off for good; False where it lies there no more."""
        with self._database.writing() as session:
            there = update(RackRow).where(RackRow.id == piece, RackRow.gone.is_(None))
            return bool(session.execute(there.values(gone=datetime.now(UTC)).returning(RackRow.id)).all())

    def take(self, pieces: Collection[str], job: str) -> None:
        """Take pieces off for a job, all or none.

        Raises:
            InputValueError: One of them lies there no more.
        """
        with self._database.writing() as session:
            there = update(RackRow).where(RackRow.id.in_(pieces), RackRow.gone.is_(None))
            taken = session.execute(there.values(gone=datetime.now(UTC), used_in=job).returning(RackRow.id)).all()
            if len(taken) < len({*pieces}):
                raise InputValueError(
                    "a piece that was chosen is on the rack no more; look at the rack and choose again"
                )

    def back(self, pieces: Collection[str], job: str) -> None:
        """Put pieces back that a job has taken; others stay as they are."""
        with self._database.writing() as session:
            taken = update(RackRow).where(RackRow.id.in_(pieces), RackRow.used_in == job)
            session.execute(taken.values(gone=None, used_in=None))


def _put(session: Session, pieces: Sequence[NewPiece], account: str) -> tuple[int, ...]:
    there = session.scalar(select(func.count()).select_from(RackRow).where(RackRow.gone.is_(None))) or 0
    if there + len(pieces) > MOST_THERE:
        raise InputValueError(
            f"the rack holds {there} pieces, and no more than {MOST_THERE}; throw away what is of no use"
        )
    last = session.scalar(select(func.max(RackRow.number))) or 0
    numbers = []
    for piece in pieces:
        if piece.job is not None:
            same = select(RackRow.id).where(
                RackRow.job == piece.job, RackRow.plan == piece.plan, RackRow.part == piece.part
            )
            if session.scalar(same) is not None:
                continue
        last += 1
        numbers.append(last)
        session.add(
            RackRow(
                id=new_id(),
                number=last,
                board=piece.board,
                kind=piece.kind,
                width=piece.size[0],
                length=piece.size[1],
                thickness=piece.thickness,
                tape=piece.tape,
                job=piece.job,
                plan=piece.plan,
                part=piece.part,
                account=account,
                put=datetime.now(UTC),
                gone=None,
                used_in=None,
            )
        )
        session.flush()
    return tuple(numbers)


def _read(row: RackRow) -> RackPiece:
    return RackPiece(
        id=row.id,
        number=row.number,
        board=row.board,
        kind=row.kind,
        size=(row.width, row.length),
        thickness=row.thickness,
        tape=row.tape,
        job=row.job,
        plan=row.plan,
        part=row.part,
        put=row.put,
        used_in=row.used_in,
    )
