"""What is made at the start for the phone: its data as a module, and the worker's list."""

import json
from collections.abc import Iterable, Mapping
from fractions import Fraction
from hashlib import sha256
from typing import Any

from webapp.phone.bundle import scope
from webapp.phone.shells import Route
from webapp.phone.stamp import PLACEHOLDER

ENGINE_DIGITS = 12


class MadeError(ValueError):
    """What stands against making the phone's files."""


def engine(core: Mapping[str, str]) -> str:
    """Return the name of the translated core: a digest of it, kept with every sheet that it worked."""
    digest = sha256("\0".join(f"{name}\0{core[name]}" for name in sorted(core)).encode())
    return digest.hexdigest()[:ENGINE_DIGITS]


def made_module(
    core: Mapping[str, str],
    tools: Iterable[str],
    factors: Mapping[str, Fraction],
    parts: Mapping[str, Any],
    routes: Iterable[Route],
) -> str:
    """Return the text of made.js: what the scripts take from the server as data."""
    names = list(tools)
    missing = [name for name in names if name not in core]
    if missing:
        raise MadeError(f"a tool is a file of its name: there is no webapp/core/{missing[0]}.py")
    known = [{"pattern": route.pattern, "screen": route.screen} for route in routes]
    return "\n".join(
        [
            "/** Made at the start by webapp/phone/made.py: what the scripts take from the server as data. */",
            'import { Fraction } from "./fraction.js";',
            f'import {{ {", ".join(map(scope, names))} }} from "./core.js";',
            f"export const STAMP = {_json(PLACEHOLDER)};",
            f"export const ENGINE = {_json(engine(core))};",
            f"export const TOOLS = new Map([{', '.join(f'[{_json(name)}, {scope(name)}.TOOL]' for name in names)}]);",
            f"export const FACTORS = new Map([{', '.join(_factor(*pair) for pair in factors.items())}]);",
            f"export const ROUTES = {_json(known)};",
            f"export const PARTS = {_json(parts)};",
            "",
        ]
    )


def _factor(unit: str, inches: Fraction) -> str:
    return f"[{_json(unit)}, new Fraction({inches.numerator}, {inches.denominator})]"


def worker(script: str, stamp: str, files: Iterable[str], routes: Iterable[Route]) -> str:
    """Return the worker with what it has to keep in front of it."""
    patterns = [[route.pattern, route.shell] for route in routes]
    kept = {"stamp": stamp, "files": sorted(files), "patterns": patterns}
    return f"self.kept = {_json(kept)};\n{script}"


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
