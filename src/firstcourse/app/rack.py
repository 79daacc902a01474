"""What a plan leaves over and says to keep, and kept pieces in a job's document."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Protocol

from firstcourse.app.session import Session
from firstcourse.job import FieldValue, Job, edited_text, exact_length, without_item
from firstcourse.plan import Plan


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOver:
    """A part of a sheet that a plan says to keep.

    Attributes:
        part: Its id in the plan.
        board: Which stock it is of.
        size: Width and length [ticks].
        thickness: [ticks].
    """

    part: str
    board: str
    kind: str
    size: tuple[int, int]
    thickness: int


class Piece(Protocol):
    """A kept piece, wherever it is kept."""

    @property
    def label(self) -> str:
        """What is written on it."""
        ...

    @property
    def board(self) -> str:
        """What its sheet was called."""
        ...

    @property
    def kind(self) -> str:
        """Board family."""
        ...

    @property
    def size(self) -> tuple[int, int]:
        """Width and length [ticks]."""
        ...

    @property
    def thickness(self) -> int:
        """[ticks]."""
        ...


def left_over(plan: Plan) -> tuple[LeftOver, ...]:
    """What a plan says to keep, sheet by sheet."""
    stock = {one.id: one for one in plan.stock}
    return tuple(
        LeftOver(
            part=f"{sheet.id}/{part.id}",
            board=sheet.stock,
            kind=stock[sheet.stock].kind,
            size=part.size,
            thickness=stock[sheet.stock].thickness,
        )
        for sheet in plan.sheets
        for part in sheet.parts
        if part.keep
    )


def stock_for(job: Job, piece: Piece) -> str:
    """The stock of a job that a piece may be used as; empty where it is of none: another board, or thicker."""
    alike = [
        one.id
        for one in job.stock
        if (one.kind, one.thickness) == (piece.kind, piece.thickness)
        and min(piece.size) <= min(one.size)
        and max(piece.size) <= max(one.size)
    ]
    return piece.board if piece.board in alike else next(iter(alike), "")


def with_pieces(session: Session, pieces: Sequence[Piece]) -> Session:
    """The document with kept pieces to use up.

    Raises:
        JobError: The document would say something a job cannot say.
    """
    text, count = session.text, len(session.job.offcuts)
    tape = session.job.tape
    items: list[FieldValue] = [
        {
            "id": piece.label,
            "stock": stock_for(session.job, piece),
            "size": [exact_length(side, tape) for side in piece.size],
        }
        for piece in pieces
    ]
    if not count:
        text = edited_text(text, "offcuts", items, name=session.name) if items else text
    else:
        for number, item in enumerate(items, start=count + 1):
            text = edited_text(text, f"offcuts[{number}]", item, name=session.name)
    return Session(text, name=session.name)


def without_pieces(session: Session, labels: Collection[str]) -> Session:
    """The document without kept pieces, by what is written on them; others stay.

    Raises:
        JobError: Something else in the document rests on one.
    """
    text = session.text
    for number in reversed([index for index, one in enumerate(session.job.offcuts) if one.id in labels]):
        text = without_item(text, "offcuts", number)
    return Session(text, name=session.name)
