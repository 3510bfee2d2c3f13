"""Gather what a screen needs, as the phone does from its own store: the same dict on both sides."""

from collections.abc import Iterable, Mapping
from typing import Any

from flask import current_app

from webapp.core import fold
from webapp.core.follow import needed, sheets_behind
from webapp.core.origin import sheets_above
from webapp.core.picks import entries_named
from webapp.core.tool import Tool
from webapp.store import Store
from webapp.tools import TOOLS
from webapp.units import FACTORS


def store() -> Store:
    """Return the running program's store."""
    found: Store = current_app.extensions["shoulderline"]
    return found


def base() -> dict[str, Any]:
    """Return what every screen has: the tools and the factors of the units."""
    return {"tools": list(TOOLS.values()), "factors": FACTORS, "project": None, "projects": [], "worked": {}}


def summary(project: str, without: str = "") -> dict[str, Any] | None:
    """Return a project's state, or None where there is no such project; one entry may be left out."""
    folded = fold.summary_of([entry for entry in store().entries(project) if entry["id"] != without])
    return folded if folded["id"] else None


def summaries() -> list[dict[str, Any]]:
    """Return every project's state, in the order they were started."""
    return [found for found in map(summary, store().projects()) if found is not None]


def home() -> dict[str, Any]:
    """Gather the start page."""
    return base() | {"projects": summaries()}


def worked(found: dict[str, Any] | None, shown: Iterable[str] = ()) -> dict[str, Any]:
    """Return the kept sheets that a project's links lead to, and those that are shown."""
    return store().worked(dict.fromkeys([*shown, *needed(found)])) if found else {}


def heads(found: dict[str, Any] | None) -> list[str]:
    """Return the kept sheets that stand."""
    return [head["entry"] for thing in found["sheets"] for head in thing["heads"]] if found else []


def project(project_id: str) -> dict[str, Any]:
    """Gather a project's page: its state, the answers of its sheets, and the sheets that its links lead to."""
    found = summary(project_id)
    return base() | {"project": found, "worked": store().answers(heads(found)) | worked(found)}


def entry(project_id: str, entry_id: str) -> dict[str, Any]:
    """Gather one reading's or one kept sheet's page."""
    found = summary(project_id)
    return base() | {"project": found, "entry": entry_id, "worked": worked(found, [entry_id])}


def round_of(project_id: str, entry_id: str, query: Mapping[str, str]) -> dict[str, Any]:
    """Gather a round of dry fit: its project, and the place that the address asks for."""
    return base() | {"project": summary(project_id), "entry": entry_id, "typed": dict(query)}


def help_of(declared: Tool, project_id: str) -> dict[str, Any]:
    """Gather a tool's help: the tool, and the project that it was asked from."""
    return base() | {"tool": declared, "project": summary(project_id) if project_id else None}


def tool(declared: Tool, query: Mapping[str, str]) -> dict[str, Any]:
    """Gather a tool's page: the query, the sheets it is linked to, and the project or those it could be kept in."""
    found = summary(query["project"]) if query.get("project") else None
    others = [] if found else summaries()
    behind = sheets_behind(found, entries_named(dict(query))) if found else []
    own = {"tool": declared, "typed": dict(query), "project": found, "projects": others}
    return base() | own | {"worked": worked(found, behind)}


def source(declared: Tool, query: Mapping[str, str]) -> dict[str, Any]:
    """Gather what a tool's field can take its value from: the query, the project and all sheets that stand in it."""
    found = summary(query["project"]) if query.get("project") else None
    behind = sheets_behind(found, entries_named(dict(query))) if found else []
    own = {"tool": declared, "typed": dict(query), "project": found}
    return base() | own | {"worked": worked(found, [*heads(found), *behind])}


def origin(project_id: str, entry_id: str, key: str) -> dict[str, Any]:
    """Gather how a number came about: what it stands on, however far."""
    found = summary(project_id)
    above = sheets_above(found, entry_id) if found else []
    return base() | {"project": found, "entry": entry_id, "key": key, "worked": worked(found, above)}
