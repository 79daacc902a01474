"""Runs the steps on the connection that `migrating` gives."""

from alembic import context

from firstcourse.store.tables import Base

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Base.metadata,
    render_as_batch=True,
    transactional_ddl=True,
)
context.run_migrations()
