"""Kept sheets, from a tool's own fields: what was typed is kept, never the answer."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_facts import tips
from webapp.core.entries_text import NAME, line_error, tidy
from webapp.core.links import Link, holding, link_of, read_links, written_link
from webapp.core.rings import ring_errors
from webapp.core.tool import Tool
from webapp.core.working import work

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]

ROOM = 30000  # characters of a body in all


def draft_sheet(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make a kept sheet; `replaces` names the sheets it was changed from, parted by spaces, `links` its sources."""
    name, called = tidy(typed, "tool"), tidy(typed, "called")
    if name not in tools:
        return {"errors": {"tool": no_tool(name)}}
    outcome = work(tools[name], spoken(summary, typed), factors)
    errors = dict(outcome.get("errors", {}))
    wrong = line_error(called, NAME)
    if wrong:
        errors["called"] = wrong
    if errors:
        return {"errors": errors}
    inputs, replaces = outcome["sheet"]["inputs"], _replaced(summary, tidy(typed, "replaces"))
    links = holding(tools[name], inputs, read_links(typed.get("links", "")))
    errors = {**_room_errors(inputs), **ring_errors(summary, links, replaces)}
    if errors:
        return {"errors": errors}
    return {"body": _body(outcome["sheet"], called or tools[name].title, links), "replaces": replaces}


def spoken(summary: Any, typed: dict[str, str]) -> dict[str, str]:
    """Return what was typed, with the project's unit and graduation where no other was named."""
    if summary is None or tidy(typed, "unit") not in ["", summary["unit"]]:
        return typed
    graduation = tidy(typed, "graduation") or summary["graduation"]
    return {**typed, "unit": summary["unit"], "graduation": graduation}


def no_tool(name: str) -> str:
    """Say that a tool is not here."""
    return f"There is no tool called {name} here." if name else "Say which tool this is a sheet of."


def _room_errors(inputs: dict[str, str]) -> dict[str, str]:
    """Return an error at the longest field where all of them are too much for one entry."""
    length = sum(len(text) for text in inputs.values())
    if length <= ROOM:
        return {}
    longest = max(inputs, key=lambda name: len(inputs[name]))
    return {longest: f"There are {length} characters on this sheet; it has room for {ROOM}."}


def _body(sheet: dict[str, Any], called: str, links: list[Link]) -> dict[str, Any]:
    return {
        "tool": sheet["tool"],
        "called": called,
        "inputs": sheet["inputs"],
        "links": [written_link(link) for link in links],
        "unit": sheet["unit"],
        "graduation": sheet["graduation"],
    }


def _replaced(summary: Any, names: str) -> list[str]:
    """Return what a changed sheet replaces; a sheet that was changed meanwhile becomes its rival."""
    wanted = [name for name in names.split(" ") if name != ""]
    things = summary["sheets"] if summary is not None else []
    heads = [head for thing in things for head in thing["heads"] if head["entry"] in wanted]
    past = [item for thing in things for item in thing["past"] if item["entry"] in wanted]
    return tips(heads + [{"tips": [item["entry"]]} for item in past])


def sheet_of(body: dict[str, Any], tools: Tools, factors: Factors) -> Outcome:
    """Work a kept sheet's body: {"sheet"}, or {"why"} with the first thing that is wrong."""
    if body["tool"] not in tools:
        return {"why": no_tool(body["tool"])}
    tool = tools[body["tool"]]
    typed = {**body["inputs"], "unit": body["unit"], "graduation": body["graduation"]}
    outcome = work(tool, typed, factors)
    for name, text in outcome.get("errors", {}).items():
        return {"why": f"{name}: {text}"}
    if list(outcome["sheet"]["inputs"].items()) != list(body["inputs"].items()):
        return {"why": f"The inputs are not those of {tool.name}, without white space and in its own order."}
    links = [link_of(link) for link in body["links"]]
    if len(holding(tool, body["inputs"], links)) != len(links):
        return {"why": "A link's value does not stand in its field."}
    return {"sheet": outcome["sheet"]}
