"""A house over a new database, and browsers that are signed in to it."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from browsers import Browser
from firstcourse.store.accounts import Account, Role
from firstcourse.store.database import open_database, sqlite_url
from firstcourse.web.app import application
from firstcourse.web.house import House, Settings

ADDRESS = "http://127.0.0.1:8123"


@pytest.fixture
def house(tmp_path: Path) -> Iterator[House]:
    database = open_database(sqlite_url(tmp_path / "jobs.sqlite"))
    opened = House(database, Settings(address=ADDRESS, hosts=("127.0.0.1",)))
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
