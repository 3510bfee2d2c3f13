"""The frame that every entry has, of whatever kind, and the sizes that hold for all."""

from typing import Any, TypeAlias

from webapp.core.entries_text import NAME, is_identity, is_instant, needed_error

Entry: TypeAlias = dict[str, Any]

KEYS = ("id", "project", "kind", "body", "made_at", "by", "replaces")
DEEPEST = 8  # dicts and lists inside a body
BODY_ROOM = 40000  # characters of a body in all, its keys too
MOST_REPLACED = 200
LARGEST = 9007199254740991  # the largest integer that JSON carries safely, 2**53 - 1
KIND = "abcdefghijklmnopqrstuvwxyz-"


def frame_error(entry: Any) -> str:
    """Return what is wrong with an entry's frame, or nothing."""
    if not isinstance(entry, dict):
        return "An entry is an object with named parts."
    missing = [key for key in KEYS if key not in entry]
    if missing:
        return f"The entry lacks {', '.join(missing)}."
    return (
        _identity_error(entry)
        or _stamp_error(entry)
        or _replaces_error(entry["replaces"], entry["id"])
        or _body_error(entry["body"])
    )


def _identity_error(entry: Entry) -> str:
    for key in ("id", "project"):
        if not isinstance(entry[key], str) or not is_identity(entry[key]):
            return f"The {key} must be a UUIDv7 in lower case."
    kind = entry["kind"]
    if not isinstance(kind, str) or not 0 < len(kind) <= 40 or not all(c in KIND for c in kind):
        return "The kind must be a word of small letters."
    if (kind == "project") != (entry["id"] == entry["project"]):
        return "A project has the id of the entry that starts it, and no other entry has that id."
    return ""


def _stamp_error(entry: Entry) -> str:
    if not isinstance(entry["made_at"], str) or not is_instant(entry["made_at"]):
        return "made_at must be a time in UTC with milliseconds, as 2026-11-25T10:17:35.123Z."
    if not isinstance(entry["by"], str):
        return "by must name the device as text."
    wrong = needed_error(entry["by"], "It is blank.", NAME)
    return f"by must name the device. {wrong}" if wrong else ""


def _replaces_error(replaces: Any, own: str) -> str:
    if not isinstance(replaces, list) or len(replaces) > MOST_REPLACED:
        return f"replaces must be a list of at most {MOST_REPLACED} ids."
    if not all(isinstance(name, str) and is_identity(name) for name in replaces):
        return "replaces must hold ids, each a UUIDv7 in lower case."
    if own in replaces or any(replaces.count(name) > 1 for name in replaces):
        return "replaces must name each entry once, and never the entry itself."
    return ""


def _body_error(body: Any) -> str:
    if not isinstance(body, dict):
        return "The body must be an object with named parts."
    if not _sound(body, DEEPEST):
        return f"The body must hold text, whole numbers, yes or no, lists and objects, {DEEPEST} deep at most."
    if _room(body) > BODY_ROOM:
        return f"The body is too long: there is room for {BODY_ROOM} characters."
    return ""


def _sound(value: Any, deep: int) -> bool:
    if isinstance(value, dict):
        return deep > 0 and all(isinstance(k, str) and _sound(k, 0) and _sound(v, deep - 1) for k, v in value.items())
    if isinstance(value, list):
        return deep > 0 and all(_sound(part, deep - 1) for part in value)
    if isinstance(value, str):
        return not any(0xD800 <= ord(c) <= 0xDFFF for c in value)
    if isinstance(value, bool) or value is None:
        return True
    return isinstance(value, int) and -LARGEST <= value <= LARGEST


def _room(value: Any) -> int:
    """Count the characters of all text in a value; each part counts for one more."""
    if isinstance(value, dict):
        return sum(1 + len(key) + _room(part) for key, part in value.items())
    if isinstance(value, list):
        return sum(1 + _room(part) for part in value)
    return len(value) if isinstance(value, str) else 0
