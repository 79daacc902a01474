"""A whole database as one file, and back: the same file for SQLite and PostgreSQL, so it also moves an office.

It is a ZIP: `backup.json` says what it is, and each table has its rows, one JSON object a line. It is read in one
transaction, so it shows one moment, whoever saves meanwhile. Who is signed in is left out.
"""

import base64
import json
import os
import zipfile
from collections.abc import Iterator
from datetime import UTC, datetime
from io import TextIOWrapper
from pathlib import Path
from typing import Any, cast

from sqlalchemy import Connection, MetaData, Table, inspect, select

from firstcourse.errors import InputValueError
from firstcourse.store.database import Database, open_engine, shown
from firstcourse.store.migrating import at_step, upgrade_within
from firstcourse.store.tables import Base, CodeRow, SessionRow

_WHAT, _HEAD, _FORMAT = "firstcourse backup", "backup.json", 1
_LEFT_OUT = {SessionRow.__tablename__, CodeRow.__tablename__}
_ROWS_AT_A_TIME = 100


def backup(database: Database, file: Path) -> int:
    """Write a database into a file.

    Args:
        database: An open one; others may go on working with it.
        file: Must not be there yet; it can be read by its owner alone.

    Returns:
        Rows written.

    Raises:
        InputValueError: The file is there already, or cannot be written.
    """
    part = file.with_name(f".{file.name}.part")
    if os.path.lexists(file):
        raise InputValueError(f"{file} is there already; name another file, or move that one away")
    try:
        with database.engine.connect().execution_options(isolation_level=_one_moment(database)) as connection:
            opened = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
            with os.fdopen(opened, "wb") as raw:
                count = _written(connection, raw)
                raw.flush()
                os.fsync(raw.fileno())
        os.link(part, file)
    except OSError as error:
        raise InputValueError(f"{file}: {error.strerror or error}") from None
    finally:
        part.unlink(missing_ok=True)
    return count


def restore(file: Path, url: str) -> int:
    """Fill a new database from a file, all or nothing.

    Args:
        file: As `backup` wrote it.
        url: Address of a database that holds no tables yet.

    Returns:
        Rows restored.

    Raises:
        InputValueError: The file is no backup, or the database holds something.
    """
    try:
        archive = zipfile.ZipFile(file)
        head = json.loads(archive.read(_HEAD))
        if head["what"] != _WHAT or head["format"] != _FORMAT:
            raise KeyError
    except OSError as error:
        raise InputValueError(f"{file}: {error.strerror or error}") from None
    except (zipfile.BadZipFile, KeyError, TypeError, ValueError):
        raise InputValueError(f"{file} is no backup of Firstcourse that this version can read") from None
    engine = open_engine(url)
    try:
        with archive, engine.connect().execution_options(writes=True) as connection, connection.begin():
            if inspect(connection).get_table_names():
                said = f"{shown(engine.url)} holds tables already; name a database that holds none"
                raise InputValueError(said)
            upgrade_within(connection, head["step"])
            count = _filled(connection, archive, head)
            upgrade_within(connection)
    finally:
        engine.dispose()
    return count


def _one_moment(database: Database) -> Any:
    """What makes all reads of a transaction see one moment; SQLite's always do."""
    return "REPEATABLE READ" if database.engine.dialect.name == "postgresql" else "SERIALIZABLE"


def _written(connection: Connection, raw: Any) -> int:
    counts = {}
    with zipfile.ZipFile(raw, "w", zipfile.ZIP_DEFLATED) as archive:
        for table in Base.metadata.sorted_tables:
            if table.name not in _LEFT_OUT:
                with archive.open(f"{table.name}.jsonl", "w", force_zip64=True) as member:
                    text = TextIOWrapper(member, encoding="utf-8", newline="\n")
                    counts[table.name] = sum(text.write(line) > 0 for line in _lines(connection, table))
                    text.flush()
        made = datetime.now(UTC).isoformat()
        head = {"what": _WHAT, "format": _FORMAT, "step": at_step(connection), "made": made, "rows": counts}
        archive.writestr(_HEAD, json.dumps(head))
    return sum(counts.values())


def _lines(connection: Connection, table: Table) -> Iterator[str]:
    rows = connection.execution_options(yield_per=_ROWS_AT_A_TIME).execute(select(table))
    for row in rows.mappings():
        yield json.dumps({str(name): _told(value) for name, value in row.items()}, ensure_ascii=False) + "\n"


def _told(value: object) -> object:
    if isinstance(value, datetime):
        return {"at": value.isoformat()}
    if isinstance(value, bytes | memoryview):
        return {"bytes": base64.b64encode(value).decode()}
    return value


def _filled(connection: Connection, archive: zipfile.ZipFile, head: dict[str, Any]) -> int:
    # The tables as they were when the backup was made, which may be long ago.
    tables = MetaData()
    tables.reflect(connection)
    count = 0
    for table in tables.sorted_tables:
        if table.name not in head["rows"]:
            continue
        with archive.open(f"{table.name}.jsonl") as member:
            rows = [_meant(json.loads(line)) for line in member]
        if len(rows) != head["rows"][table.name]:
            raise InputValueError(f"{archive.filename} is damaged: {table.name} lacks rows")
        for start in range(0, len(rows), _ROWS_AT_A_TIME):
            connection.execute(table.insert(), rows[start : start + _ROWS_AT_A_TIME])
        count += len(rows)
    return count


def _meant(row: dict[str, Any]) -> dict[str, Any]:
    return {name: _value(value) for name, value in row.items()}


def _value(value: object) -> object:
    if isinstance(value, dict):
        kept = cast(dict[str, str], value)
        return datetime.fromisoformat(kept["at"]) if "at" in kept else base64.b64decode(kept["bytes"])
    return value
