"""The screen on which a field's number is picked: readings by place, measures of parts, numbers of kept sheets."""

from typing import Any, TypeAlias

from webapp.core.drawing import mark_view
from webapp.core.follow_ground import ground
from webapp.core.items import page_of
from webapp.core.links import BETWEEN, SIDES
from webapp.core.numbers import Number
from webapp.core.offered import Offering, barred
from webapp.core.picks import ALL, AT, INTO, LINE, field_of, round_readings, side_of, take_name
from webapp.core.picks_form import held_links, settled
from webapp.core.text import trim
from webapp.core.tool import Tool
from webapp.core.view_links import sources_view
from webapp.core.view_project import back_to, tool_title

Gathered: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]

ORDINALS = ("first", "second", "third", "fourth")
SECTIONS = (("answer", "The answer"), ("figures", "Figures"), ("marks", "Marks"), ("steps", "Steps"))
NO_FIELD = "There is no field of this name that takes a number."


def source_view(g: Gathered) -> View:
    """Give what a field of a tool can take its value from; `typed` says which field: `into`."""
    tool, field = g["tool"], field_of(g["tool"], g["typed"].get(INTO, ""))
    if field is None:
        return {"missing": NO_FIELD}
    typed, summary = settled(g), g["project"]
    here = ground(summary, g["worked"], g["factors"])
    offering = Offering(field, here, held_links(tool, typed), barred(summary, typed.get("replaces", "")))
    whole = [sheet for sheet in offering.alone("sheets") if sheet["entry"] == g["typed"].get(AT, "")]
    return {
        "title": field.label,
        "tool": tool.title,
        "project": back_to(summary),
        "many": offering.many,
        "now": sources_view(g, typed)[field.name]["text"] or typed.get(field.name, ""),
        "held": [{"name": name, "said": text} for name, text in {**typed, INTO: field.name}.items()],
        "work": f"/work/{tool.name}",
        "pick": f"/from/{tool.name}",
        "sides": sides_view(typed.get(field.name, ""), g["typed"].get(LINE, "")) if field.kind == "pair" else [],
        "whole": whole_view(offering, whole[0]) if whole else None,
        **({} if whole else offered_view(offering, g["tools"])),
    }


def sides_view(text: str, line: str) -> list[View]:
    """Give the sides of a pair that can be filled, the next one chosen."""
    filled = [trim(side) for side in text.split(BETWEEN) if trim(side)]
    chosen = side_of(text, line)
    found = []
    for i, side in enumerate([*filled, "empty"][: len(SIDES)]):
        found.append({"line": SIDES[i], "label": f"{ORDINALS[i]}: {side}", "chosen": SIDES[i] == chosen})
    return found


def offered_view(offering: Offering, tools: list[Tool]) -> View:
    """Give everything that is offered, the latest first, and what is in doubt."""
    rows = [
        row(offering, reading, number)
        for reading in offering.alone("places")
        for number in offering.numbers("reading", reading)
    ]
    parts = [
        row(offering, part, number) for part in offering.alone("parts") for number in offering.numbers("part", part)
    ]
    sheets = [sheet_line(offering, sheet, tools) for sheet in offering.alone("sheets")]
    shown = [sheet for sheet in sheets if sheet["some"]]
    return {
        "readings": rows,
        "parts": parts,
        "rounds": rounds_view(offering) if offering.many else [],
        "sheets": shown,
        "doubtful": doubtful_view(offering),
        "nothing": not rows and not parts and not shown,
    }


def row(offering: Offering, item: Item, number: Number) -> View:
    """Give one number as it is picked."""
    return {
        "name": take_name(item["entry"], number.key),
        "label": number.label,
        "mark": mark_view(number.said, ""),
        "taken": offering.has(item["entry"], number.key),
    }


def rounds_view(offering: Offering) -> list[View]:
    """Give each round whose readings can be taken all at once."""
    found = []
    for item in offering.alone("rounds"):
        count = len(round_readings(offering.here.summary, item["entry"]))
        if count > 0:
            found.append(
                {"name": take_name(item["entry"], ALL), "label": item["called"], "words": f"Take all {count} readings"}
            )
    return found


def sheet_line(offering: Offering, sheet: Item, tools: list[Tool]) -> View:
    """Give a kept sheet: its answer, all its marks at one press, and the way to its other numbers."""
    worked = offering.here.worked.get(sheet["entry"], {}).get("sheet", {})
    numbers = offering.numbers("sheet", sheet)
    answer = [number for number in numbers if worked and number.key == worked["answer"]["key"]]
    keys = [mark["key"] for mark in worked.get("marks", [])]
    marks = [number for number in numbers if number.key in keys]
    return {
        "title": sheet["called"],
        "tool": tool_title(tools, sheet["tool"]),
        "answer": row(offering, sheet, answer[0]) if answer else None,
        "all": take_name(sheet["entry"], ALL) if offering.many and marks else "",
        "marks": f"Take all {len(marks)} marks",
        "more": sheet["entry"] if len(numbers) > len(answer) else "",
        "numbers": f"its {len(numbers)} numbers",
        "some": len(numbers) > 0,
    }


def whole_view(offering: Offering, sheet: Item) -> View:
    """Give all numbers of one sheet, section by section."""
    worked = offering.here.worked.get(sheet["entry"], {}).get("sheet", {})
    numbers = {number.key: number for number in offering.numbers("sheet", sheet)}
    sections = []
    for name, words in SECTIONS:
        said = [worked.get(name, {"key": ""})] if name == "answer" else worked.get(name, [])
        rows = [row(offering, sheet, numbers[part["key"]]) for part in said if part["key"] in numbers]
        if rows:
            sections.append({"id": name, "words": words, "rows": rows})
    return {"title": sheet["called"], "sections": sections}


def doubtful_view(offering: Offering) -> list[View]:
    """Give what has rivals, with the page on which one says which holds."""
    summary = offering.here.summary
    readings = [
        {"label": head["place"], "href": page_of(summary, "reading", head["entry"])}
        for head in offering.doubtful("places")
    ]
    sheets = [
        {"label": head["called"], "href": page_of(summary, "sheet", head["entry"])}
        for head in offering.doubtful("sheets")
    ]
    return readings + sheets
