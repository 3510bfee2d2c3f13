"""What the forms keep: one way from what was typed to an entry, the phone's own by its server side."""

from typing import Any

from flask import Blueprint, redirect, request
from werkzeug.wrappers import Response

from webapp.core.address import part_address, project_address, round_address, sheet_address
from webapp.core.entries import draft
from webapp.core.entries_numbered import numbered
from webapp.pages import gather
from webapp.pages.forms import KeepingForm
from webapp.pages.kinds import KINDS
from webapp.pages.landing import landing, landing_address
from webapp.pages.projects import entry_page, glue_page, home_page, project_page
from webapp.pages.rounds import round_page
from webapp.pages.screens import posted, put_errors
from webapp.pages.work import declared, tool_page
from webapp.store.ids import now, uuid7
from webapp.tools import TOOLS
from webapp.units import FACTORS

pages = Blueprint("keeping", __name__)

HERE = "server"  # the device of what a form without script keeps
FRAME = ("entry_id", "csrf_token")
STALE_PAGE = "This page had lain too long to be trusted. What you typed is still here: press again."


@pages.post("/projects")
def start() -> Response:
    """Start a project."""
    return keep("project", "")


@pages.post(f"/projects/<project>/<any({', '.join(KINDS)}):things>")
def keep_in(project: str, things: str) -> Response:
    """Keep something in a project."""
    return keep(KINDS[things], project)


def keep(kind: str, project: str) -> Response:
    """Make an entry of a form and keep it; what stands against it is shown with all that was typed."""
    form = posted(kind, request.path)
    typed = {name: text for name, text in request.form.items() if name not in FRAME}
    errors = trouble(form, kind, typed, project)
    if errors:
        return refused(form, kind, typed, project, errors)
    return redirect(kept_address(kind, project, form.entry_id.data, typed), 303)


def trouble(form: KeepingForm, kind: str, typed: dict[str, str], project: str) -> dict[str, str]:
    """Keep the entry and return nothing, or return what stands against it, by field."""
    if not form.validate():
        return {"": STALE_PAGE}
    name = form.entry_id.data or uuid7()
    summary = gather.summary(project, without=name) if project else None
    drafted = draft(kind, typed, summary, TOOLS, FACTORS, gather.worked(summary))
    if "errors" in drafted:
        found: dict[str, str] = drafted["errors"]
        return found
    known = gather.store().entry(name)
    if known is None:
        form.entry_id.data = name
        return stored(entries_of(name, project, drafted))
    return {} if says_the_same(known, drafted) else again(form, kind, typed, project)


def says_the_same(known: dict[str, Any], drafted: dict[str, Any]) -> bool:
    """Say whether this very form was sent before: a double press, back, or a reload adds nothing."""
    return bool(known["kind"] == drafted["kind"] and drafted["body"].items() <= known["body"].items())


def again(form: KeepingForm, kind: str, typed: dict[str, str], project: str) -> dict[str, str]:
    """Keep what a page that was gone back to now says, as an entry of its own."""
    form.entry_id.data = uuid7()
    return trouble(form, kind, typed, project)


def entries_of(name: str, project: str, drafted: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the entry of a draft, and those that follow it; a project's id is that of the entry that starts it."""
    frame = {"project": name if drafted["kind"] == "project" else project, "made_at": now(), "by": HERE}
    return [{**frame, **gather.store().signed(draft)} for draft in numbered(drafted, name)]


def stored(entries: list[dict[str, Any]]) -> dict[str, str]:
    """Put entries through the one door."""
    why = [refusal["why"] for refusal in gather.store().add(entries)["refused"]]
    return {"": why[0]} if why else {}


def kept_address(kind: str, project: str, entry: str, typed: dict[str, str]) -> str:
    """Return where to go after keeping."""
    if kind in ("project", "like"):
        return project_address(entry)
    if kind == "sheet":
        return sheet_address(project, entry)
    if kind == "round":
        return round_address(project, entry)
    if kind == "part":
        return part_address(project, entry)
    return landing_address(kind, project, typed)


def refused(form: KeepingForm, kind: str, typed: dict[str, str], project: str, errors: dict[str, str]) -> Response:
    """Show the page again with what was typed and what is wrong with it."""
    put_errors(form, errors)
    if kind == "project":
        return home_page({kind: form}, 400)
    if kind == "sheet":
        tool = declared(typed.get("tool", ""))
        return tool_page(tool, typed | {"project": project}, form.trouble or next(iter(errors.values())))
    screen, entry = landing(kind, project, typed)
    if screen == "round":
        return round_page(project, entry, typed, {kind: form}, 400)
    if screen == "project":
        return project_page(project, {kind: form}, 400)
    if screen == "glue":
        return glue_page(project, {kind: form}, 400)
    return entry_page(screen, project, entry, {kind: form}, 400)
