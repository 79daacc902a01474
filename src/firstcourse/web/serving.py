"""Starts the pages: checks the address that was asked for, opens the store, says where to go."""

import ipaddress
import logging
import socket
import ssl
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

import uvicorn

from firstcourse.app import Session, demo_text
from firstcourse.errors import InputValueError
from firstcourse.store.accounts import Accounts
from firstcourse.store.backup import backup, restore
from firstcourse.store.database import open_database
from firstcourse.tongues import ENGLISH
from firstcourse.web.app import application
from firstcourse.web.house import OWNER, House, Settings
from firstcourse.web.qr import qr_lines
from firstcourse.web.rendering import speaker

_CIPHERS = "ECDHE+AESGCM:ECDHE+CHACHA20"
"""Of TLS 1.2, which is the oldest that is spoken; those of TLS 1.3 are all sound."""
_LOOPBACK_HOSTS = ("127.0.0.1", "localhost", "::1")


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """How the program is to be started.

    Attributes:
        host: Address to listen on.
        port: Port to listen on; 0 for any that is free.
        database: Its address; empty for a file in the user's data folder.
        names: Names that browsers reach this machine by, beside its addresses.
        certificate: PEM file of the certificate and those it rests on.
        key: PEM file of its key.
        accounts: Whether people sign in with a name and a password.
        tongue: See `Settings`.
        demo: Whether the demo job is put in.
    """

    host: str = "127.0.0.1"
    port: int = 8123
    database: str = ""
    names: tuple[str, ...] = ()
    certificate: Path | None = None
    key: Path | None = None
    accounts: bool = False
    tongue: str = ""
    demo: bool = False


class Stoppable(Protocol):
    """What answers; it ends soon after this is set."""

    should_exit: bool


def serve(
    start: Start, tell: Callable[[str], None], begun: Callable[[Stoppable], object] = lambda _server: None
) -> None:
    """Answer browsers until the program is interrupted.

    Args:
        start: How it is to be started.
        tell: Prints a line on the terminal.
        begun: Given what answers, before it does.

    Raises:
        InputValueError: It may not listen there, or cannot; or the database cannot be opened.
    """
    _check(start)
    listening = _bound(start)
    try:
        settings = _settings(start, listening.getsockname()[1])
        house = House(open_database(start.database), settings)
    except BaseException:
        listening.close()
        raise
    house.tell = tell
    if start.demo:
        put_demo(house)

    def at_start() -> None:
        said = speaker(start.tongue or ENGLISH)
        tell(said.text("web-terminal", "answers", address=settings.address))
        if not start.accounts or not house.accounts.any_password():
            tell(said.text("web-terminal", "link"))
            house.print_code()
        if not _is_loopback(start.host):
            tell(said.text("web-terminal", "phone"))
            for line in qr_lines(settings.address):
                tell(line)

    set_up_logs()
    config = uvicorn.Config(
        application(house, at_start=at_start),
        ssl_certfile=start.certificate,
        ssl_keyfile=start.key,
        ssl_ciphers=_CIPHERS,
        access_log=False,
        log_level="warning",
        server_header=False,
        timeout_graceful_shutdown=2,
        proxy_headers=False,
    )
    server = uvicorn.Server(config)
    begun(server)
    with suppress(KeyboardInterrupt):
        server.run(sockets=[listening])


def set_up_logs() -> None:
    """Log to standard error, moments in UTC."""
    handler = logging.StreamHandler()
    form = logging.Formatter("%(asctime)sZ %(levelname)s %(name)s %(message)s", "%Y-%m-%dT%H:%M:%S")
    form.converter = time.gmtime
    handler.setFormatter(form)
    logging.basicConfig(level=logging.INFO, handlers=[handler])
    logging.getLogger("alembic").setLevel(logging.WARNING)


def put_demo(house: House) -> None:
    """Put the demo job in, where none of its name is there."""
    text = demo_text()
    name = Session(text).job.name
    if all(card.name != name for card in house.jobs.cards(None)):
        house.jobs.create(name, text, by=house.accounts.only_owner(OWNER).id)


