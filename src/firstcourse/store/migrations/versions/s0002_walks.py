"""Rooms that are being taped."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Make their table."""
    op.create_table(
        "walk",
        sa.Column("id", sa.String(20), nullable=False),
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("changed", sa.DateTime(timezone=True), nullable=False),
        sa.Column("document", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_walk"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_walk_job"),
    )
    op.create_index("ix_walk_job", "walk", ["job"])
