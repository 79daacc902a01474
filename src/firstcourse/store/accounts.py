"""Who may sign in, and which browsers are signed in."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum

from sqlalchemy import delete, func, select, update
from sqlalchemy.orm import Session

from firstcourse.errors import InputValueError
from firstcourse.store.database import Database
from firstcourse.store.ids import code_digest, digest, new_code, new_id, new_secret
from firstcourse.store.tables import LONGEST_ACCOUNT, AccountRow, ClientLinkRow, CodeRow, SessionRow

SESSION_LASTS = timedelta(days=30)
"""A browser is signed in so long at most."""
SESSION_IDLES = timedelta(days=7)
"""And so long after it was last seen."""
CODE_LASTS, INVITATION_LASTS = timedelta(minutes=10), timedelta(days=1)
LINK_LASTS = timedelta(days=60)
_SEEN_EVERY = timedelta(minutes=5)
"""That a browser was seen is noted no more often: each note is a write."""


class Role(StrEnum):
    """What an account may do."""

    OWNER = "owner"
    SETTER = "setter"


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """Somebody who may sign in.

    Attributes:
        password: Its hash; empty where only codes sign it in.
        tongue: What its pages are written in; empty for what its browser asks for.
        closed: That it may sign in no more.
    """

    id: str
    name: str
    role: Role
    password: str
    tongue: str
    closed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ClientLink:
    """A code that lets a client read one job."""

    id: str
    job: str
    label: str
    created: datetime
    ends: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class SignedIn:
    """Who a browser's cookie stands for: an account, or a client with a link."""

    account: Account | None
    link: ClientLink | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnSession:
    """A browser that is signed in to an account.

    Attributes:
        handle: Names it; nothing signs in by it.
        own: It is the browser that asks.
    """

    handle: str
    began: datetime
    seen: datetime
    own: bool


