"""A house over a new database, and browsers that are signed in to it."""

from collections.abc import Callable, Iterator
from pathlib import Path
from shutil import copy

import pytest
from argon2 import PasswordHasher

from browsers import Browser
from firstcourse.store import passwords
from firstcourse.store.accounts import Account, Role
from firstcourse.store.database import open_database, sqlite_url
from firstcourse.web.app import application
from firstcourse.web.house import House, Settings

ADDRESS = "http://127.0.0.1:8123"


@pytest.fixture(autouse=True)
def _quick_hashes(monkeypatch: pytest.MonkeyPatch) -> None:
    """Hashes that take no time; `test_passwords_are_kept_as_argon2id` has the real ones."""
    monkeypatch.setattr(passwords, "_HASHER", PasswordHasher(time_cost=1, memory_cost=64, parallelism=1))


@pytest.fixture
def with_accounts() -> bool:
    """Whether people sign in with a name and a password."""
    return False


@pytest.fixture(scope="session")
def empty_database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A file with all tables, made once: copying it is quicker than making it."""
    file = tmp_path_factory.mktemp("empty") / "jobs.sqlite"
    open_database(sqlite_url(file)).close()
    return file


@pytest.fixture
def house(tmp_path: Path, empty_database: Path, with_accounts: bool) -> Iterator[House]:
    database = open_database(sqlite_url(Path(copy(empty_database, tmp_path / "jobs.sqlite"))))
    opened = House(database, Settings(address=ADDRESS, hosts=("127.0.0.1",), accounts=with_accounts))
    yield opened
    opened.close()


@pytest.fixture
def browser(house: House) -> Callable[[], Browser]:
    """A browser that nobody is signed in to."""
    app = application(house)
    return lambda: Browser(app, base_url=ADDRESS, raise_server_exceptions=False)


@pytest.fixture
def signed_in(house: House, browser: Callable[[], Browser]) -> Callable[[Account], Browser]:
    """A browser that an account is signed in to."""

    def sign_in(account: Account) -> Browser:
        came = browser()
        came.cookies.set("firstcourse", house.accounts.begin_session(account.id))
        return came

    return sign_in


@pytest.fixture
def owner(house: House, signed_in: Callable[[Account], Browser]) -> Browser:
    """The owner's browser."""
    return signed_in(house.accounts.create("Ada", Role.OWNER))
