"""The database behind the store: SQLite in the user's own folder, or PostgreSQL where an office shares it."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, NoSuchModuleError, OperationalError
from sqlalchemy.orm import Session

from firstcourse.errors import InputValueError

_PRAGMAS = (
    "journal_mode=WAL",
    "synchronous=FULL",  # NORMAL may lose the last saves when the power goes
    "foreign_keys=ON",
    "busy_timeout=5000",
    "trusted_schema=OFF",
)
_KINDS = ("sqlite", "postgresql")


def data_folder() -> Path:
    """Where this system keeps what a user's programs store; it need not be there yet."""
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local") / "firstcourse"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Application Support" / "firstcourse"
    return Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share") / "firstcourse"


class Database:
    """An open database, brought to the newest tables.

    Attributes:
        engine: Its connections.
    """

    def __init__(self, engine: Engine) -> None:
        """Take an engine whose tables are there."""
        self.engine = engine

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A transaction that reads one state of the database."""
        with Session(self.engine) as session, session.begin():
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A transaction that writes all or nothing; when it is left without an error, it is on the disk."""
        with self.engine.connect().execution_options(writes=True) as connection:
            with Session(connection, expire_on_commit=False) as session, session.begin():
                yield session
            if connection.in_transaction():
                connection.commit()

    def close(self) -> None:
        """Close all connections."""
        self.engine.dispose()


def open_database(url: str = "") -> Database:
    """Open a database and bring its tables to the newest; make it where it is not there.

    Args:
        url: Such as `sqlite:////home/me/jobs.sqlite` or `postgresql+psycopg://host/office`; a file in the user's
            data folder where not given.

    Raises:
        InputValueError: The address is none, or the database cannot be reached.
    """
    from firstcourse.store.migrating import upgrade

    engine = open_engine(url)
    try:
        upgrade(engine)
    except OperationalError as error:
        engine.dispose()
        said = str(error.orig).strip().splitlines()[0]
        raise InputValueError(f"the database {shown(engine.url)} cannot be opened: {said}") from None
    except BaseException:
        engine.dispose()
        raise
    return Database(engine)


def shown(url: URL) -> str:
    """The address without its password."""
    return url.render_as_string(hide_password=True)


def sqlite_url(file: Path) -> str:
    """The address of a SQLite file."""
    return URL.create("sqlite", database=str(file)).render_as_string()


def open_engine(url: str = "") -> Engine:
    """Connections to a database whose tables are left as they are.

    Args:
        url: See `open_database`.

    Raises:
        InputValueError: The address is none.
    """
    try:
        address = make_url(url or _own_file())
        if address.get_backend_name() not in _KINDS:
            raise InputValueError(
                f"{shown(address)}: a database is sqlite:///FILE or postgresql+psycopg://HOST/NAME"
            )
        engine = create_engine(address, pool_pre_ping=True)
    except (ArgumentError, NoSuchModuleError, ImportError) as error:
        raise InputValueError(f"--database names no database: {error}") from None
    if engine.dialect.name == "sqlite":
        _keep_to_ourselves(engine.url)
        event.listen(engine, "connect", _set_up)
        event.listen(engine, "begin", _begin)
    return engine


def _keep_to_ourselves(url: URL) -> None:
    """Make the file where it is not there, so that nobody else of this machine can read it."""
    if url.database and url.database != ":memory:":
        with suppress(OSError):  # what is wrong with the place is told when it is opened
            os.close(os.open(url.database, os.O_CREAT | os.O_RDWR, 0o600))


def _own_file() -> str:
    folder = data_folder()
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    return sqlite_url(folder / "firstcourse.sqlite")


def _set_up(connection: Any, _record: object) -> None:
    connection.isolation_level = None  # we begin transactions ourselves, see `_begin`
    for pragma in _PRAGMAS:
        connection.execute(f"PRAGMA {pragma}")


def _begin(connection: Connection) -> None:
    # One that reads first and then writes is refused at once where another writes; one that says so waits.
    writes = connection.get_execution_options().get("writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
