"""The translated core as one file: a page opens with one request for it, not one for each module."""

import re
from collections.abc import Iterable, Mapping
from graphlib import TopologicalSorter

RUN_TIME = ('import * as $ from "../python.js";', 'import { Fraction } from "../fraction.js";')
IMPORTED = re.compile(r'^import \{ (?P<names>.*) \} from "\./(?P<module>\w+)\.js";$', re.MULTILINE)
EXPORTED = re.compile(r"^export (?P<kind>function|class|const|let) (?P<name>[\w$]+)", re.MULTILINE)
RENAMED = re.compile(r"\bexport \{ (?P<names>[^{}]*) \};\s*\Z")  # the last words of a module
LEFT = re.compile(r"^(?:import|export)\b.*$", re.MULTILINE)
USED = re.compile(r'from "\./core/(\w+)\.js"')


class BundleError(ValueError):
    """A module that says what the bundle cannot take over."""


def bundle(core: Mapping[str, str]) -> str:
    """Return one module that exports an object for each module of the core, by `scope(name)`.

    Each module keeps a scope of its own, and its text keeps its lines: the first of them names its file.
    """
    # Sorted: a set of words has another order in each process, and phones would be offered a new version at each start.
    order = TopologicalSorter({name: sorted(imported(core[name])) for name in sorted(core)}).static_order()
    head = 'import * as $ from "./python.js";\nimport { Fraction } from "./fraction.js";\n'
    return head + "".join(wrapped(name, core[name]) for name in order)


def imported(text: str) -> set[str]:
    """Return the names of the modules that a module imports from."""
    return {found["module"] for found in IMPORTED.finditer(text)}


def wrapped(name: str, text: str) -> str:
    """Return a module as an object of all that it exports."""
    body = text
    for line in RUN_TIME:
        body = body.replace(line, "", 1)
    body = IMPORTED.sub(lambda found: f"const {{ {_parted(found['names'])} }} = {scope(found['module'])};", body)
    body = RENAMED.sub("", EXPORTED.sub(r"\g<kind> \g<name>", body))
    if left := LEFT.search(body):
        raise BundleError(f"{name}: {left[0]}: the bundle knows `import {{ … }}` and `export` before a name")
    given = ",".join(_paired(outer, inner) for inner, outer in exported(text))
    return f"export const {scope(name)} = (() => {{ {body}\nreturn {{{given}}}; }})();\n"


def _parted(names: str) -> str:
    return names.replace(" as ", ": ")


def _paired(outer: str, inner: str) -> str:
    return inner if inner == outer else f"{outer}: {inner}"


def exported(text: str) -> list[tuple[str, str]]:
    """Return what a module exports: its name inside, and outside (JavaScript forbids some inside)."""
    plain = [(found["name"], found["name"]) for found in EXPORTED.finditer(text)]
    renamed = [pair.split(" as ") for found in RENAMED.finditer(text) for pair in found["names"].split(", ")]
    return plain + [(inner, outer) for inner, outer in renamed]


def scope(name: str) -> str:
    """Return what a module is called in the bundle: no name of the core has two dollars."""
    return f"$${name}"


def faces(core: Mapping[str, str], scripts: Iterable[str]) -> dict[str, str]:
    """Return the modules that scripts import as files of their own: each gives what the bundle holds."""
    used = {name for script in scripts for name in USED.findall(script)}
    return {name: face(name, core[name]) for name in sorted(used)}


def face(name: str, text: str) -> str:
    """Return one module that gives on what the bundle holds."""
    names = exported(text)
    taken = ",".join(_paired(outer, inner) for inner, outer in names)
    given = ",".join(inner if inner == outer else f"{inner} as {outer}" for inner, outer in names)
    head = f'import {{ {scope(name)} }} from "../core.js";'
    return f"{head}\nconst {{ {taken} }} = {scope(name)};\nexport {{ {given} }};\n"
