"""What a kept sheet's page says: its answer, what it was worked from, and what it replaced."""

from typing import Any, TypeAlias

from webapp.core.address import origin_address, sheet_address, work_address
from webapp.core.follow_ground import ground
from webapp.core.items import items_of
from webapp.core.links import link_of, links_text
from webapp.core.numbers import cuts_of
from webapp.core.piece_room import room_warnings
from webapp.core.piece_slats import cuttable
from webapp.core.view_held import held_view
from webapp.core.view_links import taken_words
from webapp.core.view_project import back_to, tool_title, when
from webapp.core.view_sheet import sheet_view
from webapp.core.working import work

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]


def kept_view(g: Gathered, thing: dict[str, Any]) -> View:
    """Give a kept sheet: its answer, what it was worked from, and the ones that it replaced."""
    summary = g["project"]
    kept = [s for s in thing["heads"] + thing["past"] if s["entry"] == g["entry"]][0]
    outcome = g["worked"].get(g["entry"], {}) or _worked_here(g, kept)
    return {
        "title": kept["called"] or tool_title(g["tools"], kept["tool"]),
        "tool": tool_title(g["tools"], kept["tool"]),
        "project": back_to(summary),
        "kept": when(kept["made_at"]),
        "warnings": room_warnings(summary, g["worked"], g["factors"]) if kept["tool"] == "gauge" else [],
        "held": held_view(g, kept, outcome.get("sheet")),
        "lines": _lines(g, kept, outcome.get("sheet")),
        "later": [_rival(summary, s) for s in thing["heads"]] if kept not in thing["heads"] else [],
        "late": kept["late"],
        "sheet": opened(summary, kept, outcome["sheet"]) if "sheet" in outcome else None,
        "differs": not outcome.get("same", True),
        "inputs": _inputs(g, kept),
        "change": _change_address(summary, kept),
        "standing": any(s["entry"] == g["entry"] for s in thing["heads"]),
        "rivals": [_rival(summary, s) for s in thing["heads"]] if len(thing["heads"]) > 1 else [],
        "past": [_rival(summary, s) for s in thing["past"] if s["entry"] != g["entry"]],
    }


def opened(summary: dict[str, Any], kept: dict[str, Any], sheet: dict[str, Any]) -> View:
    """Give a sheet whose every number leads to how it came about."""
    view = sheet_view(sheet)
    for item in [view["answer"], *view["figures"], *view["marks"], *view["steps"]]:
        if item["mark"] is not None:
            item["href"] = origin_address(summary["id"], kept["entry"], item["key"])
    return view


def _worked_here(g: Gathered, kept: dict[str, Any]) -> dict[str, Any]:
    """Work a sheet that the server has not seen yet."""
    known = [t for t in g["tools"] if t.name == kept["tool"]]
    typed = {**kept["inputs"], "unit": kept["unit"], "graduation": kept["graduation"]}
    return work(known[0], typed, g["factors"]) if known else {}


def _lines(g: Gathered, kept: dict[str, Any], sheet: dict[str, Any] | None) -> list[View]:
    """Give the lines of a sheet that can be marked as cut, one by one."""
    cut = [each["key"] for each in cuts_of(g["project"], kept["entry"])]
    lines = cuttable(sheet) if sheet is not None else []
    return [{"key": line["key"], "label": line["label"]} for line in lines if line["key"] not in cut and "" not in cut]


def _inputs(g: Gathered, kept: dict[str, Any]) -> list[View]:
    labels = {field.name: field.label for t in g["tools"] if t.name == kept["tool"] for field in t.fields}
    here, items = ground(g["project"], g["worked"], g["factors"]), items_of(g["project"])
    found: list[View] = []
    for name, text in kept["inputs"].items():
        links = [link_of(link) for link in kept["links"] if link["field"] == name]
        found.append({"label": labels.get(name, name), "text": text, "source": taken_words(here, items, links)})
    return found


def _change_address(summary: dict[str, Any], kept: dict[str, Any]) -> str:
    spoken = {"unit": kept["unit"], "graduation": kept["graduation"]}
    frame = {"project": summary["id"], "replaces": kept["entry"], "called": kept["called"]}
    links = links_text([link_of(link) for link in kept["links"]])
    return work_address(kept["tool"], {**kept["inputs"], **spoken, **frame, "links": links})


def _rival(summary: dict[str, Any], kept: dict[str, Any]) -> View:
    return {
        "entry": kept["entry"],
        "title": kept["called"] or kept["tool"],
        "when": when(kept["made_at"]),
        "href": sheet_address(summary["id"], kept["entry"]),
    }
