"""Brings the tables of a database to those that this version asks for."""

from alembic import command
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Engine

from firstcourse.errors import InputValueError


def upgrade(engine: Engine) -> None:
    """Do all migrations that a database lacks, in one transaction.

    Raises:
        InputValueError: The database was made by a later version.
    """
    config = Config()
    config.set_main_option("script_location", "firstcourse.store:migrations")
    config.set_main_option("path_separator", "os")
    known = {script.revision for script in ScriptDirectory.from_config(config).walk_revisions()}
    with engine.connect().execution_options(writes=True) as connection, connection.begin():
        has = MigrationContext.configure(connection).get_current_revision()
        if has is not None and has not in known:
            raise InputValueError(f"the database was made by a later version (its tables are '{has}'); update")
        config.attributes["connection"] = connection
        command.upgrade(config, "head")
