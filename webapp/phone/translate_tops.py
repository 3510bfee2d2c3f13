"""What stands at the top of a module: imports, constants, functions and classes."""

import ast

from webapp.phone.declared import is_type, set_on_self
from webapp.phone.subset import METHODS, PACKAGE, TAKEN_ATTRIBUTES, TYPES_ONLY, js_name
from webapp.phone.translate_names import bound
from webapp.phone.translate_statements import Statements

FIXED = (ast.Constant, ast.Tuple, ast.UnaryOp, ast.USub, ast.Load)
CHANGING = (ast.List, ast.Dict, ast.Set, ast.ListComp, ast.DictComp, ast.SetComp, ast.GeneratorExp)


class Tops(Statements):
    """Adds what a module is made of to the statements."""

    def translate(self) -> str:
        """Translate the module."""
        note = (ast.get_docstring(self.module.tree) or "").split("\n")[0].replace("*/", "")
        self.out.add(f'/* webapp/core/{self.module.file}, line for line. {note} */ import * as $ from "../python.js";')
        for node in self.module.tree.body:
            self.top(node)
        own = [*self.module.functions, *self.module.classes, *sorted(self.module.constants)]
        renamed = [f"{js_name(name)} as {name}" for name in own if js_name(name) != name]
        if renamed:
            self.out.add(f"export {{ {', '.join(renamed)} }};")
        return self.out.text()

    def export(self, name: str) -> str:
        """Give what stands before a definition; one that JavaScript forces to another name is exported at the end."""
        return "export " if js_name(name) == name else ""

    def top(self, node: ast.stmt) -> None:
        """Translate one statement at the top of the module."""
        if isinstance(node, ast.ImportFrom):
            self.top_import(node)
        elif isinstance(node, ast.FunctionDef):
            self.top_function(node)
        elif is_type(node) or (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)):
            return
        elif isinstance(node, ast.ClassDef):
            self.top_class(node)
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            self.top_constant(node)
        else:
            self.outside(node)

    def top_import(self, node: ast.ImportFrom) -> None:
        """Translate an import: types stay behind, and so do the decorators."""
        source = node.module or ""
        if source in TYPES_ONLY:
            return
        if source == "fractions":
            self.put(node, 'import { Fraction } from "../fraction.js";')
        if not source.startswith(PACKAGE):
            known = {"fractions": "Fraction", "dataclasses": "dataclass"}[source]
            if [(alias.name, alias.asname) for alias in node.names] != [(known, None)]:
                self.refuse(node, f"this import from {source}", f"from {source} import {known}")
            return
        name = source.removeprefix(f"{PACKAGE}.")
        if name not in self.modules:
            self.refuse(node, f"an import from {source}, which is not there", "a module of the core")
        values = [text for alias in node.names if (text := self.imported(node, name, alias))]
        if values:
            self.put(node, f'import {{ {", ".join(values)} }} from "./{name}.js";')

    def imported(self, node: ast.ImportFrom, source: str, alias: ast.alias) -> str:
        """Translate one imported name; nothing is left of a type."""
        module = self.modules[source]
        if not module.has(alias.name):
            self.refuse(node, f"{alias.name}, which {module.file} does not define", "a name that it defines")
        if alias.name in module.types:
            return ""
        name = js_name(alias.asname or alias.name)
        return name if name == alias.name else f"{alias.name} as {name}"

    def top_constant(self, node: ast.Assign | ast.AnnAssign) -> None:
        """Translate a constant."""
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        if len(targets) > 1 or not isinstance(targets[0], ast.Name) or node.value is None:
            self.refuse(node, "this at the top of a module", "NAME = value")
        self.check_name(node, targets[0].id)
        self.put(node, f"{self.export(targets[0].id)}const {js_name(targets[0].id)} = {self.expression(node.value)};")

    def top_function(self, node: ast.FunctionDef) -> None:
        """Translate a function."""
        if node.decorator_list:
            self.refuse(node, "a decorator on a function", "a plain function")
        self.check_name(node, node.name)
        parameters = self.parameters(node)
        self.function(node, f"{self.export(node.name)}function {js_name(node.name)}({parameters}) {{")

    def parameters(self, node: ast.FunctionDef, *, method: bool = False) -> str:
        """Translate parameters; what a default costs to make is made once, before the function."""
        found = node.args
        if found.vararg or found.kwarg:
            self.refuse(node, "a parameter with a star", "a list or a dict as a parameter")
        plain = found.posonlyargs + found.args
        defaults: list[ast.expr | None] = [*([None] * (len(plain) - len(found.defaults))), *found.defaults]
        pairs = [*zip(plain, defaults, strict=True), *zip(found.kwonlyargs, found.kw_defaults, strict=True)]
        return ", ".join(self.parameter(argument, value) for argument, value in pairs[1 if method else 0 :])

    def parameter(self, argument: ast.arg, value: ast.expr | None) -> str:
        """Translate one parameter."""
        self.check_name(argument, argument.arg)
        name = js_name(argument.arg)
        return name if value is None else f"{name} = {self.default(argument, value)}"

    def default(self, node: ast.AST, value: ast.expr) -> str:
        """Translate a default: as it stands when it never changes, else by a name for what was made once."""
        if isinstance(value, CHANGING) or (isinstance(value, ast.Call) and ast.unparse(value.func) in ("list", "dict")):
            self.refuse(node, "a default that can be changed", "None or a tuple")
        text = self.expression(value)
        if all(isinstance(inner, FIXED) for inner in ast.walk(value)):
            return text
        name = self.fresh()
        self.out.put(getattr(node, "lineno", 1), self.depth, f"const {name} = {text};")
        return name

    def function(self, node: ast.FunctionDef, head: str, start: str = "") -> None:
        """Translate the body of a function, its variables declared first: they are the whole function's."""
        names = {argument.arg for argument in (*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs)}
        variables = [name for name in bound(node.body) if name not in names]
        declared = f"let {', '.join(js_name(name) for name in variables)};" if variables else ""
        self.put(node, " ".join(part for part in (head, start, declared) if part))
        with self.scope({*names, *variables}):
            self.block(node.body)
        self.out.add("}" if ends(node.body) else "return null; }")

    def top_class(self, node: ast.ClassDef) -> None:
        """Translate a frozen dataclass or an error class."""
        self.check_name(node, node.name)
        found = self.module.classes[node.name]
        if found.error:
            self.error_class(node)
        else:
            self.dataclass(node)
        for item in node.body:
            if isinstance(item, ast.FunctionDef):
                self.method_definition(item, error=found.error)
            elif not isinstance(item, ast.Pass | ast.AnnAssign) and not is_docstring(item):
                self.refuse(item, "this in a class", "fields, methods and properties")
        self.out.add("}")

    def error_class(self, node: ast.ClassDef) -> None:
        """Translate the head of an error class."""
        names = [base.id if isinstance(base, ast.Name) else "" for base in node.bases]
        known = self.known(names[0])
        if len(names) > 1 or known is None or known.kind != "error" or node.decorator_list or node.keywords:
            self.refuse(node, f"the class {node.name} on {', '.join(map(ast.unparse, node.bases))}", "@dataclass(frozen=True), or one error as its base")
        for item in node.body:
            if isinstance(item, ast.AnnAssign) and item.value is not None:
                self.refuse(item, "a class attribute with a value", "a constant of the module")
        self.put(node, f"{self.export(node.name)}class {js_name(node.name)} extends {known.text} {{")

    def dataclass(self, node: ast.ClassDef) -> None:
        """Translate the head of a frozen dataclass."""
        if [ast.unparse(decorator) for decorator in node.decorator_list] != ["dataclass(frozen=True)"] or node.keywords:
            self.refuse(node, f"the class {node.name}", "@dataclass(frozen=True) alone, or class X(ValueError)")
        fields = [item for item in node.body if isinstance(item, ast.AnnAssign)]
        names, parts = [], []
        for item in fields:
            name = item.target.id if isinstance(item.target, ast.Name) else ""
            self.check_field(item, name)
            names.append(name)
            value = f" = {self.default(item, item.value)}" if item.value else ""
            parts.append(js_name(name) + value)
        sets = "".join(f" this.{name} = {js_name(name)};" for name in names)
        self.put(node, f"{self.export(node.name)}class {js_name(node.name)} extends $.Value {{")
        self.out.add(f"constructor({', '.join(parts)}) {{ super();{sets} Object.freeze(this); }}")

    def check_field(self, node: ast.stmt, name: str) -> None:
        """Refuse names of members that mean something else in JavaScript, or to the translator."""
        self.check_name(node, name)
        if name in TAKEN_ATTRIBUTES:
            self.refuse(node, f"a member named {name}", "another name: JavaScript has this one")

    def method_definition(self, node: ast.FunctionDef, *, error: bool) -> None:
        """Translate a method, a property, or an error's __init__."""
        decorators = [ast.unparse(decorator) for decorator in node.decorator_list]
        if decorators not in ([], ["property"]):
            self.refuse(node, f"@{decorators[0]}", "@property, or a function of the module")
        if node.name == "__init__" and error:
            for target in set_on_self(node):
                self.check_field(node, target.attr)
        else:
            self.check_field(node, node.name)
        if node.name in METHODS and not decorators:
            self.refuse(node, f"a method named {node.name}", "another name: texts, lists or dicts have this one")
        self.depth += 1
        itself = node.args.args[0].arg if node.args.args else ""
        parameters = self.parameters(node, method=True)
        self.making = itself if error and node.name == "__init__" else ""
        head = f"{'get ' if decorators else ''}{node.name}({parameters}) {{"
        self.function(node, head, f"const {js_name(itself)} = this;")
        self.depth -= 1
        self.making = ""


def ends(body: list[ast.stmt]) -> bool:
    """Tell whether statements never run through to what follows them."""
    last = body[-1]
    if isinstance(last, ast.If):
        return bool(last.orelse) and ends(last.body) and ends(last.orelse)
    if isinstance(last, ast.Try):
        return ends(last.body) and all(ends(handler.body) for handler in last.handlers)
    return isinstance(last, ast.Return | ast.Raise)


def is_docstring(node: ast.stmt) -> bool:
    """Tell whether a statement is only a text."""
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
