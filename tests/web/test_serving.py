"""`firstcourse serve`: where it may listen, and what its other words do."""

import shutil
import socket
import ssl
import subprocess
from pathlib import Path
from urllib.parse import urlsplit

import pytest

from databases import missing
from firstcourse.cli import run
from firstcourse.errors import InputValueError
from firstcourse.store.accounts import Accounts, Role
from firstcourse.store.database import open_database, sqlite_url
from firstcourse.web.qr import qr_lines
from firstcourse.web.serving import Start, serve
from servers import served


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


def test_over_tls_only_sound_ciphers_are_spoken(tmp_path: Path) -> None:
    openssl = shutil.which("openssl")
    if openssl is None:
        missing("openssl")
    certificate, key = tmp_path / "a.pem", tmp_path / "a.key"
    make = [str(openssl), "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes"]
    about = ["-keyout", str(key), "-out", str(certificate), "-days", "2", "-subj", "/CN=localhost"]
    names = ["-addext", "subjectAltName=DNS:localhost,IP:127.0.0.1"]
    subprocess.run([*make, *about, *names], check=True, capture_output=True)
    with served(tmp_path, certificate=certificate, key=key) as link:
        assert link.startswith("https://127.0.0.1:")
        address = urlsplit(link)
        for newest in (ssl.TLSVersion.TLSv1_2, ssl.TLSVersion.TLSv1_3):
            context = ssl.create_default_context(cafile=certificate)
            context.maximum_version = newest
            with (
                socket.create_connection(("127.0.0.1", address.port or 0)) as plain,
                context.wrap_socket(plain, server_hostname="localhost") as spoken,
            ):
                cipher = spoken.cipher()
                assert cipher is not None
                assert cipher[0].startswith(("ECDHE", "TLS_")) and ("GCM" in cipher[0] or "CHACHA20" in cipher[0])
                host = f"127.0.0.1:{address.port}"
                spoken.sendall(f"GET /enter HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n".encode())
                told = b"".join(iter(lambda: spoken.recv(65536), b"")).decode().lower()
                assert told.startswith("http/1.1 200") and "strict-transport-security: max-age=" in told
                assert "set-cookie: __host-firstcourse-form=" in told and "; secure" in told
