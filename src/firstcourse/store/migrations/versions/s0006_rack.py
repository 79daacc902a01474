"""Pieces of sheets that are kept for the next job."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"


def upgrade() -> None:
    """Make their table."""
    op.create_table(
        "rack_piece",
        sa.Column("id", sa.String(20), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("board", sa.String(60), nullable=False),
        sa.Column("kind", sa.String(60), nullable=False),
        sa.Column("width", sa.Integer(), nullable=False),
        sa.Column("length", sa.Integer(), nullable=False),
        sa.Column("thickness", sa.Integer(), nullable=False),
        sa.Column("tape", sa.String(8), nullable=False),
        sa.Column("job", sa.String(20), nullable=True),
        sa.Column("plan", sa.String(64), nullable=False),
        sa.Column("part", sa.String(200), nullable=False),
        sa.Column("account", sa.String(20), nullable=False),
        sa.Column("put", sa.DateTime(timezone=True), nullable=False),
        sa.Column("gone", sa.DateTime(timezone=True), nullable=True),
        sa.Column("used_in", sa.String(20), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_rack_piece"),
        sa.UniqueConstraint("number", name="uq_rack_piece_number"),
        sa.UniqueConstraint("job", "plan", "part", name="uq_rack_piece_job"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_rack_piece_job"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_rack_piece_account"),
        sa.ForeignKeyConstraint(["used_in"], ["job.id"], name="fk_rack_piece_used_in"),
    )
    op.create_index("ix_rack_piece_used_in", "rack_piece", ["used_in"])
