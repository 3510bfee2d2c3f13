"""A project's name and settings: by key the last one said wins, and all are kept."""

from typing import Any, TypeAlias

from webapp.core.setting import GRADUATIONS, UNITS, USUAL
from webapp.core.shop import readable_shop

Entry: TypeAlias = dict[str, Any]

NAMELESS = "A project whose start is not here yet"


def named(project: str, own: list[Entry]) -> dict[str, Any]:
    """Return the head of a summary: id, name, unit, graduation, archived, started, shop, settings."""
    said: dict[str, Any] = {"name": NAMELESS, "unit": UNITS[0], "graduation": "", "archived": False}
    begun = [entry for entry in own if entry["kind"] == "project"]
    changes = [entry for entry in own if entry["kind"] == "settings"]
    for entry in begun[:1] + changes:
        said.update(_readable(entry["body"]))
    return {
        "id": project,
        "name": said["name"],
        "unit": said["unit"],
        "graduation": _of_unit(said["unit"], said["graduation"]),
        "archived": said["archived"],
        "started": begun[0]["made_at"] if begun else "",
        "shop": _shop(changes),
        "settings": [_change(entry) for entry in changes],
    }


def _shop(changes: list[Entry]) -> dict[str, Any]:
    """Return what was said last of each of the shop's fields; one that was said to be nothing is forgotten."""
    said: dict[str, Any] = {}
    for entry in changes:
        said.update(readable_shop(entry["body"]))
    return {name: found for name, found in said.items() if found["text"]}


def _readable(body: dict[str, Any]) -> dict[str, Any]:
    """Return what of a body can be taken here: a newer version may know more units, or other values."""
    taken: dict[str, Any] = {}
    for key in ("name", "graduation"):
        if isinstance(body.get(key), str):
            taken[key] = body[key]
    if isinstance(body.get("unit"), str) and body["unit"] in UNITS:
        taken["unit"] = body["unit"]
    if isinstance(body.get("archived"), bool):
        taken["archived"] = body["archived"]
    return taken


def _of_unit(unit: str, graduation: str) -> str:
    """Return the graduation, or the unit's own where two phones changed the one and the other."""
    return graduation if graduation in GRADUATIONS[unit] else USUAL[unit]


def _change(entry: Entry) -> dict[str, Any]:
    shop = readable_shop(entry["body"])
    return {
        **_readable(entry["body"]),
        **({"shop": shop} if shop else {}),
        "made_at": entry["made_at"],
        "by": entry["by"],
        "entry": entry["id"],
        "sent": "seq" in entry,
    }
