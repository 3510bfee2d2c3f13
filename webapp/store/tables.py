"""The tables: entries and what they replace are only ever added to; beside them, who may come in."""

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column


class Base(DeclarativeBase):
    """All tables of the database."""


class EntryRow(Base):
    """One entry, as it came; `seq` is the order that all phones follow, and is never given twice."""

    __tablename__ = "entries"
    __table_args__ = (Index("entries_by_project", "project", "seq"), {"sqlite_autoincrement": True})

    seq: Mapped[int] = mapped_column(primary_key=True)
    id: Mapped[str] = mapped_column(unique=True)
    project: Mapped[str]
    kind: Mapped[str]
    body: Mapped[str]
    made_at: Mapped[str]
    by: Mapped[str]
    received_at: Mapped[str]


class ReplacedRow(Base):
    """One entry that an entry replaces; it may be missing here (a restored backup), so no foreign key."""

    __tablename__ = "replaces"

    entry: Mapped[str] = mapped_column(ForeignKey("entries.id"), primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    replaced: Mapped[str]


class WorkedRow(Base):
    """The sheet that the server worked for an entry, once, and whether the phone saw the same."""

    __tablename__ = "worked"

    entry: Mapped[str] = mapped_column(ForeignKey("entries.id"), primary_key=True)
    sheet: Mapped[str]
    engine: Mapped[str]
    same: Mapped[bool]


class MetaRow(Base):
    """What the database says of itself: its epoch."""

    __tablename__ = "meta"

    key: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str]


class DeviceRow(Base):
    """One paired device: the hash of its key, never the key; a revoked one stays, so that a restore can tell."""

    __tablename__ = "devices"

    id: Mapped[str] = mapped_column(primary_key=True)
    key: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str]
    paired_at: Mapped[str]
    seen_at: Mapped[str]
    revoked_at: Mapped[str]


class CodeRow(Base):
    """The pairing code that was made last, hashed both ways that it can be given: typed, and by a link."""

    __tablename__ = "codes"

    id: Mapped[int] = mapped_column(primary_key=True)
    salt: Mapped[str]
    letters: Mapped[str]
    token: Mapped[str]
    called: Mapped[str]
    expires_at: Mapped[str]
    tries: Mapped[int]
    ended: Mapped[str]
