"""A screen twice from one template: live, with data and forms that post; and as a shell, with neither."""

from collections.abc import Mapping
from functools import cache
from types import SimpleNamespace
from typing import Any

from flask import Response, make_response, render_template
from markupsafe import Markup

from webapp.core.tool import Tool
from webapp.pages.forms import BringForm, KeepingForm, keeping_form, tool_form
from webapp.store.ids import uuid7

WITHOUT_TOKEN = {"csrf": False}


def live(screen: str, view: dict[str, Any], forms: dict[str, Any], status: int = 200, **context: Any) -> Response:
    """Render a screen with its data."""
    status = 404 if "missing" in view else status
    return page(screen, status, view=view, live=True, forms=SimpleNamespace(**forms), **context)


def shell(
    screen: str, kinds: tuple[str, ...], named: Mapping[str, str] | None = None, tool: Tool | None = None
) -> Response:
    """Render a screen with no data, no token and no user's setting; `named` are forms that have another name."""
    every = {kind: kind for kind in kinds} | dict(named or {})
    forms: dict[str, Any] = {
        name: keeping_form(kind)(formdata=None, meta=WITHOUT_TOKEN) for name, kind in every.items()
    }
    forms["bring"] = BringForm(formdata=None, meta=WITHOUT_TOKEN)
    context = tool_context(tool, {}) if tool else {}
    return page(screen, 200, view=None, live=False, forms=SimpleNamespace(**forms), **context)


@cache
def pad() -> Markup:
    """Return the pad's keys, which are the same on every page."""
    return Markup(render_template("pad.html"))  # noqa: S704 - the template has escaped what it shows


def page(screen: str, status: int, **context: Any) -> Response:
    """Render a screen's template."""
    return make_response(render_template(f"{screen}.html", screen=screen, pad=pad, **context), status)


def tool_context(tool: Tool, typed: dict[str, str]) -> dict[str, Any]:
    """Return what a tool's template needs beside its view: the form, filled with what was typed."""
    form = tool_form(tool)(formdata=None, data=typed)
    return {"tool": tool, "tool_form": form, "declared": {field.name: field for field in tool.fields}}


def fresh(kind: str, address: str, **data: str) -> KeepingForm:
    """Make an empty keeping form with the id of the entry that it will make."""
    form = keeping_form(kind)(formdata=None, data={"entry_id": uuid7(), **data})
    form.address = address
    return form


def posted(kind: str, address: str) -> KeepingForm:
    """Make a keeping form of what was sent."""
    form = keeping_form(kind)()
    form.address = address
    return form


def put_errors(form: Any, errors: dict[str, str]) -> None:
    """Put each of the core's sentences at its field; what has no field stands at the form's head."""
    for name, sentence in errors.items():
        if name in form:
            form[name].errors = [sentence]
        else:
            form.trouble = sentence


def bring(trouble: str = "") -> BringForm:
    """Make the form that brings in a project file."""
    form = BringForm(formdata=None)
    form.trouble = trouble
    return form
