"""What is ticked and measured on site: events that are only ever added, so that several phones can be merged."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import select
from sqlalchemy.exc import IntegrityError

from firstcourse.store.database import Database
from firstcourse.store.tables import AccountRow, SiteEventRow


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteEvent:
    """Something ticked or measured.

    Attributes:
        id: Given where it was entered, so that sending it twice keeps it once.
        thing: What: its kind and id in the plan, such as `board/bath/wall/A-B#3`.
        value: What stands there now: `yes` for a tick, what was written, or nothing where it was taken back.
        after: Ids of the events of the same thing that this one replaces: those that were seen when it was made.
        revision: Number of the revision that was planned.
        plan: SHA-256 of that plan.json.
        at: When it was entered, by the clock of the phone.
    """

    id: str
    thing: str
    value: str
    after: tuple[str, ...]
    revision: int
    plan: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptEvent(SiteEvent):
    """An event that is kept.

    Attributes:
        by: Name of the account that sent it.
        came: When it came.
    """

    by: str
    came: datetime


class SiteEvents:
    """The events in a database."""

    def __init__(self, database: Database) -> None:
        """Take an open database."""
        self._database = database

    def of(self, job: str) -> tuple[KeptEvent, ...]:
        """All events of a job, in the order in which they came."""
        with self._database.reading() as session:
            wanted = select(SiteEventRow, AccountRow.name).join(AccountRow, AccountRow.id == SiteEventRow.account)
            wanted = wanted.where(SiteEventRow.job == job)
            ordered = wanted.order_by(SiteEventRow.came, SiteEventRow.at, SiteEventRow.id)
            return tuple(_read(row, by) for row, by in session.execute(ordered))

    def add(self, job: str, events: Sequence[SiteEvent], *, by: str) -> None:
        """Keep events; one whose id is kept already stays as it is. On return all are on the disk.

        Args:
            job: Whose they are.
            events: In the order in which they were entered.
            by: The account that sends them.
        """
        try:
            self._add(job, events, by)
        except IntegrityError:
            # Another request kept one of them this very moment: it is there now.
            self._add(job, events, by)

    def _add(self, job: str, events: Sequence[SiteEvent], by: str) -> None:
        now = datetime.now(UTC)
        with self._database.writing() as session:
            for event in events:
                if session.get(SiteEventRow, (job, event.id)) is None:
                    session.add(
                        SiteEventRow(
                            job=job,
                            id=event.id,
                            account=by,
                            at=event.at,
                            came=now,
                            revision=event.revision,
                            plan=event.plan,
                            thing=event.thing,
                            value=event.value,
                            after=" ".join(event.after),
                        )
                    )
                    session.flush()


def _read(row: SiteEventRow, by: str) -> KeptEvent:
    return KeptEvent(
        id=row.id,
        thing=row.thing,
        value=row.value,
        after=tuple(row.after.split()),
        revision=row.revision,
        plan=row.plan,
        at=row.at,
        by=by,
        came=row.came,
    )
