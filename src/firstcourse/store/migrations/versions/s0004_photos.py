"""Photos from site."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    """Make their table."""
    op.create_table(
        "photo",
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("account", sa.String(20), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("surface", sa.Text(), nullable=False),
        sa.Column("stage", sa.String(16), nullable=False),
        sa.Column("across", sa.Integer(), nullable=False),
        sa.Column("up", sa.Integer(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("width", sa.Integer(), nullable=False),
        sa.Column("height", sa.Integer(), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("job", "id", name="pk_photo"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_photo_job"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_photo_account"),
    )
