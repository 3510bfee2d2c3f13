"""What a project's screens say: its readings by place, its kept sheets, and the next thing to do."""

from typing import Any, TypeAlias

from webapp.core.address import project_address, reading_address, sheet_address, work_address
from webapp.core.drawing import mark_view
from webapp.core.tool import Tool

Summary: TypeAlias = dict[str, Any]

MANY = 12  # lines of a list: above it the list is folded


def project_view(summary: Summary, tools: list[Tool], worked: dict[str, Any]) -> dict[str, Any]:
    """Give a project's page but for its piece: readings, sheets, tools; `worked` holds the sheets by entry."""
    sheets = [_thing_view(summary, thing, tools, worked) for thing in summary["sheets"]]
    places = [place_view(summary, place) for place in summary["places"]]
    return {
        "title": summary["name"],
        "speaks": speaks(summary),
        "archived": summary["archived"],
        "places": places,
        "names": [place["place"] for place in summary["places"]],
        "many_places": f"Readings, {len(places)}" if len(places) > MANY else "",
        "sheets": [thing for thing in sheets if thing["standing"]],
        "many_sheets": f"Kept sheets, {len(sheets)}" if len(sheets) > MANY else "",
        "tools": [tool_link(tool, summary) for tool in tools],
        "jumps": _jumps(summary, len(places) > MANY, len(sheets) > MANY),
    }


def _jumps(summary: Summary, many_places: bool, many_sheets: bool) -> list[dict[str, str]]:
    """Give the ways down the page to what it has."""
    ways = [
        ("Stages", "#stages-words", True),
        ("Parts", "#parts-words", any(thing["heads"] for thing in summary["parts"])),
        ("Readings", "#readings" if many_places else "#places-words", bool(summary["places"])),
        ("Sheets", "#sheets" if many_sheets else "#sheets-words", any(thing["heads"] for thing in summary["sheets"])),
        ("Tools", "#tools-words", True),
    ]
    return [{"title": title, "href": href} for title, href, there in ways if there]


def speaks(summary: Summary) -> str:
    """Say a project's unit and graduation: "inches, 1/32"."""
    words = {"in": "inches", "ft": "feet and inches", "mm": "millimetres"}
    return f"{words[summary['unit']]}, {summary['graduation']}"


def tool_link(tool: Tool, summary: Summary) -> dict[str, Any]:
    """Give the way to a tool's empty form inside a project."""
    return {
        "title": tool.title,
        "about": tool.about,
        "href": work_address(tool.name, {"project": summary["id"]}),
    }


def place_view(summary: Summary, place: dict[str, Any]) -> dict[str, Any]:
    """Give a place with the readings that stand, and how many lie behind them."""
    heads = [reading_line(summary, reading) for reading in place["heads"]]
    behind = len(place["past"])
    return {
        "place": place["place"],
        "heads": heads,
        "rivals": len(heads) > 1,
        "gone": not heads,
        "href": reading_address(summary["id"], (place["heads"] + place["past"])[0]["entry"]),
        "behind": f"{behind} before it" if behind else "",
    }


def reading_view(summary: Summary, place: dict[str, Any]) -> dict[str, Any]:
    """Give one place's page: what stands, what was replaced or withdrawn."""
    return {
        "title": place["place"],
        "project": back_to(summary),
        "place": place_view(summary, place),
        "past": [reading_line(summary, r) for r in place["past"]],
    }


def reading_line(summary: Summary, reading: dict[str, Any]) -> dict[str, Any]:
    """Give a reading as it was said, with the graduation it was said at."""
    return {
        "entry": reading["entry"],
        "said": said(reading),
        "mark": mark_view(reading["text"], ""),
        "graduation": reading["graduation"],
        "when": when(reading["made_at"]),
        "href": reading_address(summary["id"], reading["entry"]),
        "notes": [note["text"] for note in reading["notes"]],
        "withdrawn": reading["withdrawn"],
        "why": reading["why"],
    }


def said(reading: dict[str, Any]) -> str:
    """Give a reading's text with its unit where the text alone does not say it."""
    return (
        f"{reading['text']} mm" if reading["unit"] == "mm" and reading["text"][-1:] in "0123456789" else reading["text"]
    )


def when(made_at: str) -> str:
    """Give the day and the minute of an entry, in the time it was written in."""
    return f"{made_at[:10]}, {made_at[11:16]} UTC"


def _thing_view(summary: Summary, thing: dict[str, Any], tools: list[Tool], worked: dict[str, Any]) -> dict[str, Any]:
    heads = [head_view(summary, head, tools, worked) for head in thing["heads"]]
    return {"heads": heads, "rivals": len(heads) > 1, "standing": len(heads) > 0}


def head_view(summary: Summary, head: dict[str, Any], tools: list[Tool], worked: dict[str, Any]) -> dict[str, Any]:
    """Give a kept sheet as a line: its name, its answer, the way to it."""
    sheet = worked.get(head["entry"], {}).get("sheet", None)
    value = sheet["answer"]["value"] if sheet else None
    return {
        "title": head["called"] or tool_title(tools, head["tool"]),
        "tool": tool_title(tools, head["tool"]),
        "href": sheet_address(summary["id"], head["entry"]),
        "label": sheet["answer"]["label"] if sheet else "not worked yet",
        "mark": mark_view(value["mark"], "") if isinstance(value, dict) else None,
        "words": "" if value is None or isinstance(value, dict) else str(value),
    }


def tool_title(tools: list[Tool], name: str) -> str:
    """Give a tool's title; its bare name where this build does not have it."""
    return ([tool.title for tool in tools if tool.name == name] + [name])[0]


def back_to(summary: Summary) -> dict[str, str]:
    """Give the way back to a project."""
    return {"name": summary["name"], "href": project_address(summary["id"])}
