"""A PostgreSQL server of the tests' own, reached by a socket in its folder alone."""

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from glob import glob
from pathlib import Path
from typing import Any

import psycopg
import pytest

_BINARIES = "/usr/lib/postgresql/*/bin"


def must_be_there() -> bool:
    """Whether what is missing on this machine fails the tests: in CI, which installs it."""
    return bool(os.environ.get("CI") or os.environ.get("FIRSTCOURSE_CI"))


def missing(what: str) -> None:
    """Skip the test, or fail it where nothing may be missing."""
    if must_be_there():
        pytest.fail(f"{what} is not installed, and in CI it must be")
    pytest.skip(f"{what} is not installed")


@contextmanager
def postgresql_server() -> Iterator[str]:
    """A server while the block runs; gives the folder of its socket."""
    place = next(iter(sorted(glob(f"{_BINARIES}/initdb"), reverse=True)), shutil.which("initdb"))
    if place is None:
        missing("PostgreSQL")
    binaries = Path(str(place)).parent
    # Never as root: the server refuses that. A short path: names of sockets are short.
    folder = Path(tempfile.mkdtemp(prefix="pg", dir="/tmp"))
    other: dict[str, Any] = {}
    if os.getuid() == 0:
        user = "postgres"
        shutil.chown(folder, user)
        other = {"user": user, "group": user, "extra_groups": [], "cwd": folder, "env": {"LC_ALL": "C.UTF-8"}}
    data = str(folder / "data")
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "check": True}
    try:
        make = [str(binaries / "initdb"), "-D", data, "-A", "trust", "-U", "tests", "--no-sync", "-E", "UTF8"]
        subprocess.run(make, **quiet, **other)
        options = f"-k {folder} -c listen_addresses= -c fsync=off -c shared_buffers=16MB"
        control = [str(binaries / "pg_ctl"), "-D", data, "-w", "-t", "60"]
        subprocess.run([*control, "-o", options, "-l", str(folder / "log"), "start"], **quiet, **other)
        try:
            yield str(folder)
        finally:
            subprocess.run([*control, "-m", "immediate", "stop"], **quiet, **other)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def new_postgresql(folder: str, name: str) -> str:
    """The address of a new database of a server."""
    with psycopg.connect(host=folder, user="tests", dbname="postgres", autocommit=True) as connection:
        connection.execute(f'CREATE DATABASE "{name}"')  # type: ignore[arg-type]
    return f"postgresql+psycopg://tests@/{name}?host={folder}"
