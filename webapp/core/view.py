"""The screens: from what was gathered, the same on both sides, to what a screen says.

A view is a dict of text, booleans, lists and dicts, never numbers. `g` holds `tools`, `factors` and what
the screen needs of: `tool`, `typed` (the query), `projects` (summaries), `project` (a summary or None),
`entry` (an id), `worked` (entry id to `{"sheet", "same"}`).
"""

from typing import Any, TypeAlias

from webapp.core.address import project_address, work_address
from webapp.core.view_glue import glue_view
from webapp.core.view_help import help_view
from webapp.core.view_kept import kept_view
from webapp.core.view_links import sources_view
from webapp.core.view_origin import origin_view
from webapp.core.view_part import part_view
from webapp.core.view_piece import piece_view
from webapp.core.view_project import project_view, reading_view, speaks
from webapp.core.view_round import round_view
from webapp.core.view_rounds import rounds_view
from webapp.core.view_source import source_view
from webapp.core.view_stands import project_stands
from webapp.core.view_tool import tool_view

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]


def home(g: Gathered) -> View:
    """Give the start page: projects at hand, those put away, and the tools."""
    return {
        "projects": [_project_line(p) for p in g["projects"] if not p["archived"]],
        "away": [_project_line(p) for p in g["projects"] if p["archived"]],
        "tools": [{"title": t.title, "about": t.about, "href": work_address(t.name, {})} for t in g["tools"]],
    }


def _project_line(summary: dict[str, Any]) -> View:
    standing = [thing for thing in summary["sheets"] if thing["heads"]]
    return {
        "name": summary["name"],
        "href": project_address(summary["id"]),
        "speaks": speaks(summary),
        "holds": f"{_counted(len(summary['places']), 'place')} measured, {_counted(len(standing), 'sheet')}",
    }


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def project(g: Gathered) -> View:
    """Give a project's page, or say that it is not here."""
    if g["project"] is None:
        return _missing("This project")
    stands = project_stands(g["project"], g["tools"], g["factors"])
    rounds = rounds_view(g["project"], g["factors"])
    piece = piece_view(g["project"], g["tools"], g["worked"], g["factors"])
    return {**project_view(g["project"], g["tools"], g["worked"]), **piece, **rounds, "stands": stands}


def _missing(what: str) -> View:
    return {"missing": f"{what} is not here. It may be on another phone that has not sent it yet."}


def reading(g: Gathered) -> View:
    """Give one place: what stands, what was replaced or withdrawn, and its notes."""
    found = _found(g, "places")
    return reading_view(g["project"], found[0]) if found else _missing("This reading")


def part(g: Gathered) -> View:
    """Give a part's page, or say that it is not here."""
    found = _found(g, "parts")
    return part_view(g, found[0]) if found else _missing("This part")


def glue(g: Gathered) -> View:
    """Give the list of what cannot be done after the glue-up."""
    return glue_view(g["project"]) if g["project"] is not None else _missing("This project")


def tool(g: Gathered) -> View:
    """Give a tool's page."""
    return {**tool_alone(g), "linked": sources_view(g, g["typed"])}


def tool_alone(g: Gathered) -> View:
    """Give a tool's page outside a project, where no field can take its value from another number."""
    return {**tool_view(g), "linked": {}}


def source(g: Gathered) -> View:
    """Give what a field of a tool can take its value from."""
    return source_view(g) if g["project"] is not None else _missing("This project")


def origin(g: Gathered) -> View:
    """Give how a number came about."""
    found = origin_view(g) if g["project"] is not None else {}
    return found or _missing("This number")


def help(g: Gathered) -> View:
    """Give a tool's help."""
    return help_view(g["tool"], g["project"])


def diagnostics(g: Gathered) -> View:
    """Give what does not depend on the phone of the page that says how it stands."""
    return {"title": "How this phone stands", "about": "Read it out, line by line, to whoever helps."}


def sheet(g: Gathered) -> View:
    """Give a kept sheet's page, or say that it is not here."""
    found = _found(g, "sheets")
    return kept_view(g, found[0]) if found else _missing("This sheet")


def round(g: Gathered) -> View:
    """Give a round of dry fit, or say that it is not here."""
    found = _found(g, "rounds")
    return round_view(g, (found[0]["heads"] + found[0]["past"])[0]) if found else _missing("This round")


def _found(g: Gathered, name: str) -> list[dict[str, Any]]:
    """Give the place or the sheet, with all that it replaced, that the entry belongs to."""
    if g["project"] is None:
        return []
    return [thing for thing in g["project"][name] if _holds(thing, g["entry"])]


def _holds(thing: dict[str, Any], entry: str) -> bool:
    return any(item["entry"] == entry for item in thing["heads"] + thing["past"])
