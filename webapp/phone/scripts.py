"""The phone's scripts as they are written, read for the bundle: what each takes from others, and what it gives."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

IMPORT = re.compile(r'^import (?:(?P<names>\{[^{}]*\}|\* as [\w$]+) from )?"(?P<path>[./\w-]+)";\n?', re.MULTILINE)
GIVEN_ON = re.compile(r'^export (?P<names>\{[^{}]*\}|\*) from "(?P<path>[./\w-]+)";\n?', re.MULTILINE)
EXPORTED = re.compile(r"^export ((?:async )?(?:function\*?|class|const) ([\w$]+))", re.MULTILINE)
LEFT = re.compile(r"^(?:import\b(?!\()|export\b).*$", re.MULTILINE)
ALL = "*"  # for a name: all that a script gives

Need = tuple[str, str]  # a script or a module of the core (`core/sums`), and a name that it gives


class ScriptError(ValueError):
    """A script that says what the bundle cannot take over."""


@dataclass(frozen=True)
class Script:
    """A script: what it takes, by the names used in it, what it gives, and its text as it stands in a function."""

    name: str
    takes: Mapping[str, Need]
    loads: tuple[str, ...]  # scripts that it takes nothing from, imported for what they do
    gives: tuple[str, ...]
    gives_on: tuple[str, ...]  # scripts all of whose names it gives as well
    text: str

    def needs(self) -> list[Need]:
        """Return all that it stands on."""
        return [*self.takes.values(), *((name, ALL) for name in (*self.loads, *self.gives_on))]


def read(name: str, text: str) -> Script:
    """Read a script. Raise ScriptError at a way of importing or exporting that the bundle does not know."""
    takes, loads = _imports(name, text)
    on = [(beside(name, found["path"]), found["names"]) for found in GIVEN_ON.finditer(text)]
    passed = {alias: (source, own) for source, names in on if names != ALL for own, alias in _pairs(names)}
    body = IMPORT.sub("", GIVEN_ON.sub("", text))
    gives = (*passed, *(found[2] for found in EXPORTED.finditer(body)))
    plain = EXPORTED.sub(r"\1", body)
    if left := LEFT.search(plain):
        raise ScriptError(f"{name}.js: {left[0]}: a script imports and exports names, or exports what it defines")
    return Script(name, takes | passed, loads, gives, tuple(source for source, names in on if names == ALL), plain)


def _imports(name: str, text: str) -> tuple[dict[str, Need], tuple[str, ...]]:
    takes: dict[str, Need] = {}
    loads = []
    for found in IMPORT.finditer(text):
        source, names = beside(name, found["path"]), found["names"] or ""
        if names.startswith(ALL):
            takes[names.removeprefix("* as ")] = (source, ALL)
        elif names:
            takes |= {alias: (source, own) for own, alias in _pairs(names)}
        else:
            loads.append(source)
    return takes, tuple(loads)


def _pairs(names: str) -> Iterator[tuple[str, str]]:
    """Give each name in braces with what it is called after `as`."""
    for name in filter(None, (part.strip() for part in names[1:-1].split(","))):
        own, _, alias = name.partition(" as ")
        yield own, alias or own


def beside(name: str, path: str) -> str:
    """Return what a path leads to from a script: `./core/view.js` from `screen` is `core/view`."""
    folder = name.split("/")[:-1]
    for part in path.removesuffix(".js").split("/"):
        folder = folder[:-1] if part == ".." else folder if part == "." else [*folder, part]
    return "/".join(folder)
