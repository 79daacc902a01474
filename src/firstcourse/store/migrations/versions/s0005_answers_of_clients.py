"""What clients answer to a plan."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    """Make their table."""
    op.create_table(
        "client_answer",
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("link", sa.String(20), nullable=True),
        sa.Column("account", sa.String(20), nullable=True),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("plan", sa.String(64), nullable=False),
        sa.Column("approves", sa.Boolean(), nullable=False),
        sa.Column("name", sa.String(80), nullable=False),
        sa.Column("signature", sa.Text(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("job", "id", name="pk_client_answer"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_client_answer_job"),
        sa.ForeignKeyConstraint(["link"], ["client_link.id"], name="fk_client_answer_link"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_client_answer_account"),
    )
