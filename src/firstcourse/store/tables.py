"""The tables as they stand now; `migrations` brings any older database to them."""

from datetime import UTC, datetime
from typing import ClassVar

from sqlalchemy import (
    DateTime,
    Dialect,
    ForeignKey,
    LargeBinary,
    MetaData,
    String,
    Text,
    TypeDecorator,
    UniqueConstraint,
)
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

ID = 20
"""Characters of an id, see `ids.new_id`."""
LONGEST_ACCOUNT = 80
LONGEST_NAME = 60
"""Characters of a name in a job's document."""
LONGEST_EVENT = 64
"""Characters of the id that a phone gives an event."""
DIGEST = 64
"""Characters of a SHA-256 in hex."""


class Moment(TypeDecorator[datetime]):
    """A moment in UTC; SQLite keeps no zone, so it is put back on reading."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """To UTC."""
        return None if value is None else value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """In UTC."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class Base(DeclarativeBase):
    """What all tables share: names of keys that are the same in every database."""

    metadata = MetaData(
        naming_convention={
            "pk": "pk_%(table_name)s",
            "fk": "fk_%(table_name)s_%(column_0_name)s",
            "uq": "uq_%(table_name)s_%(column_0_name)s",
            "ix": "ix_%(table_name)s_%(column_0_name)s",
        }
    )
    type_annotation_map: ClassVar = {datetime: Moment()}


class AccountRow(Base):
    """Somebody who may sign in."""

    __tablename__ = "account"

    id: Mapped[str] = mapped_column(String(ID), primary_key=True)
    name: Mapped[str] = mapped_column(String(LONGEST_ACCOUNT), unique=True)
    role: Mapped[str] = mapped_column(String(16))
    password: Mapped[str | None] = mapped_column(String(200))
    tongue: Mapped[str] = mapped_column(String(16))
    created: Mapped[datetime]
    closed: Mapped[datetime | None]


class JobRow(Base):
    """A job; its document is the newest revision's."""

    __tablename__ = "job"

    id: Mapped[str] = mapped_column(String(ID), primary_key=True)
    name: Mapped[str] = mapped_column(String(200))
    head: Mapped[int]
    created: Mapped[datetime]
    changed: Mapped[datetime] = mapped_column(index=True)
    archived: Mapped[datetime | None]


class AccessRow(Base):
    """An account that may work on a job; an owner may work on all."""

    __tablename__ = "access"

    job: Mapped[str] = mapped_column(ForeignKey("job.id"), primary_key=True)
    account: Mapped[str] = mapped_column(ForeignKey("account.id"), primary_key=True, index=True)


