"""The same tests over SQLite and over PostgreSQL."""

from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path

import pytest

from databases import new_postgresql, postgresql_server
from firstcourse.store.accounts import Accounts, Role
from firstcourse.store.database import Database, open_database, sqlite_url
from firstcourse.store.jobs import Jobs

_NUMBERS = count(1)


@pytest.fixture(scope="session")
def _postgresql() -> Iterator[str]:
    with postgresql_server() as folder:
        yield folder


@pytest.fixture(params=["sqlite", "postgresql"])
def new_url(request: pytest.FixtureRequest, tmp_path: Path) -> Callable[[], str]:
    """Addresses of databases that hold nothing yet."""
    if request.param == "sqlite":
        return lambda: sqlite_url(tmp_path / f"{next(_NUMBERS)}.sqlite")
    folder = request.getfixturevalue("_postgresql")
    return lambda: new_postgresql(folder, f"t{next(_NUMBERS)}")


@pytest.fixture
def database(new_url: Callable[[], str]) -> Iterator[Database]:
    """An open database."""
    opened = open_database(new_url())
    yield opened
    opened.close()


@pytest.fixture
def jobs(database: Database) -> Jobs:
    return Jobs(database)


@pytest.fixture
def accounts(database: Database) -> Accounts:
    return Accounts(database)


@pytest.fixture
def ada(accounts: Accounts) -> str:
    """Id of an owner."""
    return accounts.create("Ada", Role.OWNER).id
