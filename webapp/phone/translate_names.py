"""What every part of the translator stands on: names and their scopes, and how to refuse."""

import ast
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import NoReturn

from webapp.phone.declared import Class, Declared, Signature
from webapp.phone.lines import Lines
from webapp.phone.refused import refuse
from webapp.phone.subset import ERRORS, METHODS, PACKAGE, js_name

LITERAL = (ast.Constant, ast.Name)


@dataclass(frozen=True)
class Known:
    """What a name stands for: a function, class, error, constant or type, and how it is called."""

    kind: str
    text: str
    signature: Signature | None = None


class Names:
    """One module on its way: its scopes, the names that it may use, and the text made so far."""

    def __init__(self, module: Declared, modules: dict[str, Declared]) -> None:
        self.module = module
        self.modules = modules
        self.scopes: list[set[str]] = []
        self.out = Lines()
        self.depth = 0
        self.counter = 0
        self.making = ""  # what an error that is being made calls itself

    def refuse(self, node: ast.AST, found: str, instead: str) -> NoReturn:
        """Stop at a node of this module."""
        refuse(self.module.file, node, found, instead)

    def fresh(self) -> str:
        """Give a name that no Python name can be."""
        self.counter += 1
        return f"${self.counter}"

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
        """Give what a name at the top of this module stands for, defined here or imported."""
        if name in self.module.imports:
            source, original = self.module.imports[name]
            if source == "fractions":
                return Known("fraction", "Fraction") if original == "Fraction" else None
            if not source.startswith(PACKAGE):
                return Known("type", "")
            return known_in(self.modules[source.removeprefix(f"{PACKAGE}.")], original, js_name(name))
        return known_in(self.module, name, js_name(name)) or known_error(name)

    def base_signature(self, node: ast.AST, name: str) -> Signature | None:
        """Give how an error is made that has no __init__ of its own: as the nearest base that has one."""
        known = self.known(name)
        if known is None or known.kind != "error":
            self.refuse(node, f"the error {name}", "one of the core's errors or Python's own")
        return known.signature

    def members(self) -> Iterator[Class]:
        """Give all classes of the core."""
        for module in self.modules.values():
            yield from module.classes.values()

    def name(self, node: ast.Name) -> str:
        """Give the JavaScript name of a Python name that is read as a value."""
        if self.is_local(node.id):
            return js_name(node.id)
        known = self.known(node.id)
        if known is None:
            self.refuse(node, f"the unknown name {node.id}", "a name that is defined, imported, or a builtin of the subset")
        if known.kind in ("class", "error", "fraction"):
            self.refuse(node, f"the class {node.id} as a value", "a function or a lambda that makes one")
        if known.kind == "type":
            self.refuse(node, f"the type {node.id} as a value", "it in annotations only")
        return known.text

    def check_name(self, node: ast.AST, name: str) -> None:
        """Refuse names that one of the two languages reads in its own way."""
        if name.startswith("__") or not name.isascii():
            self.refuse(node, f"the name {name}", "a name in ASCII that does not begin with two underscores")

    def check_member(self, node: ast.Attribute) -> None:
        """Refuse an attribute that no class of the core has."""
        if node.attr in METHODS:
            self.refuse(node, f"the method {node.attr} as a value", "a lambda that calls it")
        self.refuse(node, f"the unknown attribute {node.attr}", "a field, property or attribute of a class of the core")


def known_in(module: Declared, name: str, text: str) -> Known | None:
    """Give what a name stands for in the module that defines it."""
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


def bound(nodes: list[ast.stmt]) -> list[str]:
    """Give the variables that statements bind, in their order; those of lambdas and comprehensions are their own."""
    found: dict[str, None] = {}
    for node in nodes:
        for inner in own_nodes(node):
            if isinstance(inner, ast.Name) and isinstance(inner.ctx, ast.Store):
                found[inner.id] = None
            if isinstance(inner, ast.ExceptHandler) and inner.name:
                found[inner.name] = None
    return list(found)


def own_nodes(node: ast.AST) -> Iterator[ast.AST]:
    """Walk through a node without entering what has variables of its own."""
    yield node
    if isinstance(node, ast.Lambda | ast.ListComp | ast.SetComp | ast.DictComp | ast.GeneratorExp):
        return
    for inner in ast.iter_child_nodes(node):
        yield from own_nodes(inner)
