"""Protocol 1: a phone's entries in, what it has not seen out. There is no protocol before 1 to be taken too."""

from typing import Any, Protocol

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from webapp.store.errors import Unreadable
from webapp.store.parse import parse_body
from webapp.store.reading import Entry, entries, worked
from webapp.store.tables import EntryRow, WorkedRow

__all__ = ["Unreadable", "parse_body", "sync"]

PROTOCOLS = (1,)
MOST_IN = 200
MOST_OUT = 500
MOST_LETTERS = 2_000_000  # of bodies and worked sheets in one answer; one entry always goes
LARGEST = 2**53 - 1


class Door(Protocol):
    """What sync needs of the store."""

    def add(self, batch: list[Any]) -> dict[str, Any]:
        """Keep a batch."""

    def session(self) -> Session:
        """Open a session that reads."""

    def epoch(self) -> str:
        """Return the database's epoch."""


def sync(store: Door, body: dict[str, Any]) -> dict[str, Any]:
    """Answer one request that was parsed already; raise Unreadable on what is no such request."""
    batch = _asked(body)
    outcome = store.add(batch) if batch else {"kept": [], "refused": []}
    epoch = store.epoch()
    cursor = body["cursor"] if body["epoch"] == epoch else 0
    with store.session() as session:
        upto, more = _reach(session, cursor)
        chosen = select(EntryRow).where(EntryRow.seq > cursor, EntryRow.seq <= upto)
        out = entries(session, chosen)
        seen = worked(session, dict.fromkeys([*outcome["kept"], *_sheets(out)]))
    return {
        "epoch": epoch,
        **outcome,
        "worked": {name: {"sheet": w["sheet"], "same": w["same"]} for name, w in seen.items()},
        "entries": out,
        "cursor": upto,
        "more": more,
    }


def _sheets(out: list[Entry]) -> list[str]:
    return [entry["id"] for entry in out if entry["kind"] == "sheet"]


def _asked(body: Any) -> list[Any]:
    """Return the entries of a request that is sound in all its other parts."""
    if not isinstance(body, dict):
        raise Unreadable("The body must be a JSON object.")
    protocol, epoch, cursor, batch = (body.get(key) for key in ("protocol", "epoch", "cursor", "entries"))
    if not _whole(protocol) or protocol not in PROTOCOLS:
        raise Unreadable("This server speaks protocol 1; load the page anew to bring the phone up to it.")
    if not isinstance(epoch, str):
        raise Unreadable("epoch must be text: the server's own, or nothing at the first time.")
    if not isinstance(cursor, int) or not _whole(cursor) or not 0 <= cursor <= LARGEST:
        raise Unreadable("cursor must be a whole number from 0.")
    if not isinstance(batch, list) or len(batch) > MOST_IN:
        raise Unreadable(f"entries must be a list of at most {MOST_IN}.")
    return batch


def _whole(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


def _reach(session: Session, cursor: int) -> tuple[int, bool]:
    """Return the last seq that goes out in one answer, and whether more follow it."""
    weight = func.length(EntryRow.body) + func.coalesce(func.length(WorkedRow.sheet), 0)
    chosen = (
        select(EntryRow.seq, weight)
        .outerjoin(WorkedRow, WorkedRow.entry == EntryRow.id)
        .where(EntryRow.seq > cursor)
        .order_by(EntryRow.seq)
        .limit(MOST_OUT + 1)
    )
    rows = session.execute(chosen).all()
    letters, upto = 0, cursor
    for count, (seq, letters_here) in enumerate(rows):
        letters += letters_here
        if count == MOST_OUT or (count > 0 and letters > MOST_LETTERS):
            return upto, True
        upto = seq
    return upto, False
