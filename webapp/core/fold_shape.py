"""Which entries the fold can read, and in which order it reads them."""

from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.entries_kinds import TEXTS
from webapp.core.setting import UNITS

Entry: TypeAlias = dict[str, Any]


def in_order(entries: list[Entry]) -> list[Entry]:
    """Return the entries by seq, then the unsent ones by the phone's own counter, then as they came."""
    return sorted([entry for entry in entries if _belongs(entry)], key=_rank)


def _belongs(entry: Entry) -> bool:
    return isinstance(entry.get("id", None), str) and isinstance(entry.get("project", None), str)


def _rank(entry: Entry) -> tuple[int, int]:
    if "seq" in entry:
        return (0, entry["seq"])
    return (1, entry.get("counter", 0))


def fits(entry: Entry) -> bool:
    """Say whether an entry is of a kind and a shape that can be read here."""
    kind = entry.get("kind", "")
    if not isinstance(kind, str) or kind not in TEXTS or not _framed(entry):
        return False
    body = entry["body"]
    if not all(isinstance(body.get(name, None), str) for name in TEXTS[kind]):
        return False
    return _filled(entry, kind, body)


def _framed(entry: Entry) -> bool:
    stamped = isinstance(entry.get("made_at", None), str) and isinstance(entry.get("by", None), str)
    replaces = entry.get("replaces", None)
    listed = isinstance(replaces, list) and all(isinstance(name, str) for name in replaces)
    return stamped and listed and isinstance(entry.get("body", None), dict)


def _filled(entry: Entry, kind: str, body: dict[str, Any]) -> bool:
    if kind == "project":
        return bool(entry["id"] == entry["project"] and body["unit"] in UNITS)
    if kind == "reading":
        return from_exact(body["inches"]) is not None
    if kind == "sheet":
        inputs = body.get("inputs")
        return isinstance(inputs, dict) and all(isinstance(text, str) for text in inputs.values())
    return True
