"""Paired devices, and the pairing code that was made last."""

import sqlalchemy as sa
from alembic import op

revision = "paired_devices"
down_revision = "first_entries"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the tables of who may come in."""
    op.create_table(
        "devices",
        sa.Column("id", sa.String, primary_key=True),
        *[sa.Column(name, sa.String, nullable=False) for name in ("key", "name", "paired_at", "seen_at", "revoked_at")],
        sa.UniqueConstraint("key"),
    )
    op.create_table(
        "codes",
        sa.Column("id", sa.Integer, primary_key=True),
        *[sa.Column(name, sa.String, nullable=False) for name in ("salt", "letters", "token", "called", "expires_at")],
        sa.Column("tries", sa.Integer, nullable=False),
        sa.Column("ended", sa.String, nullable=False),
    )
