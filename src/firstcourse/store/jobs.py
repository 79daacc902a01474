"""Jobs and their revisions: each save is a new one, none is ever changed."""

import zlib
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum
from typing import Any, cast

from sqlalchemy import CursorResult, delete, func, select, update
from sqlalchemy.orm import Session

from firstcourse.errors import FirstcourseError
from firstcourse.store.database import Database
from firstcourse.store.ids import new_id
from firstcourse.store.tables import AccessRow, AccountRow, JobRow, PaperRow, PlanRow, RevisionRow

_LONGEST_NAME = 200


class Kind(StrEnum):
    """How a revision came to be."""

    NEW = "new"
    EDIT = "edit"
    DOCUMENT = "document"
    UPLOAD = "upload"
    COPY = "copy"
    UNDO = "undo"


class SavedMeanwhileError(FirstcourseError, RuntimeError):
    """Somebody saved a revision after the one that a save was based on."""

    def __init__(self, head: int) -> None:
        self.head = head
        super().__init__(f"revision {head} was saved meanwhile")


@dataclass(frozen=True, slots=True, kw_only=True)
class JobCard:
    """A job as it stands in a list.

    Attributes:
        head: Number of its newest revision.
        planned: Number of the newest revision that is planned; 0 where none is.
        changed: When it was last saved.
        by: Who saved it last.
    """

    id: str
    name: str
    head: int
    planned: int
    changed: datetime
    by: str
    archived: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """One saved state.

    Attributes:
        by: Name of the account that saved it.
        about: What it was: a field, or the number of the revision that was gone back to.
        text: The job document.
    """

    job: str
    number: int
    saved: datetime
    by: str
    kind: Kind
    about: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPlan:
    """A plan as it is kept.

    Attributes:
        effort: How long fewer sheets were looked for.
        document: plan.json.
        beside: What is told beside it, as JSON.
    """

    effort: int
    document: str
    beside: str


_PLANNED = select(func.max(PlanRow.revision)).where(PlanRow.job == JobRow.id).correlate(JobRow).scalar_subquery()
_CARDS = (
    select(JobRow, AccountRow.name, _PLANNED)
    .join(RevisionRow, (RevisionRow.job == JobRow.id) & (RevisionRow.number == JobRow.head))
    .join(AccountRow, AccountRow.id == RevisionRow.account)
)
"""Each job with who saved it last and its newest plan."""


