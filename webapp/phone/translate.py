"""Translates the core, written in a subset of Python, to pieces of JavaScript; refuses whatever is outside."""

import ast
from graphlib import TopologicalSorter
from pathlib import Path

from webapp.phone.declared import read_module
from webapp.phone.pieces import Key, Piece, called
from webapp.phone.refused import Refused, refused
from webapp.phone.translate_functions import is_docstring
from webapp.phone.translate_modules import Modules

__all__ = ["Refused", "translate"]


def translate(folder: Path) -> dict[Key, Piece]:
    """Give the pieces of all modules in a folder, what others stand on first; raise Refused at what is outside."""
    paths = [path for path in sorted(folder.glob("*.py")) if path.stem != "__init__"]
    modules = {path.stem: read_module(path) for path in paths}
    check_package(folder / "__init__.py")
    names = called(modules.values())
    made = {name: list(Modules(module, modules, names).pieces()) for name, module in modules.items()}
    behind = {name: sorted({need for piece in own for need, _ in piece.needs} - {name}) for name, own in made.items()}
    return {piece.key: piece for name in TopologicalSorter(behind).static_order() for piece in made[name]}


def check_package(path: Path) -> None:
    """Refuse a package file that does anything: it has no module on the phone."""
    if not path.exists():
        return
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if not is_docstring(node):
            raise refused(path.name, node, "a statement in the package's own file", "it in a module")
