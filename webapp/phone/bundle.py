"""All scripts of the phone in a few files, its layers: a page opens with what its screen needs and no more.

The first layer stands on the script that every page names. A script that is imported as the page goes, `import(…)`,
begins a layer of its own, with all that it needs and no other layer: what several need stands in the one that the
others stand on, else in the first. A script stands in it whole, of the core only those pieces that are needed.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from graphlib import TopologicalSorter

from webapp.phone import strip
from webapp.phone.pieces import Piece
from webapp.phone.scripts import ALL, Need, Script, ScriptError, beside, read

LATER = re.compile(r'\bimport\("(\./[\w-]+\.js)"\)')
CORE = "core/"
RUN_TIME = {"$": ("python", ALL), "Fraction": ("fraction", "Fraction")}  # what every piece of the core may use


@dataclass(frozen=True)
class Bundle:
    """Scripts by their names and pieces of the core by theirs, with what each stands on, and the layers."""

    scripts: Mapping[str, Script]
    core: Mapping[Need, Piece]
    first: str
    others: tuple[str, ...]

    @cached_property
    def reached(self) -> dict[str, set[Need]]:
        """All that each layer's script stands on, itself among it."""
        return {root: self.reach(root) for root in (self.first, *self.others)}

    def reach(self, root: str) -> set[Need]:
        """Return the scripts (by a blank name) and pieces that a script stands on."""
        seen: set[Need] = set()
        todo = [(root, ALL)]
        while todo:
            unit = self.unit(todo.pop())
            if unit not in seen:
                seen.add(unit)
                todo += self.needs(unit)
        return seen

    def unit(self, need: Need) -> Need:
        """Return what meets a need: a script, whole, or a piece. Raise ScriptError where nothing does."""
        name, wanted = need
        if name.startswith(CORE) and need in self.core:
            return need
        script = self.scripts.get(name)
        if script is None or not (wanted == ALL or script.gives_on or wanted in script.gives or wanted == ""):
            raise ScriptError(f"there is no {wanted or 'script'} in {name}.js")
        return name, ""

    def needs(self, unit: Need) -> list[Need]:
        """Return what a script or a piece stands on."""
        if unit in self.core:
            return [*RUN_TIME.values(), *((CORE + module, name) for module, name in self.core[unit].needs)]
        return self.scripts[unit[0]].needs()

    @cached_property
    def layers(self) -> dict[Need, str]:
        """The layer of everything that is needed."""
        units = {unit for reached in self.reached.values() for unit in reached}
        return {unit: self.layer_of(unit) for unit in units}

    def layer_of(self, unit: Need) -> str:
        """Return the layer that all others which need something stand on."""
        wanting = [root for root, reached in self.reached.items() if unit in reached]
        held = [root for root in wanting if all(root == other or self.stands_on(other, root) for other in wanting)]
        return held[0] if held else self.first

    @cached_property
    def asked(self) -> set[Need]:
        """Pieces of the core that a script takes, or a piece in another layer."""
        return {
            need
            for unit, layer in self.layers.items()
            for need in map(self.unit, self.needs(unit))
            if need in self.core and (unit not in self.core or self.layers[need] != layer)
        }

    def stands_on(self, layer: str, other: str) -> bool:
        """Tell whether a layer is never there without another one."""
        return other == self.first or (other, "") in self.reached[layer]


def bundle(scripts: Mapping[str, str], core: Mapping[tuple[str, str], Piece], first: str, *others: str) -> Bundle:
    """Read scripts for the bundle, and put the core beside them; `others` are the scripts that begin a layer."""
    own = {(CORE + module, name): piece for (module, name), piece in core.items()}
    return Bundle({name: read(name, text) for name, text in scripts.items()}, own, first, others)


def later(scripts: Mapping[str, str]) -> list[str]:
    """Return the scripts that others import as the page goes."""
    return sorted({beside(name, path) for name, text in scripts.items() for path in LATER.findall(strip.script(text))})


def layer(whole: Bundle, root: str) -> str:
    """Return the text of a layer."""
    return _Layer(whole, root).text()


def face(whole: Bundle, name: str) -> str:
    """Return a script as a file of its own, which gives what the bundle holds; raise ScriptError at an idle one."""
    if (name, "") not in whole.layers:
        raise ScriptError(f"{name}.js is imported by no other script")
    own, given = scope(name), ", ".join(whole.scripts[name].gives)
    return f'import {{ {own} }} from "./{whole.layers[name, ""]}.js";\nexport const {{ {given} }} = {own};\n'


