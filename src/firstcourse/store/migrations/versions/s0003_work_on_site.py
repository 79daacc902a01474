"""What is ticked and measured on site."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Make its table."""
    op.create_table(
        "site_event",
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("account", sa.String(20), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("came", sa.DateTime(timezone=True), nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("plan", sa.String(64), nullable=False),
        sa.Column("thing", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.Column("after", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("job", "id", name="pk_site_event"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_site_event_job"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_site_event_account"),
    )
