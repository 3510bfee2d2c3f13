"""Marks a page as kept by the phone: one template, a live answer with data, and a shell without."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import wraps
from typing import Any

from flask import Blueprint, Flask, Response, make_response, render_template
from flask.typing import ResponseReturnValue
from werkzeug.routing import Rule

Context = dict[str, Any]
Frame = Callable[..., Context]
View = Callable[..., Context | tuple[Context, int] | Response]

REGISTER = "shoulderline-kept"
BY_TOOL = "tool"
# A rule's variable as werkzeug writes it: <name> or <converter:name>.
VARIABLE = re.compile(r"<(?:(\w+):)?(\w+)>")
# Werkzeug's own default takes any segment; an address with a dot in it (".json") is never a kept page.
SEGMENT = "[^/.]+"


@dataclass(frozen=True)
class Kept:
    """One kept page: its endpoint, its screen, and what its frame shows that depends on no data."""

    endpoint: str
    screen: str
    frame: Frame
    by_tool: bool

    def shells(self, tools: Iterable[str]) -> dict[str, dict[str, str]]:
        """Return the address of each shell with the arguments of its rule that are fixed in it."""
        if self.by_tool:
            return {f"/shell/{self.screen}/{name}": {BY_TOOL: name} for name in tools}
        return {f"/shell/{self.screen}": {}}

    def render(self, arguments: Mapping[str, str]) -> str:
        """Render a shell: no data, no token, nothing of the user's."""
        return render_template(f"{self.screen}.html", screen=self.screen, live=False, **self.frame(**arguments))


def kept(blueprint: Blueprint, rule: str, screen: str, frame: Frame = dict) -> Callable[[View], View]:
    """Mark a view function as kept.

    `frame` gives what the template needs without any data (forms, a tool's declaration); it is called with
    `tool` where the rule has one. The view function gives what depends on data (`view`, filled forms), or
    that and a status; or a whole Response, which is passed on. Both are names in `templates/<screen>.html`,
    beside `screen` and `live`.
    """
    by_tool = any(name == BY_TOOL for _, name in VARIABLE.findall(rule))

    def mark(view: View) -> View:
        @wraps(view)
        def live(**arguments: str) -> ResponseReturnValue:
            given = view(**arguments)
            if isinstance(given, Response):
                return given
            own = {BY_TOOL: arguments[BY_TOOL]} if by_tool else {}
            return _live_page(screen, frame(**own), given)

        blueprint.add_url_rule(rule, view.__name__, live, methods=["GET"])
        _remember(blueprint, Kept(f"{blueprint.name}.{view.__name__}", screen, frame, by_tool))
        return view

    return mark


def _live_page(screen: str, frame: Context, given: Context | tuple[Context, int]) -> Response:
    data, status = given if isinstance(given, tuple) else (given, 200)
    page = render_template(f"{screen}.html", **{"screen": screen, "live": True, **frame, **data})
    answer = make_response(page, status)
    answer.headers["Cache-Control"] = "no-store"
    return answer


def _remember(blueprint: Blueprint, page: Kept) -> None:
    blueprint.record(lambda setup: setup.app.extensions.setdefault(REGISTER, []).append(page))


def kept_pages(app: Flask) -> list[Kept]:
    """Return the kept pages of an application."""
    pages: list[Kept] = app.extensions.get(REGISTER, [])
    return pages


def shells(app: Flask, tools: Iterable[str]) -> dict[str, str]:
    """Render every shell, by its address."""
    names = list(tools)
    made = {}
    for page in kept_pages(app):
        for address, arguments in page.shells(names).items():
            with app.test_request_context(address):
                made[address] = page.render(arguments)
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
