"""The tools: each one's page and its JSON, made from its declaration."""

from typing import Any

from flask import Blueprint, Response, abort, redirect, request

from webapp.core import view
from webapp.core import view as views
from webapp.core.address import project_address
from webapp.core.picks import INTO
from webapp.core.picks_form import settled_address
from webapp.core.sheet import to_json
from webapp.core.tool import Tool
from webapp.core.view_help import help_view
from webapp.core.view_tool import spoken_in
from webapp.core.working import unknown_fields, work
from webapp.pages import gather
from webapp.pages.forms import SheetForm
from webapp.pages.screens import fresh, live, put_errors, shell, tool_context
from webapp.phone.shells import kept
from webapp.tools import TOOLS
from webapp.units import FACTORS

pages = Blueprint("work", __name__)
FRAME = ("project", "replaces", "called")


def declared(name: str) -> Tool:
    """Return a tool, or answer 404."""
    return TOOLS.get(name) or abort(404, "There is no such tool here.")


def tool_shell(tool: str) -> Response:
    """Render a tool's page with nothing typed."""
    return shell("tool", declared(tool))


@kept(pages, "/work/<tool>", "tool", tool_shell)
def tool(tool: str) -> Response:
    """Show a tool's page, worked where any of its fields stands in the address; what was picked is taken first."""
    found, query = declared(tool), request.args.to_dict()
    if INTO in query:
        return redirect(settled_address(gather.tool(found, query)), 303)  # type: ignore[return-value]
    return tool_page(found, query)


def tool_page(found: Tool, query: dict[str, str], trouble: str = "") -> Response:
    """Show a tool with what was typed; `trouble` is what stood against keeping it."""
    g = gather.tool(found, query)
    context = tool_context(found, query)
    view = views.tool(g)
    put_errors(context["tool_form"], view["errors"])
    status = 400 if view["wrong"] or trouble else 200
    return live("tool", view, {"sheet": _keeping(found, g, trouble)}, status, **context)


def _keeping(found: Tool, g: dict[str, Any], trouble: str) -> SheetForm:
    """Make the form that keeps this sheet in the project that the address names."""
    project, typed = g["project"], g["typed"]
    address = f"{project_address(project['id'])}/sheets" if project else ""
    form = fresh("sheet", address, tool=found.name, **{name: typed.get(name, "") for name in ("replaces", "called")})
    form.open = project is not None
    form.trouble = trouble
    spoken = spoken_in(g, {name: text for name, text in typed.items() if name not in FRAME})
    form.inputs = tuple(spoken.items())
    return form


def source_shell(tool: str) -> Response:
    """Render the screen on which a number is picked with nothing in it."""
    return shell("source", declared(tool))


@kept(pages, "/from/<tool>", "source", source_shell)
def source_page(tool: str) -> Response:
    """Show what a field of a tool can take its value from."""
    found = declared(tool)
    return live("source", view.source(gather.source(found, request.args.to_dict())), {}, tool=found)


def help_shell(tool: str) -> Response:
    """Render a tool's help with nothing in it."""
    return shell("help", declared(tool))


@kept(pages, "/help/<tool>", "help", help_shell)
def help_page(tool: str) -> Response:
    """Show what a tool is for, field by field, with a worked example."""
    found = declared(tool)
    g = gather.help_of(found, request.args.get("project", ""))
    return live("help", help_view(g["tool"], g["project"]), {}, tool=found)


@pages.get("/work/<tool>.json")
def tool_json(tool: str) -> Response:
    """Answer with the sheet, or 400 with the errors by field."""
    return json_of(declared(tool), request.args.to_dict())


def json_of(found: Tool, typed: dict[str, str]) -> Response:
    """Work what was typed into the sheet's JSON."""
    unknown = unknown_fields(found, typed)
    outcome = {"errors": unknown} if unknown else work(found, typed, FACTORS)
    body = to_json(outcome.get("sheet", outcome))
    return Response(body, 200 if "sheet" in outcome else 400, mimetype="application/json")
