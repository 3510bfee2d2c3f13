"""What is made at the start for the phone: its data as modules, a layer's script for each tool, the worker's list."""

import json
from collections.abc import Iterable, Mapping
from fractions import Fraction
from hashlib import sha256
from typing import Any

from webapp.core.tool import Tool
from webapp.phone.pieces import Key, Piece
from webapp.phone.shells import Route
from webapp.phone.stamp import PLACEHOLDER

ENGINE_DIGITS = 12
# What a page draws before it has more than the first layer: the rest of templates/parts.html comes with more.js.
FIRST_PARTS = ("home", "tool", "tool_answer", "diagnostics", "missing", "refused", "standing_here")


class MadeError(ValueError):
    """What stands against making the phone's files."""


def engine(core: Mapping[Key, Piece]) -> str:
    """Return the name of the translated core: a digest of it, kept with every sheet that it worked."""
    digest = sha256("\0".join(f"{module}\0{name}\0{core[module, name].text}" for module, name in sorted(core)).encode())
    return digest.hexdigest()[:ENGINE_DIGITS]


def made_modules(
    core: Mapping[Key, Piece],
    tools: Mapping[str, Tool],
    factors: Mapping[str, Fraction],
    parts: Mapping[str, Any],
    routes: Iterable[Route],
) -> dict[str, str]:
    """Return what the scripts take from the server as data, by their names: made, made_more, one for each tool."""
    first = needed(parts, FIRST_PARTS)
    now, later = ({name: parts[name] for name in parts if (name in first) is wanted} for wanted in (True, False))
    known = [{"pattern": route.pattern, "screen": route.screen} for route in routes]
    titles = [{"name": tool.name, "title": tool.title, "about": tool.about} for tool in tools.values()]
    made = [
        'import { Fraction } from "./fraction.js";',
        f"export const STAMP = {_json(PLACEHOLDER)};",
        f"export const ENGINE = {_json(engine(core))};",
        f"export const TITLES = {_json(titles)};",
        f"export const FACTORS = new Map([{', '.join(_factor(*pair) for pair in factors.items())}]);",
        f"export const ROUTES = {_json(known)};",
        f"export const PARTS = {_json(now)};",
    ]
    return {
        "made": "\n".join([*made, ""]),
        "made_more": f"export const MORE = {_json(later)};\n",
        **{tool_script(name): f'export {{ TOOL }} from "./core/{_file_of(name, core)}.js";\n' for name in tools},
    }


def tool_script(name: str) -> str:
    """Return the name of the script that gives a tool; static/tools.js imports it."""
    return f"tool-{name}"


def _file_of(name: str, core: Mapping[Key, Piece]) -> str:
    if (name, "TOOL") not in core:
        raise MadeError(f"a tool is a file of its name: there is no TOOL in webapp/core/{name}.py")
    return name


def needed(parts: Mapping[str, Any], names: Iterable[str]) -> set[str]:
    """Return parts by name with all that they call."""
    found: set[str] = set()
    todo = list(names)
    while todo:
        name = todo.pop()
        if name not in found:
            found.add(name)
            todo += called(parts[name]["body"])
    return found


def called(tree: list[Any]) -> list[str]:
    """Return the parts that a tree calls."""
    nodes = [node for node in tree if isinstance(node, list)]
    own = [node[1] for node in nodes if node[0] == "call"]
    inner = [body for node in nodes if node[0] in ("if", "for") for body in node[2:] if isinstance(body, list)]
    return own + [name for body in inner for name in called(body)]


def _factor(unit: str, inches: Fraction) -> str:
    return f"[{_json(unit)}, new Fraction({inches.numerator}, {inches.denominator})]"


def worker(script: str, stamp: str, files: Iterable[str], routes: Iterable[Route]) -> str:
    """Return the worker with what it has to keep in front of it."""
    patterns = [[route.pattern, route.shell] for route in routes]
    kept = {"stamp": stamp, "files": sorted(files), "patterns": patterns}
    return f"self.kept = {_json(kept)};\n{script}"


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
