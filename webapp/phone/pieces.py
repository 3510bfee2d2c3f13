"""The core in pieces, as the phone is given it: each function, class or constant by itself, in one scope with all.

So a layer of the bundle takes what it needs and nothing else, and no name is passed from module to module. A name at
the top of a module is kept where no other module has it, and says its module else; variables get the shortest names.
"""

import ast
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from graphlib import TopologicalSorter
from itertools import count, product
from pathlib import Path
from string import ascii_lowercase

from webapp.phone.declared import Declared, is_type, names_of
from webapp.phone.lines import Lines
from webapp.phone.subset import PACKAGE, RESERVED
from webapp.phone.translate import read_folder
from webapp.phone.translate_functions import is_docstring
from webapp.phone.translate_modules import Modules
from webapp.phone.translate_names import Known

Key = tuple[str, str]  # a module of the core, and a name at its top


@dataclass(frozen=True)
class Piece:
    """What one statement at the top of a module became: its name among all pieces, its text, what it needs."""

    key: Key
    called: str
    text: str
    needs: frozenset[Key]


def pieces(folder: Path) -> dict[Key, Piece]:
    """Translate a folder to pieces, what others stand on first; raise Refused at what is outside the subset."""
    modules = read_folder(folder)
    called = names(modules.values())
    made = {name: list(_Pieces(module, modules, called).pieces()) for name, module in modules.items()}
    behind = {name: sorted({need for piece in own for need, _ in piece.needs} - {name}) for name, own in made.items()}
    return {piece.key: piece for name in TopologicalSorter(behind).static_order() for piece in made[name]}


def names(modules: Iterable[Declared]) -> dict[Key, str]:
    """Return what each name at the top of a module is called among all of them."""
    keys = [(module.name, name) for module in modules for name in sorted(values(module))]
    often = Counter(name for _, name in keys)
    return {
        (module, name): name if often[name] == 1 and name not in RESERVED else f"{name}${module}"
        for module, name in keys
    }


def values(module: Declared) -> set[str]:
    """Return the names at the top of a module that are something at run time."""
    return {*module.functions, *module.classes, *module.constants}


class _Pieces(Modules):
    """Translates one module, statement by statement."""

    def __init__(self, module: Declared, modules: dict[str, Declared], called: Mapping[Key, str]) -> None:
        super().__init__(module, modules)
        self.flat = called
        self.spoken_for = {*called.values(), *RESERVED}
        self.begin()

    def begin(self) -> None:
        """Begin a piece."""
        self.out = Lines()
        self.needs: set[Key] = set()
        self.shorter: dict[str, str] = {}
        self.unused = (name for name in short_names() if name not in self.spoken_for)

    def pieces(self) -> Iterator[Piece]:
        """Give the pieces in the order of the source."""
        for node in self.module.tree.body:
            self.begin()
            self.top(node)
            if not (isinstance(node, ast.ImportFrom) or is_type(node) or is_docstring(node)):
                yield self.made((self.module.name, names_of(node)[0]))

    def made(self, key: Key) -> Piece:
        """Return what was written as a piece."""
        text = "\n".join(line for line in self.out.text().splitlines() if line.strip())
        return Piece(key, self.flat[key], text, frozenset(self.needs - {key}))

    def known(self, name: str) -> Known | None:
        """Give what a name stands for, and note that this piece needs it."""
        found = super().known(name)
        key = self.defined(name)
        if key in self.flat:
            self.needs.add(key)
        return found

    def defined(self, name: str) -> Key:
        """Return the module that defines a name, and what it is called there."""
        source, original = self.module.imports.get(name, (self.module.name, name))
        return source.removeprefix(f"{PACKAGE}."), original

    def local(self, name: str) -> str:
        """Give a variable a short name, the same wherever it stands in the piece."""
        if name not in self.shorter:
            self.shorter[name] = next(self.unused)
        return self.shorter[name]

    def own_name(self, name: str) -> str:
        """Give what a name of this module is called among all pieces; a type is called nothing."""
        return self.flat.get((self.module.name, name), name)

    def imported_name(self, module: Declared, name: str, alias: str) -> str:
        """Give what a name of another module is called among all pieces."""
        return self.flat.get((module.name, name), name)

    def export(self, name: str) -> str:
        """Export nothing."""
        return ""

    def fresh(self) -> str:
        """Give a name that no Python name can be; at the top no other module's either."""
        return super().fresh() if self.depth else f"{super().fresh()}${self.module.name}"


def short_names() -> Iterator[str]:
    """Give names without end, the shortest first."""
    for length in count(1):
        yield from map("".join, product(ascii_lowercase, repeat=length))
