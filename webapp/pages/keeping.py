"""What the forms keep: one way from what was typed to an entry, the phone's own by its server side."""

from typing import Any

from flask import Blueprint, redirect, request
from werkzeug.wrappers import Response

from webapp.core.address import project_address, reading_address, round_address, sheet_address
from webapp.core.entries import draft
from webapp.core.entries_like import sibling
from webapp.core.rounds import number_in
from webapp.pages import gather
from webapp.pages.forms import KeepingForm
from webapp.pages.projects import PROJECT_FORMS, entry_page, home_page, project_page
from webapp.pages.rounds import ROUND_FORMS, round_page
from webapp.pages.screens import posted, put_errors
from webapp.pages.work import declared, tool_page
from webapp.store.ids import now, uuid7
from webapp.tools import TOOLS
from webapp.units import FACTORS

pages = Blueprint("keeping", __name__)

KINDS = {
    "readings": "reading",
    "settings": "settings",
    "likes": "like",
    "notes": "note",
    "withdrawals": "withdrawal",
    "picks": "pick",
    "sheets": "sheet",
    "parts": "part",
    "joints": "joint",
    "cuts": "cut",
    "done": "done",
    "again": "again",
    "rounds": "round",
    "conditions": "condition",
}
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
    drafts = [{key: part for key, part in drafted.items() if key != "also"}, *drafted.get("also", [])]
    names = [name, *(sibling(name, number) for number in range(1, len(drafts)))]
    signed = map(gather.store().signed, drafts)
    return [{"id": own, **frame, **draft} for own, draft in zip(names, signed, strict=True)]


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
    if kind == "cut":
        return sheet_address(project, typed.get("entry", ""))
    if kind == "round":
        return round_address(project, entry)
    if typed.get("round") and kind in ROUND_FORMS:
        return onward_address(project, typed["round"], typed.get("place", ""))
    if kind in ("note", "withdrawal", "pick", "again"):
        return thing_address(project, typed.get("entry", ""))
    return project_address(project)


def onward_address(project: str, entry: str, place: str) -> str:
    """Return the round that something was kept from: what is to be measured next is looked for from its place on."""
    number = number_in(gather.summary(project), entry, place)
    return f"{round_address(project, entry)}?at={number}" if number else round_address(project, entry)


def thing_address(project: str, entry: str) -> str:
    """Return the page where an entry is shown; of a kept sheet, the one that stands in its place."""
    summary = gather.summary(project) or {}
    for name, page in PAGES.items():
        for thing in summary.get(name, []):
            if any(item["entry"] == entry for item in thing["heads"] + thing["past"]):
                return page(project, thing, entry)
    return project_address(project)


def sheet_page(project: str, thing: dict[str, Any], entry: str) -> str:
    """Return the page of what stands for a kept sheet, or of the sheet itself where rivals or nothing stand."""
    return sheet_address(project, thing["heads"][0]["entry"] if len(thing["heads"]) == 1 else entry)


def cut_page(project: str, thing: dict[str, Any], entry: str) -> str:
    """Return the page of the sheet that a cut is of."""
    return sheet_address(project, (thing["heads"] + thing["past"])[0]["of"])


def reading_page(project: str, thing: dict[str, Any], entry: str) -> str:
    """Return a reading's page."""
    return reading_address(project, entry)


PAGES = {"places": reading_page, "sheets": sheet_page, "cuts": cut_page}


def is_sheet(project: str, entry: str) -> bool:
    """Say whether an entry belongs to a kept sheet."""
    return "/sheets/" in thing_address(project, entry)


def refused(form: KeepingForm, kind: str, typed: dict[str, str], project: str, errors: dict[str, str]) -> Response:
    """Show the page again with what was typed and what is wrong with it."""
    put_errors(form, errors)
    if kind == "project":
        return home_page({kind: form}, 400)
    if kind in ROUND_FORMS and (typed.get("round") or typed.get("like")):
        return round_page(project, typed.get("round") or typed["like"], typed, {kind: form}, 400)
    if kind in PROJECT_FORMS:
        return project_page(project, {kind: form}, 400)
    if kind == "sheet":
        tool = declared(typed.get("tool", ""))
        return tool_page(tool, typed | {"project": project}, form.trouble or next(iter(errors.values())))
    entry = typed.get("entry", "")
    return entry_page("sheet" if is_sheet(project, entry) else "reading", project, entry, {kind: form}, 400)