class Accounts:
    """The accounts in a database."""

    def __init__(self, database: Database) -> None:
        """Take an open database."""
        self._database = database

    def all(self) -> tuple[Account, ...]:
        """Every account, by name."""
        with self._database.reading() as session:
            return tuple(map(_account, session.scalars(select(AccountRow).order_by(AccountRow.name))))

    def by_name(self, name: str) -> Account | None:
        """The account of a name; None where there is none."""
        with self._database.reading() as session:
            row = session.scalar(select(AccountRow).where(func.lower(AccountRow.name) == name.strip().lower()))
            return None if row is None else _account(row)

    def by_id(self, account: str) -> Account | None:
        """The account of an id; None where there is none."""
        with self._database.reading() as session:
            row = session.get(AccountRow, account)
            return None if row is None else _account(row)

    def create(self, name: str, role: Role, *, password: str = "", tongue: str = "") -> Account:
        """A new account.

        Args:
            name: Told apart without regard to capitals.
            role: What it may do.
            password: The hash of one.
            tongue: See `Account`.

        Raises:
            InputValueError: The name is empty, too long or taken.
        """
        name = " ".join(name.split())
        if not name or len(name) > LONGEST_ACCOUNT:
            raise InputValueError(f"'{name}': a name has 1 to {LONGEST_ACCOUNT} characters", field="name")
        with self._database.writing() as session:
            if session.scalar(select(AccountRow).where(func.lower(AccountRow.name) == name.lower())) is not None:
                raise InputValueError(f"'{name}': there is an account of that name; choose another", field="name")
            row = AccountRow(
                id=new_id(),
                name=name,
                role=role.value,
                password=password or None,
                tongue=tongue,
                created=datetime.now(UTC),
                closed=None,
            )
            session.add(row)
        return _account(row)

    def only_owner(self, name: str) -> Account:
        """The first owner there is; one is made where there is none."""
        with self._database.reading() as session:
            wanted = select(AccountRow).where(AccountRow.role == Role.OWNER.value, AccountRow.closed.is_(None))
            row = session.scalars(wanted.order_by(AccountRow.created)).first()
            if row is not None:
                return _account(row)
        return self.create(name, Role.OWNER)

    def set_password(self, account: str, password: str) -> None:
        """Set the hash of a new password; every browser of the account is signed out."""
        with self._database.writing() as session:
            session.execute(update(AccountRow).where(AccountRow.id == account).values(password=password))
            session.execute(delete(SessionRow).where(SessionRow.account == account))

    def close(self, account: str, *, closed: bool) -> None:
        """Let an account sign in no more, or again; its browsers are signed out."""
        with self._database.writing() as session:
            when = datetime.now(UTC) if closed else None
            session.execute(update(AccountRow).where(AccountRow.id == account).values(closed=when))
            session.execute(delete(SessionRow).where(SessionRow.account == account))
            session.execute(delete(CodeRow).where(CodeRow.account == account))

    def any_password(self) -> bool:
        """Whether some owner can sign in with a password."""
        with self._database.reading() as session:
            wanted = select(func.count()).select_from(AccountRow)
            owners = wanted.where(AccountRow.role == Role.OWNER.value, AccountRow.closed.is_(None))
            return bool(session.scalar(owners.where(AccountRow.password.is_not(None))))

    def set_tongue(self, account: str, tongue: str) -> None:
        """Set what an account's pages are written in; empty for what its browser asks for."""
        with self._database.writing() as session:
            session.execute(update(AccountRow).where(AccountRow.id == account).values(tongue=tongue))

    def new_code(self, account: str, *, lasts: timedelta = CODE_LASTS) -> str:
        """A code that signs an account in once; earlier ones of the account end."""
        code = new_code()
        with self._database.writing() as session:
            session.execute(delete(CodeRow).where(CodeRow.account == account))
            session.add(CodeRow(digest=code_digest(code), account=account, ends=datetime.now(UTC) + lasts))
        return code

    def new_link(self, job: str, label: str, *, by: str) -> str:
        """A code that lets a client read a job for `LINK_LASTS`."""
        code, now = new_code(), datetime.now(UTC)
        with self._database.writing() as session:
            session.add(
                ClientLinkRow(
                    id=new_id(),
                    job=job,
                    digest=code_digest(code),
                    label=label[:LONGEST_ACCOUNT],
                    account=by,
                    created=now,
                    ends=now + LINK_LASTS,
                )
            )
        return code

    def links(self, job: str) -> tuple[ClientLink, ...]:
        """The links of a job that have not ended."""
        with self._database.reading() as session:
            wanted = select(ClientLinkRow).where(ClientLinkRow.job == job, ClientLinkRow.ends > datetime.now(UTC))
            return tuple(map(_link, session.scalars(wanted.order_by(ClientLinkRow.created))))

    def end_link(self, job: str, link: str) -> None:
        """End a link of a job; browsers that came by it are signed out."""
        with self._database.writing() as session:
            row = session.get(ClientLinkRow, link)
            if row is not None and row.job == job:
                session.execute(delete(SessionRow).where(SessionRow.link == link))
                row.ends = datetime.now(UTC)

    def begin_session(self, account: str) -> str:
        """Sign a browser in.

        Returns:
            What its cookie holds.
        """
        with self._database.writing() as session:
            return _begin(session, account=account, link=None)

    def enter(self, typed: str) -> str | None:
        """Sign a browser in by a code that was typed; a code of an account is then used up.

        Returns:
            What its cookie holds; None where the code is none, or has ended.
        """
        now, wanted = datetime.now(UTC), code_digest(typed)
        with self._database.writing() as session:
            code = session.get(CodeRow, wanted)
            if code is not None:
                session.delete(code)
                account = session.get_one(AccountRow, code.account)
                fit = code.ends > now and account.closed is None
                return _begin(session, account=code.account, link=None) if fit else None
            link = session.scalar(select(ClientLinkRow).where(ClientLinkRow.digest == wanted))
            return _begin(session, account=None, link=link.id) if link is not None and link.ends > now else None

    def signed_in(self, cookie: str) -> SignedIn | None:
        """Who a cookie stands for; None where it stands for nobody, or no longer."""
        now = datetime.now(UTC)
        with self._database.reading() as session:
            row = session.get(SessionRow, digest(cookie))
            if row is None or row.ends <= now or row.seen + SESSION_IDLES <= now:
                return None
            account = None if row.account is None else session.get_one(AccountRow, row.account)
            link = None if row.link is None else session.get_one(ClientLinkRow, row.link)
            if (account is not None and account.closed is not None) or (link is not None and link.ends <= now):
                return None
            stale = row.seen + _SEEN_EVERY <= now
            found = SignedIn(
                account=None if account is None else _account(account), link=None if link is None else _link(link)
            )
        if stale:
            with self._database.writing() as session:
                session.execute(update(SessionRow).where(SessionRow.digest == digest(cookie)).values(seen=now))
        return found

    def end_sessions(self, account: str) -> None:
        """Sign every browser of an account out."""
        with self._database.writing() as session:
            session.execute(delete(SessionRow).where(SessionRow.account == account))

    def sessions(self, account: str, cookie: str) -> tuple[OwnSession, ...]:
        """The browsers that are signed in to an account, the last seen first.

        Args:
            account: Whose.
            cookie: Of the browser that asks.
        """
        now, own = datetime.now(UTC), digest(cookie)
        with self._database.reading() as session:
            wanted = select(SessionRow).where(
                SessionRow.account == account, SessionRow.ends > now, SessionRow.seen > now - SESSION_IDLES
            )
            return tuple(
                OwnSession(handle=digest(row.digest), began=row.began, seen=row.seen, own=row.digest == own)
                for row in session.scalars(wanted.order_by(SessionRow.seen.desc(), SessionRow.digest))
            )

    def end_own_session(self, account: str, handle: str) -> bool:
        """Sign one browser of an account out; False where the account has none of that handle."""
        with self._database.writing() as session:
            for row in session.scalars(select(SessionRow).where(SessionRow.account == account)):
                if digest(row.digest) == handle:
                    session.delete(row)
                    return True
        return False

    def end_session(self, cookie: str) -> None:
        """Sign a browser out."""
        with self._database.writing() as session:
            session.execute(delete(SessionRow).where(SessionRow.digest == digest(cookie)))


def _begin(session: Session, *, account: str | None, link: str | None) -> str:
    now, cookie = datetime.now(UTC), new_secret()
    session.execute(delete(SessionRow).where(SessionRow.ends <= now))
    session.add(
        SessionRow(
            digest=digest(cookie), account=account, link=link, began=now, seen=now, ends=now + SESSION_LASTS
        )
    )
    return cookie


def _account(row: AccountRow) -> Account:
    return Account(
        id=row.id,
        name=row.name,
        role=Role(row.role),
        password=row.password or "",
        tongue=row.tongue,
        closed=row.closed is not None,
    )


def _link(row: ClientLinkRow) -> ClientLink:
    return ClientLink(id=row.id, job=row.job, label=row.label, created=row.created, ends=row.ends)
