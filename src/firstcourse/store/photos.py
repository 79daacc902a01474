"""Photos from site, each pinned to a place of a surface."""

from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import delete, func, select
from sqlalchemy.exc import IntegrityError

from firstcourse.errors import InputValueError
from firstcourse.store.database import Database
from firstcourse.store.tables import AccountRow, PhotoRow

MOST_PHOTOS = 500
"""Of one job."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pin:
    """What a photo shows.

    Attributes:
        id: Given with the form, so that sending it twice keeps it once.
        surface: Id of the surface.
        stage: Of the work.
        across: Where on the surface's drawing, from its left edge [thousandths of its width].
        up: From its lower edge [thousandths of its height].
        note: What is to be seen.
        width: Of the photo [pixels].
        height: Of the photo [pixels].
    """

    id: str
    surface: str
    stage: str
    across: int
    up: int
    note: str
    width: int
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPhoto(Pin):
    """A photo that is kept.

    Attributes:
        by: Name of the account that sent it.
        at: When it came.
    """

    by: str
    at: datetime


class Photos:
    """The photos in a database."""

    def __init__(self, database: Database) -> None:
        """Take an open database."""
        self._database = database

    def of(self, job: str) -> tuple[KeptPhoto, ...]:
        """All photos of a job without what they show, the first taken first."""
        columns = (PhotoRow.id, PhotoRow.surface, PhotoRow.stage, PhotoRow.across, PhotoRow.up, PhotoRow.note)
        wanted = select(*columns, PhotoRow.width, PhotoRow.height, PhotoRow.at, AccountRow.name.label("by"))
        wanted = wanted.join(AccountRow, AccountRow.id == PhotoRow.account).where(PhotoRow.job == job)
        with self._database.reading() as session:
            rows = session.execute(wanted.order_by(PhotoRow.at, PhotoRow.id)).mappings()
            return tuple(KeptPhoto(**row) for row in rows)

    def content(self, job: str, photo: str) -> bytes | None:
        """A photo as JPEG; None where the job has none of that id."""
        with self._database.reading() as session:
            row = session.get(PhotoRow, (job, photo))
            return None if row is None else row.content

    def add(self, job: str, pin: Pin, content: bytes, *, by: str) -> None:
        """Keep a photo; one whose id is kept already stays as it is.

        Raises:
            InputValueError: The job has too many.
        """
        try:
            with self._database.writing() as session:
                if session.get(PhotoRow, (job, pin.id)) is not None:
                    return
                count = select(func.count()).select_from(PhotoRow).where(PhotoRow.job == job)
                if (session.scalar(count) or 0) >= MOST_PHOTOS:
                    raise InputValueError(
                        f"the job has {MOST_PHOTOS} photos already; take some away", field="photo"
                    )
                row = PhotoRow(
                    job=job,
                    id=pin.id,
                    account=by,
                    at=datetime.now(UTC),
                    surface=pin.surface,
                    stage=pin.stage,
                    across=pin.across,
                    up=pin.up,
                    note=pin.note,
                    width=pin.width,
                    height=pin.height,
                    content=content,
                )
                session.add(row)
        except IntegrityError:
            return  # another request kept it this very moment

    def drop(self, job: str, photo: str) -> None:
        """Keep a photo no longer."""
        with self._database.writing() as session:
            session.execute(delete(PhotoRow).where(PhotoRow.job == job, PhotoRow.id == photo))
