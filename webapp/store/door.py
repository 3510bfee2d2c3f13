"""The one door: every entry, from a form, a phone, a file or the demo, is kept here or refused."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import Connection, Engine, insert
from sqlalchemy.orm import Session

from webapp.core.entries_check import shape_error
from webapp.core.entries_frame import frame_error
from webapp.store.database import writing
from webapp.store.reading import Entry, by_id
from webapp.store.tables import EntryRow, ReplacedRow, WorkedRow
from webapp.store.works import Works, packed

OTHER = "An entry with this id and another content is kept already; this one was not taken over it."


@dataclass(frozen=True)
class Candidate:
    """An entry before the door: why it cannot be kept, if so, and its worked sheet, if it has one."""

    entry: Entry
    why: str = ""
    worked: dict[str, Any] | None = None


@dataclass
class Outcome:
    """What became of a batch."""

    kept: list[str] = field(default_factory=list)
    refused: list[dict[str, str]] = field(default_factory=list)
    rows: list[Candidate] = field(default_factory=list)


def add(
    engine: Engine, works: Works, batch: Sequence[Any], received_at: str, brought: Mapping[str, Any]
) -> dict[str, Any]:
    """Keep what can be kept; when this returns, it is on the disk. `brought` holds sheets worked elsewhere."""
    with Session(engine) as session:
        known = by_id(session, _names(batch))
    candidates = [_candidate(entry, works, known, brought) for entry in batch]
    with writing(engine).begin() as connection:
        with Session(connection) as session:
            known = by_id(session, _names(batch))
        outcome = _sorted_out(candidates, known)
        _write(connection, outcome.rows, received_at)
    return {"kept": list(dict.fromkeys(outcome.kept)), "refused": outcome.refused}


def _names(batch: Sequence[Any]) -> list[str]:
    return list(dict.fromkeys(name for name in map(_name, batch) if name))


def _name(entry: Any) -> str:
    """Return an entry's id, or nothing where what came has none that could be said back."""
    name = entry.get("id") if isinstance(entry, dict) else None
    return name if isinstance(name, str) and name.isascii() and len(name) <= 64 else ""


def _candidate(entry: Any, works: Works, known: Mapping[str, Entry], brought: Mapping[str, Any]) -> Candidate:
    """Look at an entry before the write lock is taken: working a sheet takes its time."""
    why = frame_error(entry)
    if why or entry["id"] in known:
        return Candidate(entry, why)
    why = shape_error(entry, works.factors)
    if why or entry["kind"] != "sheet":
        return Candidate(entry, why)
    worked = brought.get(entry["id"]) or works.worked(entry["body"])
    return Candidate(entry, worked.get("why", ""), worked)


def _sorted_out(candidates: Sequence[Candidate], known: dict[str, Entry]) -> Outcome:
    """Part a batch into kept and refused; what is known already, from before or from this batch, is kept once."""
    outcome = Outcome()
    for candidate in candidates:
        name = _name(candidate.entry)
        why = candidate.why
        if not why and name in known:
            why = "" if _same(candidate.entry, known[name]) else OTHER
        elif not why:
            known[name] = candidate.entry
            outcome.rows.append(candidate)
        if why:
            outcome.refused.append({"id": name, "why": why})
        else:
            outcome.kept.append(name)
    return outcome


def _same(entry: Entry, held: Entry) -> bool:
    """Say whether two entries of one id are one: a form pressed twice differs only in when it was pressed."""
    return all(_plain(entry[key]) == _plain(held[key]) for key in ("project", "kind", "body"))


def _plain(value: Any) -> str:
    return json.dumps(value, sort_keys=True)  # True and 1 are equal in Python, and not in an entry


def _write(connection: Connection, rows: Sequence[Candidate], received_at: str) -> None:
    _insert(connection, EntryRow, [_entry_row(row.entry, received_at) for row in rows])
    _insert(connection, ReplacedRow, [replaced for row in rows for replaced in _replaced_rows(row.entry)])
    _insert(connection, WorkedRow, [_worked_row(row.entry["id"], row.worked) for row in rows if row.worked])


def _insert(connection: Connection, table: Any, rows: list[dict[str, Any]]) -> None:
    if rows:
        connection.execute(insert(table), rows)


def _entry_row(entry: Entry, received_at: str) -> dict[str, Any]:
    plain = {key: entry[key] for key in ("id", "project", "kind", "made_at", "by")}
    return {**plain, "body": packed(entry["body"]), "received_at": received_at}


def _replaced_rows(entry: Entry) -> list[dict[str, Any]]:
    return [
        {"entry": entry["id"], "position": position, "replaced": replaced}
        for position, replaced in enumerate(entry["replaces"])
    ]


def _worked_row(name: str, worked: Mapping[str, Any]) -> dict[str, Any]:
    return {
        "entry": name,
        "sheet": packed(worked["sheet"]),
        "engine": worked["engine"],
        "same": worked["same"],
    }