def _check(start: Start) -> None:
    if (start.certificate is None) != (start.key is None):
        raise InputValueError("--certificate and --key go together: name both files, or none")
    if start.certificate is None and not _is_loopback(start.host):
        raise InputValueError(
            f"--host {start.host}: without a certificate only this machine (127.0.0.1) is answered. On a network "
            "anybody could read along, and what is open without a certificate could be changed on the way; "
            "name --certificate FILE and --key FILE"
        )
    if start.certificate is not None and start.key is not None:
        try:
            ssl.create_default_context(ssl.Purpose.CLIENT_AUTH).load_cert_chain(start.certificate, start.key)
        except (OSError, ssl.SSLError) as error:
            said = error.strerror or error
            raise InputValueError(f"--certificate {start.certificate} --key {start.key}: {said}") from None


def _is_loopback(host: str) -> bool:
    if host == "localhost":
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def _bound(start: Start) -> socket.socket:
    family = socket.AF_INET6 if ":" in start.host else socket.AF_INET
    listening = socket.socket(family, socket.SOCK_STREAM)
    try:
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listening.bind((start.host, start.port))
        listening.listen()  # who comes before we answer waits
    except (OSError, OverflowError) as error:
        listening.close()
        said = getattr(error, "strerror", None) or str(error)
        raise InputValueError(f"--host {start.host} --port {start.port}: {said}; choose another") from None
    return listening


def _settings(start: Start, port: int) -> Settings:
    scheme = "http" if start.certificate is None else "https"
    if _is_loopback(start.host):
        hosts: tuple[str, ...] = (*_LOOPBACK_HOSTS, start.host)
        first = start.names[0] if start.names else start.host
    else:
        hosts = (*_LOOPBACK_HOSTS, *_own_addresses(start.host))
        first = start.names[0] if start.names else hosts[-1]
    shown = f"[{first}]" if ":" in first else first
    bracketed = (f"[{host}]" if ":" in host else host for host in (*hosts, *start.names))
    return Settings(
        address=f"{scheme}://{shown}:{port}",
        hosts=tuple(dict.fromkeys(bracketed)),
        accounts=start.accounts,
        tongue=start.tongue,
    )


def _own_addresses(host: str) -> tuple[str, ...]:
    """The address that was named, or where all are meant, those of this machine that others can reach."""
    if host not in ("0.0.0.0", "::"):
        return (host,)
    found = [socket.gethostname()]
    # No packet is sent: a socket that is only connected knows which of our addresses it would use.
    for family, far in ((socket.AF_INET, "192.0.2.1"), (socket.AF_INET6, "2001:db8::1")):
        with suppress(OSError), socket.socket(family, socket.SOCK_DGRAM) as asked:
            asked.connect((far, 9))
            found.append(asked.getsockname()[0])
    return tuple(found)


def backed_up(file: Path, database: str) -> int:
    """Write a database into a file, see `store.backup`; how many rows.

    Raises:
        InputValueError: The file is there already, or cannot be written; or the database cannot be opened.
    """
    opened = open_database(database)
    try:
        return backup(opened, file)
    finally:
        opened.close()


def restored(file: Path, database: str) -> int:
    """Fill a new database from a file, see `store.backup`; how many rows.

    Raises:
        InputValueError: The file is no backup, or the database holds something.
    """
    return restore(file, database)


def code_for(name: str, database: str) -> str:
    """A code that signs an account in once.

    Raises:
        InputValueError: There is no such account, or it is closed.
    """
    opened = open_database(database)
    try:
        accounts = Accounts(opened)
        account = accounts.by_name(name)
        if account is None or account.closed:
            known = ", ".join(one.name for one in accounts.all() if not one.closed)
            raise InputValueError(f"'{name}' is no account that may sign in; there are {known or 'none'}")
        return accounts.new_code(account.id)
    finally:
        opened.close()
