"""`firstcourse serve`: where it may listen, and what its other words do."""

from pathlib import Path

import pytest

from firstcourse.cli import run
from firstcourse.errors import InputValueError
from firstcourse.store.accounts import Accounts, Role
from firstcourse.store.database import open_database, sqlite_url
from firstcourse.web.qr import qr_lines
from firstcourse.web.serving import Start, serve


def quiet(_line: str) -> None:
    """Print nothing."""


@pytest.mark.parametrize("host", ["0.0.0.0", "192.0.2.7", "::", "bath.example"])
def test_without_a_certificate_no_network_is_answered(host: str, tmp_path: Path) -> None:
    database = tmp_path / "jobs.sqlite"
    with pytest.raises(InputValueError, match="without a certificate only this machine"):
        serve(Start(host=host, database=sqlite_url(database)), quiet)
    assert not database.exists()


def test_a_certificate_needs_its_key_and_must_be_one(tmp_path: Path) -> None:
    file = tmp_path / "a.pem"
    file.write_text("no certificate")
    with pytest.raises(InputValueError, match="go together"):
        serve(Start(certificate=file), quiet)
    with pytest.raises(InputValueError, match=r"--certificate .*a\.pem"):
        serve(Start(certificate=file, key=file), quiet)


def test_a_port_that_is_taken_is_told(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    import socket

    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        code = run(["serve", "--port", port, "--database", sqlite_url(tmp_path / "a.sqlite")])
    told = capsys.readouterr().err
    assert code == 2 and f"--port {port}" in told and "Traceback" not in told


def test_backup_restore_and_code_are_words_of_serve(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    first, second, file = (tmp_path / name for name in ("a.sqlite", "b.sqlite", "all.zip"))
    database = open_database(sqlite_url(first))
    Accounts(database).create("Ada", Role.OWNER)
    database.close()
    assert run(["serve", "backup", str(file), "--database", sqlite_url(first)]) == 0
    assert file.stat().st_mode & 0o077 == 0
    assert run(["serve", "restore", str(file), "--database", sqlite_url(second)]) == 0
    capsys.readouterr()
    assert run(["serve", "code", "ada", "--database", sqlite_url(second)]) == 0
    database = open_database(sqlite_url(second))
    assert Accounts(database).enter(capsys.readouterr().out.strip()) is not None
    database.close()
    assert run(["serve", "code", "Ben", "--database", sqlite_url(second)]) == 2
    assert "there are Ada" in capsys.readouterr().err


def test_a_code_for_a_phone_is_square_and_has_a_border() -> None:
    lines = qr_lines("https://192.0.2.7:8123")
    assert {len(line) for line in lines} == {len(lines[0])} and abs(len(lines[0]) - 2 * len(lines)) <= 1
    assert set(lines[0]) == {"█"} and len({*"".join(lines)}) == 4
