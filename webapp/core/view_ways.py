"""The ways out where wood is cut and what it was cut from has changed."""

from typing import Any, TypeAlias

from webapp.core.address import work_address
from webapp.core.follow import Held
from webapp.core.links import Link, linked_text, links_text
from webapp.core.tool import Tool

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

CUT_STALE = "It is cut, and is not worked again. These are the ways out."
RESCUE = "rescue"  # the tool for slats that are cut while the opening moved


def cut_view(cut: Item, sheet: dict[str, Any] | None) -> View:
    """Give one thing that is cut: which line of the sheet, and what it measured."""
    label = _line_label(cut["key"], sheet) if cut["key"] else "all of it"
    measured = cut["measured"]["text"] if "measured" in cut else ""
    return {"entry": cut["entry"], "text": f"{label}: cut at {measured}" if measured else f"{label}: cut"}


def _line_label(key: str, sheet: dict[str, Any] | None) -> str:
    """Return the label of a sheet's line; its key where this sheet has no such line."""
    lists = [sheet.get(name, []) for name in ("figures", "marks", "steps")] if sheet is not None else []
    found: list[str] = [part["label"] for parts in lists for part in parts if part["key"] == key]
    return found[0] if found else key


def ways_out(g: Gathered, held: Held, kept: Item, sheet: dict[str, Any] | None) -> View:
    """Say what was cut at which size and what its sources are now, and give the ways out."""
    now = [f"{s.number.label} is now {s.number.said}" for s in held.sources if s.number is not None and s.changed]
    was = "; ".join([f"{kept['called']} {_cut_at(cut, sheet)}" for cut in held.cuts[:1]])
    ways = [way for way in (_rescue(g, held, sheet), _new_part(g, kept)) if way is not None]
    return {"words": "; ".join([was, *now]), "told": CUT_STALE, "ways": ways}


def _cut_at(cut: Item, sheet: dict[str, Any] | None) -> str:
    if "measured" in cut:
        return f"cut at {cut['measured']['text']}"
    numbers = [sheet["answer"], *sheet.get("figures", [])] if sheet is not None else []
    value = ([each["value"] for each in numbers if cut["key"] in ("", each["key"])] + [""])[0]
    return f"cut at {value['mark']}" if isinstance(value, dict) else "cut"


def _rescue(g: Gathered, held: Held, sheet: dict[str, Any] | None) -> View | None:
    """Give the way to the tool that says what can still be cut: the stop moved, a tenon re-cut, a mortise deepened."""
    tools = [tool for tool in g["tools"] if tool.name == RESCUE]
    if not tools:
        return None
    typed = {**_cut_sizes(sheet), **_wanted(tools[0], held), "project": g["project"]["id"]}
    return {
        "title": "What can still be cut",
        "about": "The stop moved, tenons re-cut, a mortise deepened.",
        "href": work_address(RESCUE, typed),
    }


def _cut_sizes(sheet: dict[str, Any] | None) -> dict[str, str]:
    """Give what of a sheet says how long the slats were cut."""
    names = ("overall", "shoulder")
    return {name: f"{sheet[name]['inches']} in" for name in names if name in sheet} if sheet is not None else {}


def _wanted(tool: Tool, held: Held) -> dict[str, str]:
    """Give the opening as it is now, linked, where one alone has changed."""
    changed = [source for source in held.sources if source.changed and source.number is not None]
    fields = [field for field in tool.fields if field.name == "wanted"]
    if len(changed) != 1 or not fields:
        return {}
    source = changed[0]
    inches = source.number.inches if source.number is not None else ""
    link = Link("wanted", "", source.entry, source.link.key, inches)
    return {"wanted": linked_text(fields[0], inches), "links": links_text([link])}


def _new_part(g: Gathered, kept: Item) -> View:
    """Give the way to work it anew, from new wood: a sheet of its own, which replaces none."""
    spoken = {"unit": kept["unit"], "graduation": kept["graduation"]}
    frame = {"project": g["project"]["id"], "called": f"{kept['called']}, new"}
    return {
        "title": "A new part",
        "about": "From new wood, worked anew.",
        "href": work_address(kept["tool"], {**kept["inputs"], **spoken, **frame}),
    }
