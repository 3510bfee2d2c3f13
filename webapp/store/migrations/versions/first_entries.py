"""Entries, what they replace, worked sheets, and the database's word of itself."""

import sqlalchemy as sa
from alembic import op

revision = "first_entries"
down_revision = None
branch_labels = None
depends_on = None

APPLICATION = 0x53684C6E  # "ShLn": tells a file of this program from any other SQLite database
APPEND_ONLY = ("entries", "replaces")


def upgrade() -> None:
    """Make the tables, and the triggers that hold changes off."""
    op.execute(f"PRAGMA application_id = {APPLICATION}")
    _entries()
    _beside()
    for table in APPEND_ONLY:
        for change in ("update", "delete"):
            _hold_off(table, change)


def _entries() -> None:
    op.create_table(
        "entries",
        sa.Column("seq", sa.Integer, primary_key=True),
        *[sa.Column(name, sa.String, nullable=False) for name in ("id", "project", "kind", "body")],
        *[sa.Column(name, sa.String, nullable=False) for name in ("made_at", "by", "received_at")],
        sa.UniqueConstraint("id"),
        sqlite_autoincrement=True,
    )
    op.create_index("entries_by_project", "entries", ["project", "seq"])
    op.create_table(
        "replaces",
        sa.Column("entry", sa.String, sa.ForeignKey("entries.id"), primary_key=True),
        sa.Column("position", sa.Integer, primary_key=True),
        sa.Column("replaced", sa.String, nullable=False),
    )


def _beside() -> None:
    op.create_table(
        "worked",
        sa.Column("entry", sa.String, sa.ForeignKey("entries.id"), primary_key=True),
        sa.Column("sheet", sa.String, nullable=False),
        sa.Column("engine", sa.String, nullable=False),
        sa.Column("same", sa.Boolean, nullable=False),
    )
    op.create_table(
        "meta",
        sa.Column("key", sa.String, primary_key=True),
        sa.Column("value", sa.String, nullable=False),
    )


def _hold_off(table: str, change: str) -> None:
    """Refuse a change; REPLACE deletes first, and is refused with it where recursive_triggers is on."""
    op.execute(
        f"CREATE TRIGGER {table}_no_{change} BEFORE {change.upper()} ON {table} "
        f"BEGIN SELECT RAISE(ABORT, '{table} is only ever added to'); END"
    )
