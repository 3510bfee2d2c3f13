"""What stands at the top of a module: imports, constants, functions and classes."""

import ast
from collections.abc import Iterator

from webapp.phone.declared import is_type, names_of
from webapp.phone.pieces import Piece
from webapp.phone.subset import PACKAGE, TYPES_ONLY
from webapp.phone.translate_functions import Functions, is_docstring


class Modules(Functions):
    """Adds a module's own statements to its functions and classes."""

    def pieces(self) -> Iterator[Piece]:
        """Translate the module: a piece for each statement at its top that is something at run time."""
        for node in self.module.tree.body:
            self.begin()
            self.top(node)
            if not (isinstance(node, ast.ImportFrom) or is_type(node) or is_docstring(node)):
                key = self.module.name, names_of(node)[0]
                yield Piece(key, self.called[key], self.out.text(), frozenset(self.needs - {key}))

    def top(self, node: ast.stmt) -> None:
        """Translate one statement at the top of the module."""
        if isinstance(node, ast.ImportFrom):
            self.top_import(node)
        elif isinstance(node, ast.FunctionDef):
            self.top_function(node)
        elif is_type(node) or is_docstring(node):
            return
        elif isinstance(node, ast.ClassDef):
            self.top_class(node)
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            self.top_constant(node)
        else:
            raise self.outside(node)

    def top_import(self, node: ast.ImportFrom) -> None:
        """Look at an import: nothing of it is left."""
        source = node.module or ""
        if source.startswith(f"{PACKAGE}."):
            self.check_import(node, source.removeprefix(f"{PACKAGE}."))
        elif source not in TYPES_ONLY:
            known = {"fractions": "Fraction", "dataclasses": "dataclass"}[source]
            if [(alias.name, alias.asname) for alias in node.names] != [(known, None)]:
                raise self.refused(node, f"another import from {source}", f"from {source} import {known}")

    def check_import(self, node: ast.ImportFrom, source: str) -> None:
        """Refuse names that another module of the core does not define."""
        if source not in self.modules:
            raise self.refused(node, f"an import from {node.module}, which is not there", "a module of the core")
        module = self.modules[source]
        for alias in node.names:
            if not module.has(alias.name) or alias.name in module.imports:
                found = f"{alias.name}, which {module.file} does not define"
                raise self.refused(node, found, "a name from the module that defines it")

    def top_constant(self, node: ast.Assign | ast.AnnAssign) -> None:
        """Translate a constant."""
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        if len(targets) > 1 or not isinstance(targets[0], ast.Name) or node.value is None:
            raise self.refused(node, "this assignment at the top of a module", "NAME = value")
        name = targets[0].id
        self.check_name(node, name)
        self.put(node, f"const {self.own_name(name)} = {self.expression(node.value)};")

    def top_function(self, node: ast.FunctionDef) -> None:
        """Translate a function."""
        if node.decorator_list:
            raise self.refused(node, "a decorator on a function", "a plain function")
        self.check_name(node, node.name)
        arguments = self.arguments(node)
        self.function(node, f"function {self.own_name(node.name)}({arguments}) {{")