class RevisionRow(Base):
    """One saved state of a job's document; never changed and never removed."""

    __tablename__ = "revision"

    job: Mapped[str] = mapped_column(ForeignKey("job.id"), primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    saved: Mapped[datetime]
    account: Mapped[str] = mapped_column(ForeignKey("account.id"))
    kind: Mapped[str] = mapped_column(String(16))
    about: Mapped[str] = mapped_column(String(200))
    text: Mapped[str] = mapped_column(Text)


class PlanRow(Base):
    """The plan of one revision: plan.json, packed."""

    __tablename__ = "plan"

    job: Mapped[str] = mapped_column(ForeignKey("job.id"), primary_key=True)
    revision: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    effort: Mapped[int]
    made: Mapped[datetime]
    document: Mapped[bytes] = mapped_column(LargeBinary)
    beside: Mapped[str] = mapped_column(Text)


class PaperRow(Base):
    """One paper of the plan of one revision; made again when it is gone."""

    __tablename__ = "paper"

    job: Mapped[str] = mapped_column(ForeignKey("job.id"), primary_key=True)
    revision: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    name: Mapped[str] = mapped_column(String(200), primary_key=True)
    content: Mapped[bytes] = mapped_column(LargeBinary)


class WalkRow(Base):
    """A room that is being taped, until it is written into the job's document."""

    __tablename__ = "walk"

    id: Mapped[str] = mapped_column(String(ID), primary_key=True)
    job: Mapped[str] = mapped_column(ForeignKey("job.id"), index=True)
    changed: Mapped[datetime]
    document: Mapped[str] = mapped_column(Text)


class SiteEventRow(Base):
    """Something ticked or measured on site; never changed, a later one takes it back."""

    __tablename__ = "site_event"

    job: Mapped[str] = mapped_column(ForeignKey("job.id"), primary_key=True)
    id: Mapped[str] = mapped_column(String(LONGEST_EVENT), primary_key=True)
    account: Mapped[str] = mapped_column(ForeignKey("account.id"))
    at: Mapped[datetime]
    came: Mapped[datetime]
    revision: Mapped[int]
    plan: Mapped[str] = mapped_column(String(DIGEST))
    thing: Mapped[str] = mapped_column(Text)
    value: Mapped[str] = mapped_column(Text)
    after: Mapped[str] = mapped_column(Text)


class PhotoRow(Base):
    """A photo from site, as JPEG."""

    __tablename__ = "photo"

    job: Mapped[str] = mapped_column(ForeignKey("job.id"), primary_key=True)
    id: Mapped[str] = mapped_column(String(LONGEST_EVENT), primary_key=True)
    account: Mapped[str] = mapped_column(ForeignKey("account.id"))
    at: Mapped[datetime]
    surface: Mapped[str] = mapped_column(Text)
    stage: Mapped[str] = mapped_column(String(16))
    across: Mapped[int]
    up: Mapped[int]
    note: Mapped[str] = mapped_column(Text)
    width: Mapped[int]
    height: Mapped[int]
    content: Mapped[bytes] = mapped_column(LargeBinary)


class ClientAnswerRow(Base):
    """What a client answered to a plan; never changed."""

    __tablename__ = "client_answer"

    job: Mapped[str] = mapped_column(ForeignKey("job.id"), primary_key=True)
    id: Mapped[str] = mapped_column(String(LONGEST_EVENT), primary_key=True)
    link: Mapped[str | None] = mapped_column(ForeignKey("client_link.id"))
    account: Mapped[str | None] = mapped_column(ForeignKey("account.id"))
    at: Mapped[datetime]
    revision: Mapped[int]
    plan: Mapped[str] = mapped_column(String(DIGEST))
    approves: Mapped[bool]
    name: Mapped[str] = mapped_column(String(LONGEST_ACCOUNT))
    signature: Mapped[str] = mapped_column(Text)
    words: Mapped[str] = mapped_column(Text)


class RackRow(Base):
    """A piece of a sheet that is kept for the next job; one that is used or thrown away keeps its number."""

    __tablename__ = "rack_piece"
    __table_args__ = (UniqueConstraint("job", "plan", "part"),)

    id: Mapped[str] = mapped_column(String(ID), primary_key=True)
    number: Mapped[int] = mapped_column(unique=True)
    board: Mapped[str] = mapped_column(String(LONGEST_NAME))
    kind: Mapped[str] = mapped_column(String(LONGEST_NAME))
    width: Mapped[int]
    length: Mapped[int]
    thickness: Mapped[int]
    tape: Mapped[str] = mapped_column(String(8))
    job: Mapped[str | None] = mapped_column(ForeignKey("job.id"))
    plan: Mapped[str] = mapped_column(String(DIGEST))
    part: Mapped[str] = mapped_column(String(200))
    account: Mapped[str] = mapped_column(ForeignKey("account.id"))
    put: Mapped[datetime]
    gone: Mapped[datetime | None]
    used_in: Mapped[str | None] = mapped_column(ForeignKey("job.id"), index=True)


class SessionRow(Base):
    """A browser that is signed in; only the digest of its cookie is kept."""

    __tablename__ = "session"

    digest: Mapped[str] = mapped_column(String(DIGEST), primary_key=True)
    account: Mapped[str | None] = mapped_column(ForeignKey("account.id"), index=True)
    link: Mapped[str | None] = mapped_column(ForeignKey("client_link.id"), index=True)
    began: Mapped[datetime]
    seen: Mapped[datetime]
    ends: Mapped[datetime]


class CodeRow(Base):
    """A code that signs an account in once; only its digest is kept."""

    __tablename__ = "code"

    digest: Mapped[str] = mapped_column(String(DIGEST), primary_key=True)
    account: Mapped[str] = mapped_column(ForeignKey("account.id"), index=True)
    ends: Mapped[datetime]


class ClientLinkRow(Base):
    """A code that lets a client read one job until it ends; only its digest is kept."""

    __tablename__ = "client_link"

    id: Mapped[str] = mapped_column(String(ID), primary_key=True)
    job: Mapped[str] = mapped_column(ForeignKey("job.id"), index=True)
    digest: Mapped[str] = mapped_column(String(DIGEST), unique=True)
    label: Mapped[str] = mapped_column(String(LONGEST_ACCOUNT))
    account: Mapped[str] = mapped_column(ForeignKey("account.id"))
    created: Mapped[datetime]
    ends: Mapped[datetime]
