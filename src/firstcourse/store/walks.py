"""Rooms that are being taped: each reading is on the disk before it is answered."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import delete, select

from firstcourse.store.database import Database
from firstcourse.store.ids import new_id
from firstcourse.store.tables import WalkRow


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptWalk:
    """A walk as it is kept.

    Attributes:
        document: The walk, as JSON.
    """

    id: str
    job: str
    changed: datetime
    document: str


class Walks:
    """The walks in a database."""

    def __init__(self, database: Database) -> None:
        """Take an open database."""
        self._database = database

    def of(self, job: str) -> tuple[KeptWalk, ...]:
        """All walks of a job, the last changed first."""
        with self._database.reading() as session:
            wanted = select(WalkRow).where(WalkRow.job == job).order_by(WalkRow.changed.desc(), WalkRow.id)
            return tuple(_read(row) for row in session.scalars(wanted))

    def get(self, job: str, walk: str) -> KeptWalk | None:
        """One walk; None where the job has none of that id."""
        with self._database.reading() as session:
            row = session.get(WalkRow, walk)
            return None if row is None or row.job != job else _read(row)

    def begin(self, job: str, document: str) -> str:
        """Keep a new walk.

        Returns:
            Its id.
        """
        made = new_id()
        with self._database.writing() as session:
            session.add(WalkRow(id=made, job=job, changed=datetime.now(UTC), document=document))
        return made

    def change(self, job: str, walk: str, changed: Callable[[str], str]) -> bool:
        """Change a walk as it stands now, whoever changed it last; what two phones tape is all kept.

        Args:
            job: Whose it is.
            walk: Its id.
            changed: Takes the walk as JSON and gives it as it is to be; what it raises leaves all as it was.

        Returns:
            Whether there is such a walk; if so the change is on the disk.
        """
        with self._database.writing() as session:
            row = session.get(WalkRow, walk, with_for_update=True)
            if row is None or row.job != job:
                return False
            row.document = changed(row.document)
            row.changed = datetime.now(UTC)
            return True

    def drop(self, job: str, walk: str) -> None:
        """Keep a walk no longer."""
        with self._database.writing() as session:
            session.execute(delete(WalkRow).where(WalkRow.id == walk, WalkRow.job == job))


def _read(row: WalkRow) -> KeptWalk:
    return KeptWalk(id=row.id, job=row.job, changed=row.changed, document=row.document)
