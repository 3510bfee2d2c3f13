"""What a summary lists: readings by place, all else by thing; what stands, and what lies behind it."""

from typing import Any, TypeAlias

from webapp.core.entries_kinds import LISTED
from webapp.core.fold_standing import Standing
from webapp.core.links import readable_links
from webapp.core.text import fold_name

Entry: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

# What an item shows where its entry says it, and what stands for it where not, by kind.
EXTRAS: dict[str, tuple[str, ...]] = {"reading": ("round", "stick"), "round": ("stick", "like"), "cut": ("measured",)}


def listed(own: list[Entry], how: Standing) -> dict[str, list[Item]]:
    """Return the lists of a summary by name; `places` in the order of their first reading."""
    found: dict[str, list[Item]] = {"places": places(own, how)}
    for kind, (name, _keys) in LISTED.items():
        if kind != "reading":
            found[name] = things(own, kind, how)
    return found


def places(own: list[Entry], how: Standing) -> list[Item]:
    """Return the places in the order of their first reading; each is spelt as it was last."""
    groups: dict[str, list[Entry]] = {}
    for entry in own:
        if entry["kind"] == "reading":
            groups.setdefault(fold_name(entry["body"]["place"]), []).append(entry)
    return [{"place": group[-1]["body"]["place"], "key": key, **_parted(group, how)} for key, group in groups.items()]


def things(own: list[Entry], kind: str, how: Standing) -> list[Item]:
    """Return the things of a kind by what they replace; a thing has the id of its first entry."""
    groups: dict[str, list[Entry]] = {}
    for entry in own:
        if entry["kind"] == kind:
            groups.setdefault(how.things[entry["id"]], []).append(entry)
    return [{"thing": group[0]["id"], **_parted(group, how)} for group in groups.values()]


def _parted(group: list[Entry], how: Standing) -> dict[str, list[Item]]:
    heads = [_item(entry, how) for entry in group if entry["id"] in how.heads]
    return {"heads": heads, "past": [_item(entry, how) for entry in group if entry["id"] not in how.heads]}


def _item(entry: Entry, how: Standing) -> Item:
    """Return one entry as it is listed; `tips` are the entries that whatever follows it has to replace."""
    heads = how.heads.get(entry["id"], [])
    withdrawals = how.withdrawals.get(entry["id"], [])
    withdrawn = len(withdrawals) > 0 and not heads
    return {
        "entry": entry["id"],
        **_said(entry),
        "made_at": entry["made_at"],
        "by": entry["by"],
        "withdrawn": withdrawn,
        "why": _why(withdrawals[-1]) if withdrawn else "",
        "notes": how.notes.get(entry["id"], []),
        "late": entry["id"] in how.late,
        "sent": "seq" in entry,
        "rank": _rank(entry),
        "tips": heads + [withdrawal["id"] for withdrawal in withdrawals],
    }


def _said(entry: Entry) -> Item:
    """Return what of an entry's body is listed; links where the kind has them."""
    kind, body = entry["kind"], entry["body"]
    said = {key: body[key] for key in LISTED[kind][1]}
    said.update({key: body[key] for key in EXTRAS.get(kind, ()) if key in body})
    if kind == "cut":
        said["of"] = body["entry"]
    if kind in ("sheet", "part"):
        said["links"] = readable_links(body.get("links", []))
        said["again"] = body.get("again", False) is True
    return said


def _rank(entry: Entry) -> list[int]:
    """Return a number pair that orders entries as the fold does: what came to the server, then what is unsent."""
    return [0, entry["seq"]] if "seq" in entry else [1, entry.get("counter", 0)]


def _why(withdrawal: Entry) -> str:
    why = withdrawal["body"].get("why", "")
    return why if isinstance(why, str) else ""
