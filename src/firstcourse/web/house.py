"""What all pages share: the store, the planning desk and the settings that the program was started with."""

from collections.abc import Callable
from dataclasses import dataclass

from firstcourse.app import Desk, LightDesk, Made, Paper, Shelf
from firstcourse.store.accounts import Accounts
from firstcourse.store.answers import Answers
from firstcourse.store.database import Database
from firstcourse.store.jobs import Jobs, KeptPlan
from firstcourse.store.photos import Photos
from firstcourse.store.rack import Rack
from firstcourse.store.site import SiteEvents
from firstcourse.store.walks import Walks
from firstcourse.web.limits import Limiter

OWNER = "owner"
"""What the one owner is called where nobody gave a name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """How the program was started.

    Attributes:
        address: Where browsers reach it, such as `http://127.0.0.1:8123`.
        hosts: Names that browsers may reach it by.
        accounts: Whether people sign in with a name and a password; else one owner by a code.
        tongue: What pages are written in where a browser asks for none that we have; empty for what it asks for.
    """

    address: str
    hosts: tuple[str, ...]
    accounts: bool = False
    tongue: str = ""

    @property
    def secure(self) -> bool:
        """Whether browsers come over TLS."""
        return self.address.startswith("https:")


class House:
    """The store, the desk and the settings of one running program."""

    def __init__(self, database: Database, settings: Settings) -> None:
        """Open the house over an open database."""
        self.database, self.settings = database, settings
        self.jobs, self.accounts, self.walks = Jobs(database), Accounts(database), Walks(database)
        self.answers, self.rack = Answers(database), Rack(database)
        self.site, self.photos = SiteEvents(database), Photos(database)
        self.desk = Desk(_Kept(self.jobs))
        self.light = LightDesk()
        self.limiter = Limiter()
        self.tell: Callable[[str], None] = print

    def print_code(self) -> None:
        """Print on the terminal where to go, with a code that signs the owner in once."""
        owner = self.accounts.only_owner(OWNER)
        self.tell(f"{self.settings.address}/enter#{self.accounts.new_code(owner.id)}")

    def close(self) -> None:
        """Stop planning and close the database."""
        self.desk.close()
        self.light.close()
        self.database.close()


@dataclass(frozen=True, slots=True)
class _Kept(Shelf):
    jobs: Jobs

    def planned(self, job: str, revision: int, made: Made) -> None:
        plan = KeptPlan(effort=made.effort, document=made.document, beside=made.beside)
        self.jobs.keep_plan(job, revision, plan)

    def printed(self, job: str, revision: int, paper: Paper) -> None:
        self.jobs.keep_paper(job, revision, paper.name, paper.content)
