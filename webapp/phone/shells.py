"""Marks a page as kept by the phone: one address for its live answer, one for its shell without data."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from flask import Blueprint, Flask, Response
from werkzeug.routing import Rule

View = TypeVar("View", bound=Callable[..., Any])
Shell = Callable[..., Response]

REGISTER = "shoulderline-kept"
BY_TOOL = "tool"
# A rule's variable as werkzeug writes it: <name> or <converter:name>.
VARIABLE = re.compile(r"<(?:(\w+):)?(\w+)>")
# Werkzeug's own default takes any segment; an address with a dot in it (".json") is never a kept page.
SEGMENT = "[^/.]+"


@dataclass(frozen=True)
class Kept:
    """One kept page: its endpoint, its screen, and the function that renders it without data."""

    endpoint: str
    screen: str
    shell: Shell
    by_tool: bool

    def shells(self, tools: Iterable[str]) -> dict[str, dict[str, str]]:
        """Return the address of each shell with the arguments of its rule that are fixed in it."""
        if self.by_tool:
            return {f"/shell/{self.screen}/{name}": {BY_TOOL: name} for name in tools}
        return {f"/shell/{self.screen}": {}}


def kept(blueprint: Blueprint, rule: str, screen: str, shell: Shell) -> Callable[[View], View]:
    """Mark a view function as kept: it answers GET at `rule` with live data.

    `shell` renders the same template with no data, no token and nothing of the user's; it is called with
    `tool` where the rule has one (there is then a shell for each tool), else with nothing.
    """
    by_tool = any(name == BY_TOOL for _, name in VARIABLE.findall(rule))

    def mark(view: View) -> View:
        blueprint.add_url_rule(rule, view.__name__, view, methods=["GET"])
        page = Kept(f"{blueprint.name}.{view.__name__}", screen, shell, by_tool)
        blueprint.record(lambda setup: setup.app.extensions.setdefault(REGISTER, []).append(page))
        return view

    return mark


def kept_pages(app: Flask) -> list[Kept]:
    """Return the kept pages of an application."""
    pages: list[Kept] = app.extensions.get(REGISTER, [])
    return pages


def shells(app: Flask, tools: Iterable[str]) -> dict[str, bytes]:
    """Render every shell, by its address."""
    names = list(tools)
    made = {}
    for page in kept_pages(app):
        for address, arguments in page.shells(names).items():
            with app.test_request_context(address):
                made[address] = page.shell(**arguments).get_data()
    return made


@dataclass(frozen=True)
class Route:
    """A pattern of addresses, as the text of a regular expression for a script, and what answers them."""

    pattern: str
    shell: str
    screen: str


def routes(app: Flask, tools: Iterable[str]) -> list[Route]:
    """Return the patterns of all kept pages, made from the application's URL map."""
    names = list(tools)
    return [
        Route(_pattern(app, rule, arguments), shell, page.screen)
        for page in kept_pages(app)
        for rule in app.url_map.iter_rules(page.endpoint)
        for shell, arguments in page.shells(names).items()
    ]


def _pattern(app: Flask, rule: Rule, arguments: Mapping[str, str]) -> str:
    """Return a rule as a regular expression with JavaScript's named groups."""
    text, at = "", 0
    for variable in VARIABLE.finditer(rule.rule):
        converter, name = variable.groups()
        text += re.escape(rule.rule[at : variable.start()])
        text += re.escape(arguments[name]) if name in arguments else _group(app, converter, name)
        at = variable.end()
    return f"^{text}{re.escape(rule.rule[at:])}$"


def _group(app: Flask, converter: str | None, name: str) -> str:
    segment = app.url_map.converters[converter].regex if converter else SEGMENT
    return f"(?<{name}>{segment})"
