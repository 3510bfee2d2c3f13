"""Projects: the start page, a project, a reading, a kept sheet; and the one way in for their forms."""

from functools import partial
from typing import Any

from flask import Blueprint, Response, abort, jsonify

from webapp.core import view
from webapp.core.address import project_address
from webapp.pages import gather
from webapp.pages.screens import bring, fresh, live, shell
from webapp.phone.shells import kept

pages = Blueprint("projects", __name__)

Forms = dict[str, Any]
WAYS = {"pick": "picks", "note": "notes", "withdrawal": "withdrawals", "cut": "cuts", "again": "again"}
READING_FORMS = ("pick", "note", "withdrawal")
SHEET_FORMS = ("pick", "again", "cut", "withdrawal")
UNDO = {"undo": "withdrawal"}  # a form that is not named by its kind
PROJECT_FORMS = {  # and where each is sent
    "reading": "readings",
    "settings": "settings",
    "like": "likes",
    "round": "rounds",
    "condition": "conditions",
}


@kept(pages, "/", "home", partial(shell, "home", ("project",)))
def home() -> Response:
    """Show the start page."""
    return home_page({})


def home_page(posted: Forms, status: int = 200) -> Response:
    """Show the start page; a posted form stands in for its empty one."""
    forms = {"project": fresh("project", "/projects"), "bring": bring(), **posted}
    return live("home", view.home(gather.home()), forms, status)


@pages.get("/projects.json")
def home_json() -> Response:
    """Answer with every project's state."""
    return jsonify({"projects": gather.summaries()})


@kept(pages, "/projects/<project>", "project", partial(shell, "project", tuple(PROJECT_FORMS)))
def project(project: str) -> Response:
    """Show a project."""
    return project_page(project, {})


def project_page(project: str, posted: Forms, status: int = 200) -> Response:
    """Show a project; a posted form stands in for its empty one."""
    root = project_address(project)
    forms = {kind: fresh(kind, f"{root}/{things}") for kind, things in PROJECT_FORMS.items()} | posted
    forms["settings"].out = f"{root}/file"
    return live("project", view.project(gather.project(project)), forms, status)


@pages.get("/projects/<project>.json")
def project_json(project: str) -> Response:
    """Answer with a project's state."""
    return jsonify(_here(gather.summary(project)))


@kept(pages, "/projects/<project>/readings/<entry>", "reading", partial(shell, "reading", READING_FORMS))
def reading(project: str, entry: str) -> Response:
    """Show one place with what was read there."""
    return entry_page("reading", project, entry, {})


@kept(pages, "/projects/<project>/sheets/<entry>", "sheet", partial(shell, "sheet", SHEET_FORMS, UNDO))
def sheet(project: str, entry: str) -> Response:
    """Show a kept sheet."""
    return entry_page("sheet", project, entry, {})


@kept(pages, "/projects/<project>/origin/<entry>/<key>", "origin", partial(shell, "origin", ()))
def origin(project: str, entry: str, key: str) -> Response:
    """Show how a number came about."""
    return live("origin", view.origin(gather.origin(project, entry, key)), {})


def entry_page(screen: str, project: str, entry: str, posted: Forms, status: int = 200) -> Response:
    """Show a reading or a kept sheet; a posted form stands in for its empty one."""
    kinds = SHEET_FORMS if screen == "sheet" else READING_FORMS
    named = {kind: kind for kind in kinds} | (UNDO if screen == "sheet" else {})
    root = project_address(project)
    ways = {name: f"{root}/{WAYS[kind]}" for name, kind in named.items()}
    empty = {name: fresh(kind, ways[name], entry="" if name == "undo" else entry) for name, kind in named.items()}
    shown = view.sheet if screen == "sheet" else view.reading
    return live(screen, shown(gather.entry(project, entry)), {**empty, **posted}, status)


@pages.get("/projects/<project>/readings/<entry>.json")
def reading_json(project: str, entry: str) -> Response:
    """Answer with one place's readings."""
    return jsonify(_thing(gather.summary(project), "places", entry))


@pages.get("/projects/<project>/sheets/<entry>.json")
def sheet_json(project: str, entry: str) -> Response:
    """Answer with a kept sheet: its record and what the server worked."""
    found = _thing(gather.summary(project), "sheets", entry)
    return jsonify({**found, "worked": gather.store().worked([entry]).get(entry, {})})


def _thing(summary: dict[str, Any] | None, kind: str, entry: str) -> dict[str, Any]:
    things = _here(summary)[kind]
    return _here(next((t for t in things if any(e["entry"] == entry for e in t["heads"] + t["past"])), None))


def _here(found: dict[str, Any] | None) -> dict[str, Any]:
    return found if found is not None else abort(404, "That is not here.")
