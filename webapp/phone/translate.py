"""Translates the core, written in a subset of Python, to ES modules; refuses whatever is outside."""

import ast
from pathlib import Path

from webapp.phone.declared import Declared, read_module
from webapp.phone.refused import Refused, refused
from webapp.phone.translate_functions import is_docstring
from webapp.phone.translate_modules import Modules

__all__ = ["Refused", "read_folder", "translate"]


def translate(folder: Path) -> dict[str, str]:
    """Give the JavaScript of each module in a folder, by the module's name; raise Refused at what is outside."""
    modules = read_folder(folder)
    return {name: Modules(module, modules).translate() for name, module in modules.items()}


def read_folder(folder: Path) -> dict[str, Declared]:
    """Read what the modules of a folder declare, by their names."""
    paths = [path for path in sorted(folder.glob("*.py")) if path.stem != "__init__"]
    check_package(folder / "__init__.py")
    return {path.stem: read_module(path) for path in paths}


def check_package(path: Path) -> None:
    """Refuse a package file that does anything: it has no module on the phone."""
    if not path.exists():
        return
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if not is_docstring(node):
            raise refused(path.name, node, "a statement in the package's own file", "it in a module")
