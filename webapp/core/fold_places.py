"""What a summary lists: readings by place, all else by thing; what stands, and what lies behind it."""

from typing import Any, TypeAlias

from webapp.core.entries_kinds import LISTED
from webapp.core.fold_shape import rank
from webapp.core.fold_standing import Standing
from webapp.core.links import readable_links

Entry: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

# What an item shows where its entry says it, and what stands for it where not, by kind.
EXTRAS: dict[str, tuple[str, ...]] = {
    "reading": ("round", "stick", "anew"),
    "round": ("stick", "like"),
    "cut": ("measured",),
}


Ranked: TypeAlias = tuple[int, Item]  # a thing behind the rank of its first entry


def listed(own: list[Entry], how: Standing, keys: dict[str, str]) -> dict[str, list[Ranked]]:
    """Return what a cluster of entries gives to the lists of a summary, by name."""
    kinds = [kind for kind in how.kinds if kind in LISTED]
    return {LISTED[kind][0]: places(own, how, keys) if kind == "reading" else things(own, kind, how) for kind in kinds}


def joined(parts: list[dict[str, list[Ranked]]]) -> dict[str, list[Item]]:
    """Return the lists of a summary from those of its clusters, each in the order of the things' first entries."""
    found: dict[str, list[Ranked]] = {name: [] for name, _keys in LISTED.values()}
    for part in parts:
        for name, ranked in part.items():
            found[name].extend(ranked)
    return {name: [thing for _at, thing in sorted(ranked, key=lambda each: each[0])] for name, ranked in found.items()}


def places(own: list[Entry], how: Standing, keys: dict[str, str]) -> list[Ranked]:
    """Return the places in the order of their first reading; each is spelt as it was last."""
    groups: dict[str, list[Entry]] = {}
    for entry in own:
        if entry["kind"] == "reading":
            groups.setdefault(keys[entry["body"]["place"]], []).append(entry)
    return [
        (rank(group[0]), {"place": group[-1]["body"]["place"], "key": key, **_parted(group, how)})
        for key, group in groups.items()
    ]


def things(own: list[Entry], kind: str, how: Standing) -> list[Ranked]:
    """Return the things of a kind by what they replace; a thing has the id of its first entry."""
    groups: dict[str, list[Entry]] = {}
    for entry in own:
        if entry["kind"] == kind:
            groups.setdefault(how.things[entry["id"]], []).append(entry)
    return [(rank(group[0]), {"thing": group[0]["id"], **_parted(group, how)}) for group in groups.values()]


def _parted(group: list[Entry], how: Standing) -> dict[str, list[Item]]:
    heads: list[Item] = []
    past: list[Item] = []
    for entry in group:
        (heads if entry["id"] in how.heads else past).append(_item(entry, how))
    return {"heads": heads, "past": past}


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
        "rank": rank(entry),
        "tips": heads + [withdrawal["id"] for withdrawal in withdrawals],
    }


def _said(entry: Entry) -> Item:
    """Return what of an entry's body is listed; links where the kind has them."""
    kind, body = entry["kind"], entry["body"]
    said = {key: body[key] for key in LISTED[kind][1]}
    for key in EXTRAS.get(kind, ()):
        if key in body:
            said[key] = body[key]
    if kind == "cut":
        said["of"] = body["entry"]
    if kind in ("sheet", "part"):
        said["links"] = readable_links(body.get("links", []))
        said["again"] = body.get("again", False) is True
    return said


def _why(withdrawal: Entry) -> str:
    why = withdrawal["body"].get("why", "")
    return why if isinstance(why, str) else ""
