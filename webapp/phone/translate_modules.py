"""What stands at the top of a module: imports, constants, functions and classes."""

import ast

from webapp.phone.declared import is_type
from webapp.phone.subset import PACKAGE, TYPES_ONLY, js_name
from webapp.phone.translate_functions import Functions, is_docstring


class Modules(Functions):
    """Adds a module's own statements to its functions and classes."""

    def translate(self) -> str:
        """Translate the module."""
        self.out.add(f'/* {self.module.file}, line for line */ import * as $ from "../python.js";')
        for node in self.module.tree.body:
            self.top(node)
        own = [*self.module.functions, *self.module.classes, *sorted(self.module.constants)]
        renamed = [f"{js_name(name)} as {name}" for name in own if js_name(name) != name]
        if renamed:
            self.out.add(f"export {{ {', '.join(renamed)} }};")
        return self.out.text()

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
        """Translate an import: types stay behind, and so do decorators."""
        source = node.module or ""
        if source.startswith(f"{PACKAGE}."):
            self.core_import(node, source.removeprefix(f"{PACKAGE}."))
        elif source not in TYPES_ONLY:
            known = {"fractions": "Fraction", "dataclasses": "dataclass"}[source]
            if [(alias.name, alias.asname) for alias in node.names] != [(known, None)]:
                raise self.refused(node, f"another import from {source}", f"from {source} import {known}")
            if known == "Fraction":
                self.put(node, 'import { Fraction } from "../fraction.js";')

    def core_import(self, node: ast.ImportFrom, source: str) -> None:
        """Translate an import from another module of the core."""
        if source not in self.modules:
            raise self.refused(node, f"an import from {node.module}, which is not there", "a module of the core")
        values = [text for alias in node.names if (text := self.imported(node, source, alias))]
        if values:
            self.put(node, f'import {{ {", ".join(values)} }} from "./{source}.js";')

    def imported(self, node: ast.ImportFrom, source: str, alias: ast.alias) -> str:
        """Translate one imported name; nothing is left of a type."""
        module = self.modules[source]
        if not module.has(alias.name) or alias.name in module.imports:
            found = f"{alias.name}, which {module.file} does not define"
            raise self.refused(node, found, "a name from the module that defines it")
        if alias.name in module.types:
            return ""
        name = js_name(alias.asname or alias.name)
        return name if name == alias.name else f"{alias.name} as {name}"

    def top_constant(self, node: ast.Assign | ast.AnnAssign) -> None:
        """Translate a constant."""
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        if len(targets) > 1 or not isinstance(targets[0], ast.Name) or node.value is None:
            raise self.refused(node, "this assignment at the top of a module", "NAME = value")
        name = targets[0].id
        self.check_name(node, name)
        self.put(node, f"{self.export(name)}const {self.own_name(name)} = {self.expression(node.value)};")

    def top_function(self, node: ast.FunctionDef) -> None:
        """Translate a function."""
        if node.decorator_list:
            raise self.refused(node, "a decorator on a function", "a plain function")
        self.check_name(node, node.name)
        arguments = self.arguments(node)
        self.function(node, f"{self.export(node.name)}function {self.own_name(node.name)}({arguments}) {{")
