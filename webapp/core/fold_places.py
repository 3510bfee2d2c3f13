"""Readings by place and sheets by thing: what stands, and what lies behind it."""

from typing import Any, TypeAlias

from webapp.core.fold_standing import Standing
from webapp.core.text import fold_name

Entry: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

READING = ("place", "text", "inches", "unit", "graduation")
SHEET = ("tool", "called", "inputs", "unit", "graduation", "engine", "digest")


def places(own: list[Entry], how: Standing) -> list[Item]:
    """Return the places in the order of their first reading; each is spelt as it was last."""
    groups: dict[str, list[Entry]] = {}
    for entry in own:
        if entry["kind"] == "reading":
            groups.setdefault(fold_name(entry["body"]["place"]), []).append(entry)
    return [
        {"place": group[-1]["body"]["place"], "key": key, **_parted(group, READING, how)}
        for key, group in groups.items()
    ]


def sheets(own: list[Entry], how: Standing) -> list[Item]:
    """Return the sheets by what they replace; a thing has the id of its first sheet."""
    groups: dict[str, list[Entry]] = {}
    for entry in own:
        if entry["kind"] == "sheet":
            groups.setdefault(how.things[entry["id"]], []).append(entry)
    return [{"thing": group[0]["id"], **_parted(group, SHEET, how)} for group in groups.values()]


def _parted(group: list[Entry], keys: tuple[str, ...], how: Standing) -> dict[str, list[Item]]:
    heads = [_item(entry, keys, how) for entry in group if entry["id"] in how.heads]
    return {
        "heads": heads,
        "past": [_item(entry, keys, how) for entry in group if entry["id"] not in how.heads],
    }


def _item(entry: Entry, keys: tuple[str, ...], how: Standing) -> Item:
    """Return one reading or sheet; `tips` are the entries that whatever follows it has to replace."""
    heads = how.heads.get(entry["id"], [])
    withdrawals = how.withdrawals.get(entry["id"], [])
    withdrawn = len(withdrawals) > 0 and not heads
    return {
        "entry": entry["id"],
        **{key: entry["body"][key] for key in keys},
        "made_at": entry["made_at"],
        "by": entry["by"],
        "withdrawn": withdrawn,
        "why": _why(withdrawals[-1]) if withdrawn else "",
        "notes": how.notes.get(entry["id"], []),
        "sent": "seq" in entry,
        "tips": heads + [withdrawal["id"] for withdrawal in withdrawals],
    }


def _why(withdrawal: Entry) -> str:
    why = withdrawal["body"].get("why", "")
    return why if isinstance(why, str) else ""
