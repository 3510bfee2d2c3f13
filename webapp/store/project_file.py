"""A project as one file: its entries in their order, and the sheets that were worked for them."""

from typing import Any

from webapp.core.entries_text import is_identity
from webapp.store.errors import Unreadable
from webapp.store.parse import parse_body
from webapp.store.reading import Entry
from webapp.store.sheet_shape import sheet_error
from webapp.store.works import packed

FORMAT = 1
MOST_BYTES = 64 * 1024 * 1024
KEYS = ("id", "project", "kind", "body", "made_at", "by", "replaces")
NOT_OURS = "This is no project file of Shoulderline."


def write_project(project: str, entries: list[Entry], worked: dict[str, Any]) -> bytes:
    """Return the file; without seq and time of receipt, which belong to one server, it is the same anywhere."""
    document = {
        "shoulderline": FORMAT,
        "project": project,
        "entries": [{key: entry[key] for key in KEYS} for entry in entries],
        "worked": {entry["id"]: worked[entry["id"]] for entry in entries if entry["id"] in worked},
    }
    return (packed(document) + "\n").encode()


def read_project(data: bytes) -> dict[str, Any]:
    """Return a file's project, entries and worked sheets; raise Unreadable where they do not belong together."""
    document = parse_body(data, MOST_BYTES)
    if document.get("shoulderline") != FORMAT or not _named(document.get("project")):
        raise Unreadable(NOT_OURS)
    entries, worked = document.get("entries"), document.get("worked")
    if not isinstance(entries, list) or not isinstance(worked, dict):
        raise Unreadable(NOT_OURS)
    if not all(isinstance(e, dict) and e.get("project") == document["project"] for e in entries):
        raise Unreadable("This file holds entries of another project than its own.")
    for name, outcome in worked.items():
        _look_at(name, outcome)
    return document


def _named(project: Any) -> bool:
    return isinstance(project, str) and is_identity(project)


def _look_at(name: str, outcome: Any) -> None:
    """Refuse a worked sheet that no version of this program could have written."""
    framed = isinstance(outcome, dict) and set(outcome) == {"sheet", "engine", "same"}
    if not framed or not isinstance(outcome["engine"], str) or not isinstance(outcome["same"], bool):
        raise Unreadable(f"The worked sheet of {name} is not as this program writes it.")
    wrong = sheet_error(outcome["sheet"])
    if wrong:
        raise Unreadable(f"The worked sheet of {name} is not as this program writes it: {wrong}")
