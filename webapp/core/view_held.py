"""What a kept sheet's page says of its sources: what has changed, what it waits for, and what of it is cut."""

from typing import Any, TypeAlias

from webapp.core.address import sheet_address
from webapp.core.drawing import mark_view
from webapp.core.entries_exact import from_exact
from webapp.core.follow import Held, follow
from webapp.core.follow_ground import WHY, Source
from webapp.core.mark import mark
from webapp.core.numbers import cuts_of
from webapp.core.setting import setting
from webapp.core.tool import Field
from webapp.core.view_ways import cut_view, ways_out

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

WORDS = {
    "holds": "Worked from what stands now.",
    "stale": "Stale: what it was worked from has changed.",
    "waits": "It waits: it cannot be worked again as things stand.",
}


def held_view(g: Gathered, kept: Item, sheet: dict[str, Any] | None) -> View:
    """Give how a kept sheet stands: `words` and the lists behind them; blank where it takes no number from another."""
    held = follow(g["project"], g["worked"], g["factors"]).held.get(kept["entry"])
    cuts = cuts_of(g["project"], kept["entry"])
    named = {tool.name: tool for tool in g["tools"]}
    fields = {field.name: field for field in named[kept["tool"]].fields} if kept["tool"] in named else {}
    own = {
        "entry": kept["entry"],
        "cuts": [cut_view(cut, sheet) for cut in cuts],
        "whole": any(cut["key"] == "" for cut in cuts),
    }
    if held is None or held.state == "holds":
        return {"words": WORDS["holds"] if held is not None else "", "off": False, **own}
    return {
        "words": WORDS[held.state],
        "off": True,
        "changed": [_changed(g, source, fields) for source in held.sources if source.changed],
        "waiting": [_waiting(source, fields) for source in held.sources if source.why],
        "behind": _behind(g, held),
        "again": held.state == "stale" and not cuts,
        "stale_cut": ways_out(g, held, kept, sheet) if cuts else None,
        **own,
    }


def _where(source: Source, fields: dict[str, Field]) -> str:
    """Say at which field, and at which line of it, a link stands."""
    label = fields[source.link.field].label if source.link.field in fields else source.link.field
    return f"{label}, {source.link.line}" if source.link.line else label


def _changed(g: Gathered, source: Source, fields: dict[str, Field]) -> View:
    """Give a changed source: the value that was worked with beside the one that stands now."""
    number = source.number
    said = number.said if number is not None else ""
    counted = source.link.field in fields and fields[source.link.field].kind == "count"
    was = source.link.inches if counted else _mark(g, source.link.inches)
    return {
        "label": _where(source, fields),
        "was": mark_view(was),
        "now": mark_view(said),
        "of": number.label if number is not None else "",
    }


def _mark(g: Gathered, inches: str) -> str:
    value = from_exact(inches)
    how = setting(g["project"]["unit"], g["project"]["graduation"], g["factors"])
    return mark(value, how) if value is not None else inches


def _waiting(source: Source, fields: dict[str, Field]) -> str:
    return f"{_where(source, fields)}: {WHY[source.why]}."


def _behind(g: Gathered, held: Held) -> list[View]:
    """Give the sheets among its sources that do not hold themselves."""
    heads = [head for thing in g["project"]["sheets"] for head in thing["heads"]]
    found = [head for head in heads if head["entry"] in held.behind]
    return [{"title": head["called"], "href": sheet_address(g["project"]["id"], head["entry"])} for head in found]
