"""Entries and worked sheets, out of the database."""

import json
from collections.abc import Iterable, Iterator, Sequence
from itertools import islice
from typing import Any

from sqlalchemy import Select, select
from sqlalchemy.orm import Session

from webapp.store.tables import EntryRow, ReplacedRow, WorkedRow

Entry = dict[str, Any]
CHUNK = 500  # names in one query


def chunks(names: Iterable[str]) -> Iterator[list[str]]:
    """Part names into lists that one query takes."""
    left = iter(names)
    while chunk := list(islice(left, CHUNK)):
        yield chunk


def entries(session: Session, chosen: Select[Any]) -> list[Entry]:
    """Return the chosen entries by seq, as dicts in the shape that they came in, with their seq."""
    rows: Sequence[EntryRow] = session.scalars(chosen.order_by(EntryRow.seq)).all()
    replaces = _replaces(session, rows)
    return [_entry(row, replaces.get(row.id, [])) for row in rows]


def _replaces(session: Session, rows: Sequence[EntryRow]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for names in chunks(row.id for row in rows):
        chosen = select(ReplacedRow).where(ReplacedRow.entry.in_(names))
        for row in session.scalars(chosen.order_by(ReplacedRow.entry, ReplacedRow.position)):
            found.setdefault(row.entry, []).append(row.replaced)
    return found


def _entry(row: EntryRow, replaces: list[str]) -> Entry:
    return {
        "id": row.id,
        "project": row.project,
        "kind": row.kind,
        "body": json.loads(row.body),
        "made_at": row.made_at,
        "by": row.by,
        "replaces": replaces,
        "seq": row.seq,
    }


def by_id(session: Session, names: Iterable[str]) -> dict[str, Entry]:
    """Return the entries of these ids that there are."""
    found = [
        entry for chunk in chunks(names) for entry in entries(session, select(EntryRow).where(EntryRow.id.in_(chunk)))
    ]
    return {entry["id"]: entry for entry in found}


def projects(session: Session) -> list[str]:
    """Return the projects in the order of their first entries."""
    chosen = select(EntryRow.project).distinct().order_by(EntryRow.seq)
    return list(dict.fromkeys(session.scalars(chosen)))


def worked(session: Session, names: Iterable[str]) -> dict[str, dict[str, Any]]:
    """Return {"sheet", "engine", "same"} for each of these entries that has a worked sheet."""
    found = {}
    for chunk in chunks(names):
        for row in session.scalars(select(WorkedRow).where(WorkedRow.entry.in_(chunk))):
            found[row.entry] = {"sheet": json.loads(row.sheet), "engine": row.engine, "same": row.same}
    return found
