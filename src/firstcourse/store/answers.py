"""What clients answer to a plan: that they approve it, or what is wrong with it; never changed."""

from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import func, select
from sqlalchemy.exc import IntegrityError

from firstcourse.errors import InputValueError
from firstcourse.store.database import Database
from firstcourse.store.tables import ClientAnswerRow

MOST_ANSWERS = 200
"""To one job."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a client answers.

    Attributes:
        id: Given with the form, so that sending it twice keeps it once.
        revision: Number of the revision that was planned.
        plan: SHA-256 of that plan.json: what was approved is this plan and no other.
        approves: Whether it is approved; else something is wrong.
        name: As it was typed.
        signature: As it was drawn, an SVG path in a box of 600 by 200; may be empty.
        words: What is wrong, or what else is said.
        at: When it came.
    """

    id: str
    revision: int
    plan: str
    approves: bool
    name: str
    signature: str
    words: str
    at: datetime


class Answers:
    """The answers in a database."""

    def __init__(self, database: Database) -> None:
        """Take an open database."""
        self._database = database

    def of(self, job: str) -> tuple[Answer, ...]:
        """All answers to a job, the latest first."""
        with self._database.reading() as session:
            wanted = select(ClientAnswerRow).where(ClientAnswerRow.job == job)
            ordered = wanted.order_by(ClientAnswerRow.at.desc(), ClientAnswerRow.id)
            return tuple(_read(row) for row in session.scalars(ordered))

    def add(self, job: str, answer: Answer, *, link: str | None, account: str | None) -> None:
        """Keep an answer; one whose id is kept already stays as it is.

        Args:
            job: What it is about.
            answer: Its moment is when it is kept.
            link: The client link that it came by.
            account: The account whose browser it was entered in, where it came by none.

        Raises:
            InputValueError: The job has too many.
        """
        try:
            with self._database.writing() as session:
                if session.get(ClientAnswerRow, (job, answer.id)) is not None:
                    return
                count = select(func.count()).select_from(ClientAnswerRow).where(ClientAnswerRow.job == job)
                if (session.scalar(count) or 0) >= MOST_ANSWERS:
                    raise InputValueError(f"{MOST_ANSWERS} answers were sent already; speak with your setter")
                row = ClientAnswerRow(
                    job=job,
                    id=answer.id,
                    link=link,
                    account=account,
                    at=datetime.now(UTC),
                    revision=answer.revision,
                    plan=answer.plan,
                    approves=answer.approves,
                    name=answer.name,
                    signature=answer.signature,
                    words=answer.words,
                )
                session.add(row)
        except IntegrityError:
            return  # another request kept it this very moment


def _read(row: ClientAnswerRow) -> Answer:
    return Answer(
        id=row.id,
        revision=row.revision,
        plan=row.plan,
        approves=row.approves,
        name=row.name,
        signature=row.signature,
        words=row.words,
        at=row.at,
    )
