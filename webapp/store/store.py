"""The store of one data folder, as the rest of the program sees it."""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from types import TracebackType
from typing import Any, Self

from sqlalchemy import select
from sqlalchemy.orm import Session

from webapp import __version__
from webapp.core.tool import Tool
from webapp.store import database, door, reading
from webapp.store.backup import write_backup
from webapp.store.devices import Devices
from webapp.store.errors import translated
from webapp.store.folder import made
from webapp.store.ids import now
from webapp.store.project_file import read_project, write_project
from webapp.store.reading import Entry
from webapp.store.sync import sync
from webapp.store.tables import EntryRow
from webapp.store.works import Works
from webapp.tools import TOOLS
from webapp.units import FACTORS


class Store:
    """The entries of one data folder; close it, or use it in a `with`."""

    @translated()
    def __init__(
        self,
        folder: Path,
        version: str = __version__,
        tools: dict[str, Tool] = TOOLS,
        factors: dict[str, Fraction] = FACTORS,
    ) -> None:
        self._works = Works(tools, factors, version)
        self._engine = database.opened(made(folder) / database.FILE)
        self.devices = Devices(self._engine)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Let go of the database."""
        self._engine.dispose()

    def session(self) -> Session:
        """Open a session that reads."""
        return Session(self._engine)

    @translated()
    def add(
        self, batch: Sequence[Any], received_at: str = "", worked: Mapping[str, Any] | None = None
    ) -> dict[str, Any]:
        """Keep entries: {"kept": ids, "refused": [{"id", "why"}]}; what is kept is on the disk by then.

        `worked` holds sheets that were worked elsewhere, {entry: {"sheet", "engine", "same"}}; the others
        are worked here.
        """
        return door.add(self._engine, self._works, batch, received_at or now(), worked or {})

    @translated()
    def entries(self, project: str) -> list[Entry]:
        """Return a project's entries by seq."""
        with self.session() as session:
            return reading.entries(session, select(EntryRow).where(EntryRow.project == project))

    @translated()
    def entry(self, name: str) -> Entry | None:
        """Return one entry, or None."""
        with self.session() as session:
            return reading.by_id(session, [name]).get(name)

    @translated()
    def projects(self) -> list[str]:
        """Return the ids of all projects in the order of their first entries."""
        with self.session() as session:
            return reading.projects(session)

    @translated()
    def since(self, cursor: int, limit: int) -> list[Entry]:
        """Return the entries that follow a seq, at most so many."""
        with self.session() as session:
            return reading.entries(session, select(EntryRow).where(EntryRow.seq > cursor).limit(limit))

    @translated()
    def worked(self, names: Iterable[str]) -> dict[str, dict[str, Any]]:
        """Return {"sheet", "engine", "same"} by entry, for those of the entries that were worked."""
        with self.session() as session:
            return reading.worked(session, names)

    @translated()
    def answers(self, names: Iterable[str]) -> dict[str, dict[str, Any]]:
        """Return {"sheet": {"answer"}} by entry, for those of the entries that were worked."""
        with self.session() as session:
            return reading.answers(session, names)

    @translated()
    def epoch(self) -> str:
        """Return the database's epoch."""
        with self._engine.begin() as connection:
            return database.epoch(connection)

    @translated()
    def sync(self, body: dict[str, Any]) -> dict[str, Any]:
        """Answer a phone, by protocol 1; raise Unreadable on what is no such request."""
        return sync(self, body)

    def signed(self, drafted: dict[str, Any]) -> dict[str, Any]:
        """Return a draft made here with what only an edge can add: a sheet's engine and digest."""
        return self._works.signed(drafted)

    @translated()
    def backup(self, file: Path) -> None:
        """Copy the database to a file, while it is in use."""
        write_backup(self._engine, file)

    @translated()
    def export(self, project: str) -> bytes:
        """Return a project as one JSON file."""
        entries = self.entries(project)
        return write_project(project, entries, self.worked(entry["id"] for entry in entries))

    @translated()
    def import_(self, data: bytes) -> dict[str, Any]:
        """Take a project file in by the one door: {"kept", "refused", "project"}; Unreadable if it is none."""
        found = read_project(data)
        return {**self.add(found["entries"], worked=found["worked"]), "project": found["project"]}
