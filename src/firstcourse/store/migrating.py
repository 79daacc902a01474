"""Brings the tables of a database to those that this version asks for."""

from alembic import command
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine

from firstcourse.errors import InputValueError


def upgrade(engine: Engine) -> None:
    """Do all steps that a database lacks, in one transaction.

    Raises:
        InputValueError: The database was made by a later version.
    """
    with engine.connect().execution_options(writes=True) as connection, connection.begin():
        upgrade_within(connection)


def upgrade_within(connection: Connection, to: str = "head") -> None:
    """Do steps in a transaction that is open.

    Args:
        connection: In a transaction that may write.
        to: The last step to do.

    Raises:
        InputValueError: The database was made by a later version, or there is no such step.
    """
    config = Config()
    config.set_main_option("script_location", "firstcourse.store:migrations")
    config.set_main_option("path_separator", "os")
    known = {script.revision for script in ScriptDirectory.from_config(config).walk_revisions()}
    has = at_step(connection)
    if has is not None and has not in known:
        raise InputValueError(f"the database was made by a later version (its tables are at step '{has}'); update")
    if to not in ("head", *known):
        raise InputValueError(f"this version knows no step '{to}' of the tables; update")
    config.attributes["connection"] = connection
    command.upgrade(config, to)


def at_step(connection: Connection) -> str | None:
    """The last step that was done; None where none was."""
    return MigrationContext.configure(connection).get_current_revision()
