"""Projects: the start page, a project, a reading, a kept sheet; and the one way in for their forms."""

from functools import partial
from typing import Any

from flask import Blueprint, Response, abort, jsonify, request

from webapp.core import view
from webapp.core.address import project_address
from webapp.core.piece_glue import glue_list
from webapp.pages import gather
from webapp.pages.screens import bring, empty, fresh, live, shell
from webapp.phone.shells import kept

pages = Blueprint("projects", __name__)

Forms = dict[str, Any]


@kept(pages, "/", "home", partial(shell, "home"))
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


@kept(pages, "/projects/<project>", "project", partial(shell, "project"))
def project(project: str) -> Response:
    """Show a project; an address may name the place that is to be measured."""
    return project_page(project, {}, place=request.args.get("place", ""))


def project_page(project: str, posted: Forms, status: int = 200, place: str = "") -> Response:
    """Show a project; a posted form stands in for its empty one."""
    forms = empty("project", project)
    forms["reading"].place.data = place
    forms |= posted
    forms["settings"].out = f"{project_address(project)}/file"
    return live("project", view.project(gather.project(project)), forms, status)


@pages.get("/projects/<project>.json")
def project_json(project: str) -> Response:
    """Answer with a project's state."""
    return jsonify(_here(gather.summary(project)))


@kept(pages, "/projects/<project>/readings/<entry>", "reading", partial(shell, "reading"))
def reading(project: str, entry: str) -> Response:
    """Show one place with what was read there."""
    return entry_page("reading", project, entry, {})


@kept(pages, "/projects/<project>/sheets/<entry>", "sheet", partial(shell, "sheet"))
def sheet(project: str, entry: str) -> Response:
    """Show a kept sheet."""
    return entry_page("sheet", project, entry, {})


@kept(pages, "/projects/<project>/origin/<entry>/<key>", "origin", partial(shell, "origin"))
def origin(project: str, entry: str, key: str) -> Response:
    """Show how a number came about."""
    return live("origin", view.origin(gather.origin(project, entry, key)), {})


@kept(pages, "/projects/<project>/parts/<entry>", "part", partial(shell, "part"))
def part(project: str, entry: str) -> Response:
    """Show a part of the piece."""
    return entry_page("part", project, entry, {})


@kept(pages, "/projects/<project>/glue", "glue", partial(shell, "glue"))
def glue(project: str) -> Response:
    """Show what cannot be done after the glue-up."""
    return glue_page(project, {})


def glue_page(project: str, posted: Forms, status: int = 200) -> Response:
    """Show the list before the glue; a posted form stands in for its empty one."""
    return live("glue", view.glue(gather.glue(project)), {**empty("glue", project), **posted}, status)


def entry_page(screen: str, project: str, entry: str, posted: Forms, status: int = 200) -> Response:
    """Show a reading, a kept sheet or a part; a posted form stands in for its empty one."""
    shown = {"reading": view.reading, "sheet": view.sheet, "part": view.part}[screen]
    g = gather.part(project, entry) if screen == "part" else gather.entry(project, entry)
    forms = empty(screen, project, entry=entry)
    return live(screen, shown(g), {**forms, **posted}, status)


@pages.get("/projects/<project>/readings/<entry>.json")
def reading_json(project: str, entry: str) -> Response:
    """Answer with one place's readings."""
    return jsonify(_thing(gather.summary(project), "places", entry))


@pages.get("/projects/<project>/parts/<entry>.json")
def part_json(project: str, entry: str) -> Response:
    """Answer with a part: what stands, and what it replaced."""
    return jsonify(_thing(gather.summary(project), "parts", entry))


@pages.get("/projects/<project>/glue.json")
def glue_json(project: str) -> Response:
    """Answer with the list before the glue: each step, what it is done to, and the entry that says it is done."""
    return jsonify([vars(tick) for tick in glue_list(_here(gather.summary(project)))])


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
