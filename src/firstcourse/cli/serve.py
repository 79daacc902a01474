"""`firstcourse serve`: the same in a browser, for a phone in the bathroom and a desk."""

from pathlib import Path

from cyclopts import App

from firstcourse.tongues import Tongue

serve = App(name="serve", help_format="plaintext", help="Answer a browser: jobs, plans and papers as pages.")


@serve.default
def run(
    *,
    host: str = "127.0.0.1",
    port: int = 8123,
    database: str = "",
    name: tuple[str, ...] = (),
    certificate: Path | None = None,
    key: Path | None = None,
    accounts: bool = False,
    tongue: Tongue | None = None,
    demo: bool = False,
) -> int:
    """Answer a browser: jobs, plans and papers as pages.

    Args:
        host: Address to listen on; another than this machine's own needs a certificate.
        port: Port to listen on; 0 for any that is free.
        database: sqlite:///FILE or postgresql+psycopg://HOST/NAME; a file in your data folder where not given.
        name: A name that browsers reach this machine by, such as tablet.example; may be given several times.
        certificate: PEM file of the certificate.
        key: PEM file of its key.
        accounts: People sign in with a name and a password; else one owner comes in by a code.
        tongue: What pages are written in, such as en; what the browser asks for where not given.
        demo: Put the demo job in.
    """
    from firstcourse.web.serving import Start
    from firstcourse.web.serving import serve as answer

    start = Start(
        host=host,
        port=port,
        database=database,
        names=name,
        certificate=certificate,
        key=key,
        accounts=accounts,
        tongue=tongue or "",
        demo=demo,
    )
    answer(start, lambda line: print(line, flush=True))
    return 0


@serve.command
def backup(file: Path, /, *, database: str = "") -> int:
    """Write all jobs, plans and accounts into one file; others may go on working meanwhile.

    Args:
        file: Where to; what stands there is never overwritten.
        database: As for serve.
    """
    from firstcourse.web.serving import backed_up

    print(f"wrote {file}: {backed_up(file, database)} rows")
    return 0


@serve.command
def restore(file: Path, /, *, database: str = "") -> int:
    """Fill a new database from a backup; the file may come from SQLite or PostgreSQL.

    Args:
        file: As `serve backup` wrote it.
        database: As for serve; it must hold no tables yet.
    """
    from firstcourse.web.serving import restored

    print(f"restored {restored(file, database)} rows from {file}")
    return 0


@serve.command
def code(name: str, /, *, database: str = "") -> int:
    """Print a code that lets somebody in once, within ten minutes, such as an owner who lost the password.

    Args:
        name: The account.
        database: As for serve.
    """
    from firstcourse.web.serving import code_for

    print(code_for(name, database))
    return 0
