"""What every part of the translator stands on: names and their scopes, and how to refuse."""

import ast
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass

from webapp.phone.declared import Class, Declared, Signature
from webapp.phone.lines import Lines
from webapp.phone.pieces import Key, short_names
from webapp.phone.refused import Refused, refused
from webapp.phone.subset import ATTRIBUTES, ERRORS, METHODS, PACKAGE


@dataclass(frozen=True)
class Known:
    """What a name stands for: a function, class, error, constant, type or Fraction, and how it is called."""

    kind: str
    text: str
    signature: Signature | None = None


class Names:
    """One module on its way: its scopes, the names that it may use, and the text made so far."""

    def __init__(self, module: Declared, modules: dict[str, Declared], called: Mapping[Key, str]) -> None:
        self.module = module
        self.modules = modules
        self.called = called
        self.spoken_for = frozenset(called.values())
        self.scopes: list[set[str]] = []
        self.depth = 0
        self.counter = 0
        self.making = ""  # what an error that is being made calls itself
        self.begin()

    def begin(self) -> None:
        """Begin a piece."""
        self.out = Lines()
        self.needs: set[Key] = set()
        self.shorter: dict[str, str] = {}
        self.unused = short_names(self.spoken_for)

    def refused(self, node: ast.AST, found: str, instead: str) -> Refused:
        """Make the error for a node of this module."""
        return refused(self.module.file, node, found, instead)

    def local(self, name: str) -> str:
        """Give the JavaScript name of a variable or a parameter: a short one, the same all over the piece."""
        if name.startswith("$"):
            return name  # the translator's own
        if name not in self.shorter:
            self.shorter[name] = next(self.unused)
        return self.shorter[name]

    def own_name(self, name: str) -> str:
        """Give the JavaScript name of what this module defines at its top."""
        return self.called.get((self.module.name, name), name)

    def fresh(self) -> str:
        """Give a name that no Python name can be, and at the top no other module has."""
        self.counter += 1
        return f"${self.counter}" if self.depth else f"${self.counter}${self.module.name}"

    @contextmanager
    def scope(self, names: set[str]) -> Iterator[None]:
        """Translate what is inside with these names of its own."""
        self.scopes.append(names)
        yield
        self.scopes.pop()

    def is_local(self, name: str) -> bool:
        """Tell whether a name is a variable or a parameter here."""
        return any(name in scope for scope in self.scopes)

    def is_builtin(self, name: str) -> bool:
        """Tell whether a name is free to mean what Python means by it."""
        return not self.is_local(name) and self.known(name) is None

    def known(self, name: str) -> Known | None:
        """Give what a name at the top of this module stands for, defined here or imported; the piece needs it then."""
        source, original = self.module.imports.get(name, (f"{PACKAGE}.{self.module.name}", name))
        if source == "fractions":
            return Known("fraction", "Fraction")
        if not source.startswith(PACKAGE):
            return Known("type", "")
        key = source.removeprefix(f"{PACKAGE}."), original
        if key in self.called:
            self.needs.add(key)
        found = known_in(self.modules[key[0]], original, self.called.get(key, "")) if key[0] in self.modules else None
        return found or (None if name in self.module.imports else known_error(name))

    def members(self) -> Iterator[Class]:
        """Give all classes of the core."""
        for module in self.modules.values():
            yield from module.classes.values()

    def name(self, node: ast.Name) -> str:
        """Give the JavaScript name of a Python name that is read as a value."""
        if self.is_local(node.id):
            return self.local(node.id)
        known = self.known(node.id)
        if known is None:
            wanted = "a name that is defined or imported, or a builtin of the subset"
            raise self.refused(node, f"the unknown name {node.id}", wanted)
        if known.kind in ("class", "error", "fraction"):
            raise self.refused(node, f"the class {node.id} as a value", "a function or a lambda that makes one")
        if known.kind == "type":
            raise self.refused(node, f"the type {node.id} as a value", "it in annotations only")
        return known.text

    def check_name(self, node: ast.AST, name: str) -> None:
        """Refuse names that one of the two languages reads in its own way."""
        if name.startswith("__") or not name.isascii():
            wanted = "a name in ASCII that does not begin with two underscores"
            raise self.refused(node, f"the name {name}", wanted)

    def check_attribute(self, node: ast.Attribute) -> None:
        """Refuse an attribute that no class of the core has."""
        if node.attr in ATTRIBUTES or any(node.attr in found.members for found in self.members()):
            return
        if node.attr in METHODS or any(node.attr in found.methods for found in self.members()):
            raise self.refused(node, f"the method {node.attr} as a value", "a lambda that calls it")
        raise self.refused(node, f"the unknown attribute {node.attr}", "an attribute that a class of the core has")


def known_in(module: Declared, name: str, text: str) -> Known | None:
    """Give what a name stands for in the module that defines it, with the text that it has here."""
    if name in module.functions:
        return Known("function", text, module.functions[name])
    if name in module.classes:
        found = module.classes[name]
        return Known("error" if found.error else "class", text, found.signature)
    if name in module.constants:
        return Known("constant", text)
    return Known("type", "") if name in module.types else None


def known_error(name: str) -> Known | None:
    """Give one of Python's own errors."""
    return Known("error", f"$.{name}") if name in ERRORS else None
