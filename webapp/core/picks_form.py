"""A tool's form while numbers are picked for it: what it holds before a press, and after."""

from typing import Any, TypeAlias

from webapp.core.address import source_address, work_address
from webapp.core.follow_ground import ground
from webapp.core.links import Link, holding, linked_text, links_text, put_link, read_links
from webapp.core.picks import INTO, LINE, field_of, line_for, numbers_for, picks, side_of
from webapp.core.text import trim
from webapp.core.tool import Field, Tool
from webapp.core.working import OWN, said

Gathered: TypeAlias = dict[str, Any]
Typed: TypeAlias = dict[str, str]

FRAME = ("project", "replaces", "called", "links")


def settled(g: Gathered) -> Typed:
    """Return what the form holds once what was picked is taken: its own fields and links, no name of the picking."""
    tool, typed = g["tool"], plain(g["tool"], g["typed"])
    links = held_links(tool, typed)
    field = field_of(tool, g["typed"].get(INTO, ""))
    if field is not None:
        new = taken(g, field, typed)
        text = said(tool, typed).get(field.name, "")
        for link in new:
            text = put_link(field, text, link.line, linked_text(field, link.inches))
        typed = {**typed, field.name: text}
        links = holding(tool, said(tool, typed), links + new)
    filled = {**typed, "links": links_text(links)}
    return begun(tool, {name: filled[name] for name in names_of(tool) if filled.get(name, "")})


def names_of(tool: Tool) -> list[str]:
    """Return the names of a tool's form, in its order."""
    return [*[field.name for field in tool.fields], *OWN, *FRAME]


def held_links(tool: Tool, typed: Typed) -> list[Link]:
    """Return the links of a form whose value still stands there."""
    return holding(tool, said(tool, typed), read_links(typed.get("links", "")))


def plain(tool: Tool, typed: Typed) -> Typed:
    """Return what a form holds of what it sent."""
    return {name: typed[name] for name in names_of(tool) if trim(typed.get(name, ""))}


def begun(tool: Tool, typed: Typed) -> Typed:
    """Return what a form says: choices alone, which always stand at something, say nothing yet."""
    if any(typed.get(field.name, "") for field in tool.fields if field.kind != "choice"):
        return typed
    choices = [field.name for field in tool.fields if field.kind == "choice"]
    return {name: text for name, text in typed.items() if name not in choices}


def taken(g: Gathered, field: Field, typed: Typed) -> list[Link]:
    """Return a link for each number that is picked and still there."""
    found: list[Link] = []
    if g["project"] is None or not picks(g["typed"]):
        return found
    here, links = ground(g["project"], g["worked"], g["factors"]), held_links(g["tool"], typed)
    side = side_of(typed.get(field.name, ""), g["typed"].get(LINE, "")) if field.kind == "pair" else ""
    for entry, key in picks(g["typed"]):
        for name, number in numbers_for(here, field, entry, key):
            line = line_for(here, field, links + found, name, number) if field.kind == "lines" else side
            found.append(Link(field.name, line, name, number.key, number.inches))
    return found


def settled_address(g: Gathered) -> str:
    """Return where to go with what was picked: the form, at the field; or back to picking where it is there no more."""
    tool, field = g["tool"], field_of(g["tool"], g["typed"].get(INTO, ""))
    if field is None:
        return work_address(tool.name, settled(g))
    if g["project"] is not None and picks(g["typed"]) and not taken(g, field, plain(tool, g["typed"])):
        return source_address(tool.name, {**settled(g), INTO: field.name})
    return f"{work_address(tool.name, settled(g))}#{field.name}-label"
