"""Jobs with their revisions and plans, accounts with their sessions."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
_MOMENT = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Make the first tables."""
    op.create_table(
        "account",
        sa.Column("id", sa.String(20), nullable=False),
        sa.Column("name", sa.String(80), nullable=False),
        sa.Column("role", sa.String(16), nullable=False),
        sa.Column("password", sa.String(200), nullable=True),
        sa.Column("tongue", sa.String(16), nullable=False),
        sa.Column("created", _MOMENT, nullable=False),
        sa.Column("closed", _MOMENT, nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_account"),
        sa.UniqueConstraint("name", name="uq_account_name"),
    )
    op.create_table(
        "job",
        sa.Column("id", sa.String(20), nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("head", sa.Integer(), nullable=False),
        sa.Column("created", _MOMENT, nullable=False),
        sa.Column("changed", _MOMENT, nullable=False),
        sa.Column("archived", _MOMENT, nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_job"),
    )
    op.create_index("ix_job_changed", "job", ["changed"])
    op.create_table(
        "access",
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("account", sa.String(20), nullable=False),
        sa.PrimaryKeyConstraint("job", "account", name="pk_access"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_access_job"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_access_account"),
    )
    op.create_index("ix_access_account", "access", ["account"])
    op.create_table(
        "revision",
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("saved", _MOMENT, nullable=False),
        sa.Column("account", sa.String(20), nullable=False),
        sa.Column("kind", sa.String(16), nullable=False),
        sa.Column("about", sa.String(200), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("job", "number", name="pk_revision"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_revision_job"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_revision_account"),
    )
    op.create_table(
        "plan",
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("revision", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("effort", sa.Integer(), nullable=False),
        sa.Column("made", _MOMENT, nullable=False),
        sa.Column("document", sa.LargeBinary(), nullable=False),
        sa.Column("beside", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("job", "revision", name="pk_plan"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_plan_job"),
    )
    op.create_table(
        "paper",
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("revision", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("job", "revision", "name", name="pk_paper"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_paper_job"),
    )
    op.create_table(
        "client_link",
        sa.Column("id", sa.String(20), nullable=False),
        sa.Column("job", sa.String(20), nullable=False),
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("label", sa.String(80), nullable=False),
        sa.Column("account", sa.String(20), nullable=False),
        sa.Column("created", _MOMENT, nullable=False),
        sa.Column("ends", _MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_client_link"),
        sa.UniqueConstraint("digest", name="uq_client_link_digest"),
        sa.ForeignKeyConstraint(["job"], ["job.id"], name="fk_client_link_job"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_client_link_account"),
    )
    op.create_index("ix_client_link_job", "client_link", ["job"])
    op.create_table(
        "session",
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("account", sa.String(20), nullable=True),
        sa.Column("link", sa.String(20), nullable=True),
        sa.Column("began", _MOMENT, nullable=False),
        sa.Column("seen", _MOMENT, nullable=False),
        sa.Column("ends", _MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("digest", name="pk_session"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_session_account"),
        sa.ForeignKeyConstraint(["link"], ["client_link.id"], name="fk_session_link"),
    )
    op.create_index("ix_session_account", "session", ["account"])
    op.create_index("ix_session_link", "session", ["link"])
    op.create_table(
        "code",
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("account", sa.String(20), nullable=False),
        sa.Column("ends", _MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("digest", name="pk_code"),
        sa.ForeignKeyConstraint(["account"], ["account.id"], name="fk_code_account"),
    )
    op.create_index("ix_code_account", "code", ["account"])
