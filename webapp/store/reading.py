"""Entries and worked sheets, out of the database."""

import json
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Any

from sqlalchemy import Connection, Select, func, select
from sqlalchemy.orm import Session

from webapp.store.tables import EntryRow, ReplacedRow, WorkedRow

Entry = dict[str, Any]
CHUNK = 500  # names in one query
# Plain columns, for speed: a phone that starts anew reads every entry there is.
COLUMNS = (
    EntryRow.seq,
    EntryRow.id,
    EntryRow.project,
    EntryRow.kind,
    EntryRow.body,
    EntryRow.made_at,
    EntryRow.by,
)


def chunks(names: Iterable[str]) -> Iterator[list[str]]:
    """Part names into lists that one query takes."""
    left = iter(names)
    while chunk := list(islice(left, CHUNK)):
        yield chunk


def entries(session: Session, chosen: Select[Any]) -> list[Entry]:
    """Return the chosen entries by seq, as dicts in the shape that they came in, with their seq; in two queries."""
    connection = session.connection()  # plain rows of its own are quicker than a session's
    rows = connection.execute(chosen.with_only_columns(*COLUMNS).order_by(EntryRow.seq)).all()
    replaces = _replaces(connection, chosen.with_only_columns(EntryRow.id).order_by(EntryRow.seq)) if rows else {}
    # All bodies as one text: to call for each of them took three times as long.
    bodies = json.loads(f"[{','.join([row.body for row in rows])}]")
    return [_entry(row, body, replaces.get(row.id, [])) for row, body in zip(rows, bodies, strict=True)]


def _entry(row: Any, body: dict[str, Any], replaces: list[str]) -> Entry:
    seq, name, project, kind, _body, made_at, by = row
    return {
        "id": name,
        "project": project,
        "kind": kind,
        "body": body,
        "made_at": made_at,
        "by": by,
        "replaces": replaces,
        "seq": seq,
    }


def _replaces(connection: Connection, names: Select[Any]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    chosen = select(ReplacedRow.entry, ReplacedRow.replaced).where(ReplacedRow.entry.in_(names))
    for entry, replaced in connection.execute(chosen.order_by(ReplacedRow.entry, ReplacedRow.position)):
        found.setdefault(entry, []).append(replaced)
    return found


def by_id(session: Session, names: Iterable[str]) -> dict[str, Entry]:
    """Return the entries of these ids that there are."""
    found = [
        entry for chunk in chunks(names) for entry in entries(session, select(EntryRow).where(EntryRow.id.in_(chunk)))
    ]
    return {entry["id"]: entry for entry in found}


def projects(session: Session) -> list[str]:
    """Return the projects in the order of their first entries."""
    chosen = select(EntryRow.project).group_by(EntryRow.project).order_by(func.min(EntryRow.seq))
    return list(session.scalars(chosen))


def worked(session: Session, names: Iterable[str]) -> dict[str, dict[str, Any]]:
    """Return {"sheet", "engine", "same"} for each of these entries that has a worked sheet."""
    found = {}
    for chunk in chunks(names):
        for row in session.scalars(select(WorkedRow).where(WorkedRow.entry.in_(chunk))):
            found[row.entry] = {"sheet": json.loads(row.sheet), "engine": row.engine, "same": row.same}
    return found


def answers(session: Session, names: Iterable[str]) -> dict[str, dict[str, Any]]:
    """Return {"sheet": {"answer"}} for each of these that was worked: a list of sheets says no more of each."""
    answer = func.json_extract(WorkedRow.sheet, "$.answer")
    found = {}
    for chunk in chunks(names):
        for name, text in session.execute(select(WorkedRow.entry, answer).where(WorkedRow.entry.in_(chunk))):
            found[name] = {"sheet": {"answer": json.loads(text)}}
    return found
