"""Which entries the fold can read, and in which order it reads them."""

from collections.abc import Callable
from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.entries_kinds import TEXTS
from webapp.core.setting import UNITS

Entry: TypeAlias = dict[str, Any]

UNSENT = 1000000000000  # more entries than a server ever has: what is unsent comes behind them
EXACT = {"reading": "inches", "condition": "value"}
MEASURE = ("text", "inches", "unit", "graduation")


def in_order(entries: list[Entry]) -> list[Entry]:
    """Return the entries by seq, then the unsent ones by the phone's own counter, then as they came."""
    return sorted([entry for entry in entries if belongs(entry)], key=rank)


def belongs(entry: Entry) -> bool:
    """Say whether an entry has an id and a project at all."""
    return isinstance(entry.get("id", None), str) and isinstance(entry.get("project", None), str)


def rank(entry: Entry) -> int:
    """Return an entry's place in the order: by seq, behind all of those by the phone's own counter."""
    if "seq" in entry:
        return int(entry["seq"])
    return UNSENT + int(entry.get("counter", 0))


def fits(entry: Entry) -> bool:
    """Say whether an entry is of a kind and a shape that can be read here."""
    kind = entry.get("kind", "")
    if not isinstance(kind, str) or kind not in TEXTS or not _framed(entry):
        return False
    body = entry["body"]
    for name in TEXTS[kind]:
        if not isinstance(body.get(name, None), str):
            return False
    return _filled(entry, kind, body)


def _framed(entry: Entry) -> bool:
    if not isinstance(entry.get("made_at", None), str) or not isinstance(entry.get("by", None), str):
        return False
    replaces = entry.get("replaces", None)
    if not isinstance(replaces, list) or not all(isinstance(name, str) for name in replaces):
        return False
    return isinstance(entry.get("body", None), dict)


def _filled(entry: Entry, kind: str, body: dict[str, Any]) -> bool:
    if kind == "project":
        return bool(entry["id"] == entry["project"] and body["unit"] in UNITS)
    if kind in EXACT:
        return from_exact(body[EXACT[kind]]) is not None
    if kind == "sheet":
        inputs = body.get("inputs")
        return isinstance(inputs, dict) and all(isinstance(text, str) for text in inputs.values())
    return PIECE[kind](body) if kind in PIECE else True


def _part(body: dict[str, Any]) -> bool:
    counted = _whole(body.get("count")) and _whole(body.get("spare"))
    worded = isinstance(body.get("wood"), str) and isinstance(body.get("faces"), str)
    measures = body.get("measures")
    return counted and worded and isinstance(measures, dict) and all(measured(each) for each in measures.values())


def measured(said: Any) -> bool:
    """Say whether a value is a measure as entries hold it: what was said, its exact inches, unit and graduation."""
    if not isinstance(said, dict) or not all(isinstance(said.get(key, None), str) for key in MEASURE):
        return False
    return from_exact(said["inches"]) is not None


def _whole(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


def _joint(body: dict[str, Any]) -> bool:
    return _texts(body.get("parts")) and all(isinstance(body.get(key), str) for key in ("tenon", "pins"))


def _round(body: dict[str, Any]) -> bool:
    return _texts(body.get("places"))


def _texts(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(each, str) for each in value)


PIECE: dict[str, Callable[[dict[str, Any]], bool]] = {"part": _part, "joint": _joint, "round": _round}