class Jobs:
    """The jobs in a database."""

    def __init__(self, database: Database) -> None:
        """Take an open database."""
        self._database = database

    def cards(self, account: str | None, *, archived: bool = False) -> tuple[JobCard, ...]:
        """All jobs that an account may work on, the last changed first.

        Args:
            account: Its id; None sees all.
            archived: Those put away instead.
        """
        with self._database.reading() as session:
            wanted = _CARDS.order_by(JobRow.changed.desc(), JobRow.id)
            wanted = wanted.where(JobRow.archived.is_not(None) if archived else JobRow.archived.is_(None))
            if account is not None:
                wanted = wanted.join(AccessRow, AccessRow.job == JobRow.id).where(AccessRow.account == account)
            return tuple(_card(*row) for row in session.execute(wanted))

    def card(self, job: str) -> JobCard | None:
        """One job; None where there is none of that id."""
        with self._database.reading() as session:
            found = session.execute(_CARDS.where(JobRow.id == job)).one_or_none()
            return None if found is None else _card(*found)

    def may_work_on(self, job: str, account: str) -> bool:
        """Whether an account that is no owner may work on a job."""
        with self._database.reading() as session:
            return session.get(AccessRow, (job, account)) is not None

    def share(self, job: str, accounts: Iterable[str]) -> None:
        """Set who may work on a job, beside the owners."""
        with self._database.writing() as session:
            session.execute(delete(AccessRow).where(AccessRow.job == job))
            session.add_all(AccessRow(job=job, account=account) for account in accounts)

    def shared_with(self, job: str) -> frozenset[str]:
        """Accounts that may work on a job, beside the owners."""
        with self._database.reading() as session:
            return frozenset(session.scalars(select(AccessRow.account).where(AccessRow.job == job)))

    def create(self, name: str, text: str, *, by: str, kind: Kind = Kind.NEW, about: str = "") -> str:
        """A new job; whoever makes it may work on it.

        Returns:
            Its id.
        """
        job, now = new_id(), datetime.now(UTC)
        with self._database.writing() as session:
            session.add(JobRow(id=job, name=name[:_LONGEST_NAME], head=1, created=now, changed=now, archived=None))
            session.flush()
            session.add(AccessRow(job=job, account=by))
            session.add(_revision(job, 1, now, by, kind, about, text))
        return job

    def save(self, job: str, name: str, text: str, *, base: int, by: str, kind: Kind, about: str = "") -> int:
        """Save a document as the next revision.

        Args:
            job: Its id.
            name: What the document calls the job.
            text: The document, already read.
            base: The revision that it was made from.
            by: Who saves it.
            kind: How it came to be.
            about: See `Revision`.

        Returns:
            The new revision's number; it is on the disk.

        Raises:
            SavedMeanwhileError: `base` is not the newest.
        """
        now = datetime.now(UTC)
        with self._database.writing() as session:
            moved = cast(
                CursorResult[Any],
                session.execute(
                    update(JobRow)
                    .where(JobRow.id == job, JobRow.head == base)
                    .values(head=base + 1, name=name[:_LONGEST_NAME], changed=now)
                ),
            )
            if moved.rowcount != 1:
                raise SavedMeanwhileError(session.scalars(select(JobRow.head).where(JobRow.id == job)).one())
            session.add(_revision(job, base + 1, now, by, kind, about, text))
        return base + 1

    def archive(self, job: str, *, away: bool) -> None:
        """Put a job away, or take it out again."""
        with self._database.writing() as session:
            session.execute(
                update(JobRow).where(JobRow.id == job).values(archived=datetime.now(UTC) if away else None)
            )

    def revision(self, job: str, number: int | None = None) -> Revision | None:
        """One revision, the newest where no number is given; None where there is none."""
        with self._database.reading() as session:
            row = session.get(JobRow, job)
            if row is None:
                return None
            found = session.get(RevisionRow, (job, row.head if number is None else number))
            return None if found is None else _read(session, found)

    def revisions(self, job: str) -> tuple[Revision, ...]:
        """All revisions, the newest first."""
        with self._database.reading() as session:
            wanted = select(RevisionRow).where(RevisionRow.job == job).order_by(RevisionRow.number.desc())
            return tuple(_read(session, row) for row in session.scalars(wanted))

    def keep_plan(self, job: str, revision: int, plan: KeptPlan) -> None:
        """Keep the plan of a revision; papers of the job's earlier plans go, for they can be made again.

        Args:
            job: Its id.
            revision: The one that was planned.
            plan: What came of it.
        """
        with self._database.writing() as session:
            session.execute(delete(PlanRow).where(PlanRow.job == job, PlanRow.revision == revision))
            session.execute(delete(PaperRow).where(PaperRow.job == job))
            session.add(
                PlanRow(
                    job=job,
                    revision=revision,
                    effort=plan.effort,
                    made=datetime.now(UTC),
                    document=zlib.compress(plan.document.encode()),
                    beside=plan.beside,
                )
            )

    def keep_paper(self, job: str, revision: int, name: str, content: bytes) -> None:
        """Keep one paper of the plan of a revision."""
        with self._database.writing() as session:
            session.merge(PaperRow(job=job, revision=revision, name=name, content=content))

    def plan(self, job: str, revision: int) -> KeptPlan | None:
        """The plan of a revision; None where it was never planned."""
        with self._database.reading() as session:
            row = session.get(PlanRow, (job, revision))
            if row is None:
                return None
            document = zlib.decompress(row.document).decode()
            return KeptPlan(effort=row.effort, document=document, beside=row.beside)

    def planned(self, job: str) -> frozenset[int]:
        """Numbers of the revisions that are planned."""
        with self._database.reading() as session:
            return frozenset(session.scalars(select(PlanRow.revision).where(PlanRow.job == job)))

    def paper_names(self, job: str, revision: int) -> tuple[str, ...]:
        """Papers that are kept of the plan of a revision."""
        with self._database.reading() as session:
            wanted = select(PaperRow.name).where(PaperRow.job == job, PaperRow.revision == revision)
            return tuple(session.scalars(wanted.order_by(PaperRow.name)))

    def paper(self, job: str, revision: int, name: str) -> bytes | None:
        """One paper; None where it is not kept."""
        with self._database.reading() as session:
            row = session.get(PaperRow, (job, revision, name))
            return None if row is None else row.content


def _revision(job: str, number: int, now: datetime, by: str, kind: Kind, about: str, text: str) -> RevisionRow:
    return RevisionRow(
        job=job, number=number, saved=now, account=by, kind=kind.value, about=about[:_LONGEST_NAME], text=text
    )


def _card(row: JobRow, by: str, planned: int | None) -> JobCard:
    return JobCard(
        id=row.id,
        name=row.name,
        head=row.head,
        planned=planned or 0,
        changed=row.changed,
        by=by,
        archived=row.archived is not None,
    )


def _read(session: Session, row: RevisionRow) -> Revision:
    return Revision(
        job=row.job,
        number=row.number,
        saved=row.saved,
        by=session.get_one(AccountRow, row.account).name,
        kind=Kind(row.kind),
        about=row.about,
        text=row.text,
    )
