"""Paired devices and the pairing code, as the database keeps them: hashes, never keys."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from sqlalchemy import Engine, select
from sqlalchemy.orm import Session

from webapp.store.database import writing
from webapp.store.errors import translated
from webapp.store.tables import CodeRow, DeviceRow

TRIES = 5  # wrong ones, and the code is void
ONLY = 1  # one code at a time: the one that was made last


@dataclass(frozen=True)
class Device:
    """A device as a person knows it."""

    id: str
    name: str
    paired_at: str
    seen_at: str
    revoked_at: str = ""


@dataclass(frozen=True)
class Code:
    """A pairing code's hashes, and the name that a device paired by it will have."""

    salt: str
    letters: str
    token: str
    called: str
    expires_at: str


class Devices:
    """The devices of one database."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine

    @contextmanager
    def _writing(self) -> Iterator[Session]:
        with translated(), Session(writing(self._engine)) as session, session.begin():
            yield session

    @translated()
    def all(self) -> list[Device]:
        """Return the devices that may come in, in the order of their pairing."""
        with Session(self._engine) as session:
            return [_device(row) for row in _welcome(session)]

    @translated()
    def by_key(self, hashed: str) -> Device | None:
        """Return the device whose key has this hash, unless it was revoked."""
        chosen = select(DeviceRow).where(DeviceRow.key == hashed, DeviceRow.revoked_at == "")
        with Session(self._engine) as session:
            row = session.scalars(chosen).one_or_none()
            return _device(row) if row else None

    def seen(self, name: str, at: str) -> None:
        """Note when a device was here."""
        with self._writing() as session:
            row = session.get(DeviceRow, name)
            if row:
                row.seen_at = at

    def revoke(self, name: str, at: str) -> bool:
        """Let a device in no more, from its next request on; say whether there was one to revoke."""
        with self._writing() as session:
            row = session.get(DeviceRow, name)
            if row is None or row.revoked_at:
                return False
            row.revoked_at = at
            return True

    def put_code(self, code: Code) -> None:
        """Take a new code; the one before it is worth nothing from then on."""
        with self._writing() as session:
            before = session.get(CodeRow, ONLY)
            if before:
                session.delete(before)
                session.flush()
            session.add(CodeRow(id=ONLY, tries=0, ended="", **vars(code)))

    def redeem(self, fits: Callable[[Code], bool], key: str, made: Device) -> str:
        """Give a device for the code: "paired", or what stands against it: "wrong", "void", "used", "old", "none".

        Everything happens under the database's write lock: a code is used once, and every wrong try counts.
        """
        with self._writing() as session:
            row = session.get(CodeRow, ONLY)
            closed = _closed(row, made.paired_at)
            if row is None or closed:
                return closed
            if not fits(_code(row)):
                row.tries += 1
                row.ended = "void" if row.tries >= TRIES else ""
                return row.ended or "wrong"
            row.ended = "used"
            name = _free(row.called or made.name, {each.name for each in _welcome(session)})
            session.add(DeviceRow(**{**vars(made), "key": key, "name": name}))
            return "paired"


def _welcome(session: Session) -> list[DeviceRow]:
    chosen = select(DeviceRow).where(DeviceRow.revoked_at == "").order_by(DeviceRow.paired_at, DeviceRow.id)
    return list(session.scalars(chosen))


def _closed(row: CodeRow | None, at: str) -> str:
    """Say why no code at all can be given now; nothing where one can. What was typed plays no part in it."""
    if row is None:
        return "none"
    return row.ended or ("old" if row.expires_at <= at else "")


def _free(name: str, taken: set[str]) -> str:
    """Return a name that no other device has: a number is put behind it."""
    number, free = 1, name
    while free in taken:
        number += 1
        free = f"{name} {number}"
    return free


def _device(row: DeviceRow) -> Device:
    return Device(row.id, row.name, row.paired_at, row.seen_at, row.revoked_at)


def _code(row: CodeRow) -> Code:
    return Code(row.salt, row.letters, row.token, row.called, row.expires_at)
