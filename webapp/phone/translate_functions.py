"""Functions and classes."""

import ast

from webapp.phone.declared import set_on_self
from webapp.phone.subset import METHODS, TAKEN_ATTRIBUTES
from webapp.phone.translate_statements import Statements
from webapp.phone.variables import Assigned, bound, ends, parameters

FIXED = (ast.Constant, ast.Name, ast.Tuple, ast.UnaryOp, ast.USub, ast.Load)
CHANGING = (ast.List, ast.Dict, ast.Set, ast.ListComp, ast.DictComp, ast.SetComp, ast.GeneratorExp)


class Functions(Statements):
    """Adds functions and classes to the statements."""

    def function(self, node: ast.FunctionDef, head: str, start: str = "") -> None:
        """Translate a function, its variables declared first: they are the whole function's."""
        names = parameters(node.args)
        variables = [name for name in bound(node.body) if name not in names]
        declared = f"let {', '.join(self.local(name) for name in variables)};" if variables else ""
        self.put(node, " ".join(part for part in (head, start, declared) if part))
        Assigned(node, self.unassigned)
        with self.scope({*names, *variables}):
            self.block(node.body)
        self.out.add("}" if ends(node.body) else "return null; }")

    def unassigned(self, node: ast.Name) -> None:
        """Refuse a variable that may have no value where it is read."""
        raise self.refused(node, f"{node.id}, which may have no value here", "one before, on every way to it")

    def arguments(self, node: ast.FunctionDef, *, method: bool = False) -> str:
        """Translate parameters with their defaults."""
        found = node.args
        if found.vararg or found.kwarg:
            raise self.refused(node, "a parameter with a star", "a list or a dict as a parameter")
        plain = found.posonlyargs + found.args
        defaults: list[ast.expr | None] = [*([None] * (len(plain) - len(found.defaults))), *found.defaults]
        pairs = [*zip(plain, defaults, strict=True), *zip(found.kwonlyargs, found.kw_defaults, strict=True)]
        return ", ".join(self.parameter(node, argument.arg, value) for argument, value in pairs[1 if method else 0 :])

    def parameter(self, owner: ast.stmt, name: str, value: ast.expr | None) -> str:
        """Translate one parameter; a default that is to be worked is worked once, before its function or class."""
        self.check_name(owner, name)
        if value is None:
            return self.local(name)
        if isinstance(value, CHANGING) or (isinstance(value, ast.Call) and ast.unparse(value.func) in ("list", "dict")):
            raise self.refused(value, f"{ast.unparse(value)} as a default, which can be changed", "None or a tuple")
        text = self.expression(value)
        if not all(isinstance(inner, FIXED) for inner in ast.walk(value)):
            if self.depth:
                raise self.refused(value, f"{ast.unparse(value)} as a method's default", "a constant of the module")
            made, text = text, self.fresh()
            self.out.put(owner.lineno, self.depth, f"const {text} = {made};")
        return f"{self.local(name)} = {text}"

    def top_class(self, node: ast.ClassDef) -> None:
        """Translate a frozen dataclass or an error class."""
        self.check_name(node, node.name)
        found = self.module.classes[node.name]
        members = [item for item in node.body if not isinstance(item, ast.Pass) and not is_docstring(item)]
        for item in members:
            if not isinstance(item, ast.FunctionDef | ast.AnnAssign):
                raise self.refused(item, "this in a class", "fields, methods and properties")
        head = self.error_head(node) if found.error else self.dataclass_head(node)
        self.put(node, f"class {self.own_name(node.name)} extends {head}")
        self.depth += 1
        for item in members:
            if isinstance(item, ast.FunctionDef):
                self.method_definition(item, error=found.error)
        self.depth -= 1
        self.out.add("}")

    def error_head(self, node: ast.ClassDef) -> str:
        """Translate what an error class stands on."""
        if len(node.bases) > 1 or node.decorator_list or node.keywords:
            raise self.refused(node, f"the error {node.name} as it is declared", "class X(ValueError)")
        for item in node.body:
            if isinstance(item, ast.AnnAssign) and item.value is not None:
                raise self.refused(item, "a class attribute with a value", "a constant of the module")
        return f"{self.error_class(node.bases[0])} {{"

    def dataclass_head(self, node: ast.ClassDef) -> str:
        """Translate the constructor of a frozen dataclass."""
        if [ast.unparse(decorator) for decorator in node.decorator_list] != ["dataclass(frozen=True)"] or node.keywords:
            raise self.refused(node, f"the class {node.name}", "@dataclass(frozen=True) alone, or class X(ValueError)")
        names, parts = [], []
        for item in node.body:
            if isinstance(item, ast.AnnAssign) and isinstance(item.target, ast.Name):
                self.check_member(item, item.target.id)
                names.append(item.target.id)
                parts.append(self.parameter(node, item.target.id, item.value))
        sets = "".join(f" this.{name} = {self.local(name)};" for name in names)
        return f"$.Value {{ constructor({', '.join(parts)}) {{ super();{sets} Object.freeze(this); }}"

    def check_member(self, node: ast.stmt, name: str) -> None:
        """Refuse names of members that mean something else in JavaScript."""
        self.check_name(node, name)
        if name in TAKEN_ATTRIBUTES:
            raise self.refused(node, f"a member named {name}", "another name: JavaScript or Python has this one")

    def method_definition(self, node: ast.FunctionDef, *, error: bool) -> None:
        """Translate a method, a property, or an error's __init__."""
        decorators = [ast.unparse(decorator) for decorator in node.decorator_list]
        if decorators not in ([], ["property"]):
            raise self.refused(node, f"@{decorators[0]}", "@property, or a function of the module")
        if not node.args.args:
            raise self.refused(node, f"a method {node.name} without self", "self as the first parameter")
        itself = node.args.args[0].arg
        making = error and node.name == "__init__"
        for name in [target.attr for target in set_on_self(node)] if making else [node.name]:
            self.check_member(node, name)
        if node.name in METHODS and not decorators:
            raise self.refused(node, f"a method named {node.name}", "another name: texts, lists or dicts have it")
        self.making = itself if making else ""
        head = f"{'get ' if decorators else ''}{node.name}({self.arguments(node, method=True)}) {{"
        self.function(node, head, f"const {self.local(itself)} = this;")
        self.making = ""


def is_docstring(node: ast.stmt) -> bool:
    """Tell whether a statement is only a text."""
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