def scope(name: str, layer: str = "") -> str:
    """Return what the object of a script, or of a layer's core, is called: no other name has two dollars."""
    return f"$${name}{layer and '$'}{layer}".replace("-", "_")


class _Layer:
    """One layer being written: an object for each script and one for its part of the core, each with a scope."""

    def __init__(self, whole: Bundle, root: str) -> None:
        self.whole = whole
        self.root = root
        self.scripts = sorted(name for (name, own), layer in whole.layers.items() if layer == root and not own)
        self.core = [key for key in whole.core if whole.layers.get(key) == root]

    def text(self) -> str:
        objects = [self.core_object() if name == CORE else self.script_object(name) for name in self.order()]
        return "\n".join([*self.heads(), *objects, *self.ends()]) + "\n"

    def order(self) -> list[str]:
        """Return the scripts, and the core as if it were one, what others stand on first."""
        behind = {name: self.behind(self.whole.needs((name, ""))) for name in self.scripts}
        if self.core:
            behind[CORE] = self.behind(RUN_TIME.values())
        return [*TopologicalSorter(behind).static_order()]

    def behind(self, needs: Iterable[Need]) -> list[str]:
        """Return what stands in this layer of what is needed."""
        units = [self.whole.unit(need) for need in needs]
        return sorted({name if own == "" else CORE for name, own in units if self.whole.layers[name, own] == self.root})

    def source(self, need: Need) -> str:
        """Return the object that meets a need."""
        unit = self.whole.unit(need)
        return scope("core", self.whole.layers[unit]) if unit[1] else scope(unit[0])

    def outside(self, units: Iterable[Need]) -> list[Need]:
        """Return what units need of other layers."""
        needs = {need for unit in units for need in self.whole.needs(unit)}
        return sorted(need for need in needs if self.whole.layers[self.whole.unit(need)] != self.root)

    def heads(self) -> list[str]:
        """Return the lines that take objects from other layers, or only see to it that these are there."""
        behind = [root for root in self.whole.others if root != self.root and self.whole.stands_on(self.root, root)]
        taken: dict[str, set[str]] = {root: set() for root in behind}
        for need in self.outside([*((name, "") for name in self.scripts), *self.core]):
            taken.setdefault(self.whole.layers[self.whole.unit(need)], set()).add(self.source(need))
        rows = [(layer, ", ".join(sorted(names))) for layer, names in sorted(taken.items())]
        return [f'import {{ {names} }} from "./{layer}.js";' for layer, names in rows]

    def script_object(self, name: str) -> str:
        """Return a script as an object of what it gives."""
        script = self.whole.scripts[name]
        given = [*script.gives, *(f"...{scope(source)}" for source in script.gives_on)]
        return written(scope(name), [*self.taken(script.takes), script.text], given)

    def core_object(self) -> str:
        """Return this layer's part of the core as an object of what is asked for from outside it."""
        pieces = [self.whole.core[key] for key in self.core]
        apart = [need for need in self.outside(self.core) if need in self.whole.core]
        takes = RUN_TIME | {self.whole.core[need].called: need for need in apart}
        given = [piece.called for key, piece in zip(self.core, pieces, strict=True) if key in self.whole.asked]
        return written(scope("core", self.root), [*self.taken(takes), *(piece.text for piece in pieces)], given)

    def taken(self, takes: Mapping[str, Need]) -> list[str]:
        """Return the lines that take what is needed from its objects, by the names that it goes by here."""
        wholes = [f"const {inner} = {self.source(need)};" for inner, need in takes.items() if need[1] == ALL]
        rows: dict[str, list[str]] = {}
        for inner, need in takes.items():
            if need[1] != ALL:
                outer = self.whole.core[need].called if need in self.whole.core else need[1]
                rows.setdefault(self.source(need), []).append(inner if inner == outer else f"{outer}: {inner}")
        return wholes + [f"const {{ {', '.join(names)} }} = {source};" for source, names in rows.items()]

    def ends(self) -> list[str]:
        """Return what the layer gives: what its own script gives, and its objects to other layers."""
        own = ", ".join(self.whole.scripts[self.root].gives)
        objects = [*map(scope, self.scripts), *([scope("core", self.root)] if self.core else [])]
        rows = [f"export const {{ {own} }} = {scope(self.root)};"] if own else []
        return [*rows, f"export {{ {', '.join(objects)} }};"]


def written(called: str, rows: Iterable[str], given: Iterable[str]) -> str:
    """Return an object that a function makes, of the names that are given."""
    body = "\n".join(row.strip("\n") for row in rows)
    return f"const {called} = (() => {{\n{body}\nreturn {{ {', '.join(given)} }};\n}})();"
