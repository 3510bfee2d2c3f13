"""Stale sheets and parts worked again, in order, each a new entry that replaces the old; what is cut is left alone."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_sheet import sheet_of
from webapp.core.entries_text import tidy
from webapp.core.follow import Follow, Held, follow
from webapp.core.follow_ground import Ground, Source, ground
from webapp.core.follow_order import above
from webapp.core.links import Link, linked_text, put_link, written_link
from webapp.core.mark import exact
from webapp.core.numbers import part_numbers, sheet_numbers
from webapp.core.reading import read
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

NOTHING = "Nothing here is stale that could be worked again."


@dataclass(frozen=True)
class Again:
    """What can be worked again: the drafts in order, and why others cannot be, by entry."""

    drafts: list[Outcome]
    why: dict[str, str]


def draft_again(typed: dict[str, str], summary: Any, worked: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make the entries of one press: all that is stale, or, where `entry` names one, that and what it stands on."""
    if summary is None:
        return {"errors": {"entry": NOTHING}}
    found = again(summary, worked, tools, factors, tidy(typed, "entry"))
    if not found.drafts:
        return {"errors": {"entry": (list(found.why.values()) + [NOTHING])[0]}}
    first = found.drafts[0]
    return {**first, "also": found.drafts[1:]}


def again(summary: Any, worked: Any, tools: Tools, factors: Factors, only: str = "") -> Again:
    """Work again what is stale, sources first; each new value is taken by what stands on it."""
    followed = follow(summary, worked, factors)
    here = ground(summary, worked, factors)
    found = Again([], {})
    for held in _wanted(followed, only):
        blocked = [name for name in held.behind if name in found.why]
        if blocked:
            found.why[held.item["entry"]] = "What it stands on cannot be worked again."
        else:
            _work(held, here, found, tools)
    return found


def _wanted(followed: Follow, only: str) -> list[Held]:
    """Return what is stale and not cut; of one that is named, itself and what it stands on."""
    stale = [held for held in followed.of("stale") if not held.cuts]
    if not only:
        return stale
    on = {name: [source.entry for source in held.sources] for name, held in followed.held.items()}
    names = {only: True, **above(only, on)}
    return [held for held in stale if held.item["entry"] in names]


def _work(held: Held, here: Ground, found: Again, tools: Tools) -> None:
    """Work one again, and let its new numbers stand for the old ones."""
    sources = [here.source(source.link) for source in held.sources]
    part = held.kind == "part"
    outcome = _part(held.item, sources, here) if part else _sheet(held.item, sources, here, tools)
    name = held.item["entry"]
    if "why" in outcome:
        found.why[name] = outcome["why"]
    else:
        here.numbers[name] = {number.key: number for number in outcome["numbers"]}
        found.drafts.append({"kind": held.kind, "body": outcome["body"], "replaces": held.item["tips"]})


def _sheet(item: Item, sources: list[Source], here: Ground, tools: Tools) -> Outcome:
    """Work a sheet with the values that its sources have now: {"body", "numbers"}, or {"why"}."""
    fields = {field.name: field for field in tools[item["tool"]].fields} if item["tool"] in tools else {}
    inputs = dict(item["inputs"])
    links = []
    for source in sources:
        if source.number is None or source.link.field not in fields:
            return {"why": f"{item['called']}: {source.link.field} has no source that could be followed."}
        field, line = fields[source.link.field], source.link.line
        text = linked_text(field, source.number.inches)
        inputs[field.name] = put_link(field, inputs.get(field.name, ""), line, text)
        links.append(written_link(_moved(source)))
    keys = ("tool", "called", "unit", "graduation")
    body = {**{key: item[key] for key in keys}, "inputs": inputs, "links": links, "again": True}
    outcome = sheet_of(body, tools, here.how.factors)
    if "why" in outcome:
        return {"why": f"{item['called']}: {outcome['why']}"}
    return {"body": body, "numbers": sheet_numbers(outcome["sheet"], [])}


def _moved(source: Source) -> Link:
    """Return a link with the value that its source has now."""
    old = source.link
    return Link(old.field, old.line, old.entry, old.key, source.number.inches if source.number else old.inches)


def _part(item: Item, sources: list[Source], here: Ground) -> Outcome:
    """Give a part's measures the values that their sources have now: {"body", "numbers"}, or {"why"}."""
    measures = dict(item["measures"])
    links = []
    for source in sources:
        if source.number is None:
            return {"why": f"{item['name']}: {source.link.field} has no source that could be followed."}
        measures[source.link.field] = measure(f"{source.number.inches} in", here)
        links.append(written_link(_moved(source)))
    keys = ("name", "count", "spare", "wood", "faces")
    body = {**{key: item[key] for key in keys}, "measures": measures, "links": links, "again": True}
    changed = {**item, "measures": measures}
    return {"body": body, "numbers": part_numbers(here.summary, changed, here.worked, here.how)}


def measure(text: str, here: Ground) -> dict[str, str]:
    """Return a measure as entries hold it, of an exact text."""
    how = here.how
    return {"text": text, "inches": exact(read(text, how)), "unit": how.unit, "graduation": how.graduation}
