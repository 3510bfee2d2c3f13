"""Fills a store by its own door, as forms would."""

from typing import Any

from webapp.core.entries import draft
from webapp.core.fold import summary_of
from webapp.store import Store
from webapp.store.ids import now, uuid7
from webapp.tools import TOOLS
from webapp.units import FACTORS

SPACING = {"tool": "spacing", "span": "30", "slat": "2 1/2", "count": "7"}


def entry(store: Store, kind: str, project: str = "", **typed: str) -> dict[str, Any]:
    """Make an entry of a form's fields; it is not kept yet."""
    summary = summary_of(store.entries(project)) if project else None
    drafted = draft(kind, typed, summary, TOOLS, FACTORS)
    assert "errors" not in drafted, drafted
    name = uuid7()
    frame = {"id": name, "project": project or name, "made_at": now(), "by": "a phone"}
    return {**store.signed(drafted), **frame}


def keep(store: Store, kind: str, project: str = "", **typed: str) -> str:
    """Make an entry and keep it."""
    made = entry(store, kind, project, **typed)
    assert store.add([made]) == {"kept": [made["id"]], "refused": []}
    return str(made["id"])


def fill(store: Store, name: str = "Bed in ash") -> str:
    """Keep a small project and return its id."""
    project = keep(store, "project", name=name)
    first = keep(store, "reading", project, place="rail", reading="58 3/8 strong", note="bowed")
    keep(store, "reading", project, place="Rail", reading="58 3/8")
    keep(store, "note", project, entry=first, text="seen “again” \u2028 𝔘\nthrice")
    keep(store, "sheet", project, **SPACING)
    return project


def plain(entries: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Return entries as they were sent, without the server's seq."""
    return [{key: value for key, value in entry.items() if key != "seq"} for entry in entries]
