"""Numbers picked for a field: which are offered, and which a press takes."""

from typing import Any, TypeAlias

from webapp.core.built import exact_of
from webapp.core.follow_ground import Ground
from webapp.core.items import named
from webapp.core.links import BETWEEN, SIDES, Link, read_links
from webapp.core.numbers import Number
from webapp.core.text import fold_name, trim
from webapp.core.tool import Field, Tool

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Typed: TypeAlias = dict[str, str]
Pick: TypeAlias = tuple[str, str]  # entry and key

# Names of an address beside a tool's fields: what is being picked for, which side of it, whose numbers are looked at.
INTO = "into"
LINE = "line"
AT = "at"
TAKE = "take."  # begins a name that says what is taken: take.ENTRY.KEY
ALL = "all"  # the key that takes all marks of a sheet, or all readings of a round


def offers(field: Field, number: Number) -> bool:
    """Say whether a field can take a number: a count for a count, a length for a length, and of its sign."""
    if field.kind == "choice" or (field.kind == "count") != number.count:
        return False
    value = exact_of(number.inches)
    return value > 0 or field.sign == "any" or (field.sign == "zero" and value == 0)


def field_of(tool: Tool, name: str) -> Field | None:
    """Return the field that is picked for."""
    found = [field for field in tool.fields if field.name == name and field.kind != "choice"]
    return found[0] if found else None


def take_name(entry: str, key: str) -> str:
    """Return the name that says in an address what is taken."""
    return f"{TAKE}{entry}.{key}"


def picks(typed: Typed) -> list[Pick]:
    """Return what an address says is taken, in its order."""
    said = [name[len(TAKE) :].split(".") for name in typed if name.startswith(TAKE)]
    return [(parts[0], ".".join(parts[1:])) for parts in said if len(parts) > 1]


def entries_named(typed: Typed) -> list[str]:
    """Return the entries whose numbers an address takes or has taken."""
    return [link.entry for link in read_links(typed.get("links", ""))] + [entry for entry, key in picks(typed)]


def side_of(text: str, line: str) -> str:
    """Return the side of a pair that is picked for: the one asked for, else the first that is empty, else the first."""
    filled = [side for side in text.split(BETWEEN) if trim(side)]
    if line in SIDES[: len(filled) + 1]:
        return line
    return SIDES[len(filled)] if len(filled) < 2 else SIDES[0]


def numbers_for(here: Ground, field: Field, entry: str, key: str) -> list[tuple[str, Number]]:
    """Return the numbers that a pick stands for, each with the entry that gives it."""
    if key != ALL:
        source = here.source(Link(field.name, "", entry, key, "0"))
        found = [(source.entry, source.number)] if source.number is not None else []
    else:
        found = all_of(here, entry)
    return [(name, number) for name, number in found if offers(field, number)]


def all_of(here: Ground, entry: str) -> list[tuple[str, Number]]:
    """Return all marks of a sheet, or all readings of a round that stand alone at their place."""
    heads = here.heads.get(entry, [])
    if len(heads) == 1 and heads[0][0] == "sheet":
        name = heads[0][1]["entry"]
        marks = [mark["key"] for mark in here.worked.get(name, {}).get("sheet", {}).get("marks", [])]
        given = here.given("sheet", heads[0][1])
        return [(name, given[key]) for key in marks if key in given]
    found = []
    for reading in round_readings(here.summary, entry):
        found.extend([(reading["entry"], number) for number in here.numbers_of("reading", reading)])
    return found


def round_readings(summary: Summary, entry: str) -> list[Item]:
    """Return the readings of a round, each the only one that stands at its place."""
    things = [thing for thing in summary["rounds"] if any(r["entry"] == entry for r in thing["heads"] + thing["past"])]
    names = [item["entry"] for thing in things for item in thing["heads"] + thing["past"]]
    alone = [place["heads"][0] for place in summary["places"] if len(place["heads"]) == 1]
    return [reading for reading in alone if reading.get("round", "") in names]


def line_for(here: Ground, field: Field, links: list[Link], entry: str, number: Number) -> str:
    """Name a list's line after its source; where another source has a line of this name, after its sheet too."""
    for link in links:
        if link.field == field.name and fold_name(link.line) == fold_name(number.label):
            heads = here.heads.get(link.entry, [])
            if entry not in [item["entry"] for kind, item in heads]:
                return f"{number.label}, {'; '.join([named(kind, item) for kind, item in here.heads[entry]])}"
    return number.label
