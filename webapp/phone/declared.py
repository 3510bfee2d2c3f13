"""What a module of the core declares at its top level, read before anything is translated."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from webapp.phone.refused import refused
from webapp.phone.subset import KINDS, PACKAGE, TYPES_ONLY
from webapp.phone.variables import parameters

TYPE_BASES = ("TypedDict", "Protocol")


@dataclass
class Signature:
    """The parameters of a function, a method or a class."""

    names: list[str]
    positional: int  # how many may be given by position
    required: list[str]


@dataclass
class Class:
    """A dataclass or an error class: what its instances have, and how one is made."""

    error: bool
    signature: Signature | None = None  # an error without an __init__ takes what its base takes
    members: set[str] = field(default_factory=set)
    methods: dict[str, Signature] = field(default_factory=dict)


@dataclass
class Declared:
    """A module and its names: functions, classes, constants, names that are only types, and imports."""

    name: str
    file: str
    tree: ast.Module
    functions: dict[str, Signature] = field(default_factory=dict)
    classes: dict[str, Class] = field(default_factory=dict)
    constants: set[str] = field(default_factory=set)
    types: set[str] = field(default_factory=set)
    imports: dict[str, tuple[str, str]] = field(default_factory=dict)

    def has(self, name: str) -> bool:
        """Tell whether the module itself defines a name, be it only a type."""
        return any(name in names for names in (self.functions, self.classes, self.constants, self.types))


def read_module(path: Path) -> Declared:
    """Parse a module and read what it declares."""
    source = path.read_text(encoding="utf-8")
    try:
        tree = ast.parse(source, path.name)
    except SyntaxError as e:
        raise refused(path.name, e.lineno or 1, f"no Python ({e.msg})", "what CPython compiles") from e
    module = Declared(path.stem, path.name, tree)
    for node in tree.body:
        read_top(node, module)
    return module


def read_top(node: ast.stmt, module: Declared) -> None:
    """Take note of one statement at the top of a module."""
    for name in names_of(node):
        if module.has(name) or name in module.imports:
            raise refused(module.file, node, f"{name} for the second time", "another name")
    if isinstance(node, ast.ImportFrom):
        read_import(node, module)
    elif is_type(node):
        module.types.update(names_of(node))
    elif isinstance(node, ast.FunctionDef):
        module.functions[node.name] = signature(node.args)
    elif isinstance(node, ast.ClassDef):
        module.classes[node.name] = read_class(node)
    else:
        module.constants.update(names_of(node))


def names_of(node: ast.stmt) -> list[str]:
    """Give the names that a statement at the top of a module defines."""
    if isinstance(node, ast.ClassDef | ast.FunctionDef):
        return [node.name]
    targets = node.targets if isinstance(node, ast.Assign) else []
    targets = [node.target] if isinstance(node, ast.AnnAssign) else targets
    return [target.id for target in targets if isinstance(target, ast.Name)]


def is_type(node: ast.stmt) -> bool:
    """Tell whether a statement only names a type, so that nothing of it is left at run time."""
    if isinstance(node, ast.AnnAssign):
        return isinstance(node.annotation, ast.Name) and node.annotation.id == "TypeAlias"
    if isinstance(node, ast.Assign):
        return is_alias(node.value)
    return isinstance(node, ast.ClassDef) and any(base in TYPE_BASES for base in map(ast.unparse, node.bases))


def is_alias(node: ast.expr) -> bool:
    """Tell whether the value of an assignment is a type: `tuple[int, str]`, `dict[str, int] | None`."""
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.BitOr):
        return is_alias(node.left) or is_alias(node.right)
    head = node.value if isinstance(node, ast.Subscript) else node.func if isinstance(node, ast.Call) else None
    names = ("TypeVar",) if isinstance(node, ast.Call) else (*KINDS, "Callable")
    return isinstance(head, ast.Name) and head.id in names


def read_import(node: ast.ImportFrom, module: Declared) -> None:
    """Take note of imported names, of types as of values; other modules than those allowed are refused."""
    source = node.module or ""
    allowed = source in TYPES_ONLY or source in ("fractions", "dataclasses") or source.startswith(f"{PACKAGE}.")
    if node.level or not allowed:
        wanted = f"from fractions, dataclasses, typing, collections.abc or {PACKAGE}.x"
        raise refused(module.file, node, f"an import from {'.' * node.level}{source}", wanted)
    for alias in node.names:
        if alias.name == "*":
            raise refused(module.file, node, "import *", "the names that are used")
        if source in TYPES_ONLY:
            module.types.add(alias.asname or alias.name)
        module.imports[alias.asname or alias.name] = (source, alias.name)


def read_class(node: ast.ClassDef) -> Class:
    """Read the members of a class and how one is made."""
    found = Class(error=bool(node.bases))
    fields = {
        item.target.id: item.value
        for item in node.body
        if isinstance(item, ast.AnnAssign) and isinstance(item.target, ast.Name)
    }
    found.members.update(fields)
    if not found.error:
        found.signature = Signature([*fields], len(fields), [name for name, value in fields.items() if value is None])
    for item in node.body:
        if isinstance(item, ast.FunctionDef):
            read_method(item, found)
    return found


def read_method(node: ast.FunctionDef, owner: Class) -> None:
    """Add a method, a property, or the attributes that an error's __init__ sets."""
    if node.name == "__init__":
        owner.signature = signature(node.args, method=True)
        owner.members.update(target.attr for target in set_on_self(node))
    elif node.decorator_list:
        owner.members.add(node.name)
    else:
        owner.methods[node.name] = signature(node.args, method=True)


def signature(arguments: ast.arguments, *, method: bool = False) -> Signature:
    """Read the parameters of a def or a lambda; a method's self is left out."""
    skipped = 1 if method else 0
    plain = [a.arg for a in arguments.posonlyargs + arguments.args]
    needed = plain[skipped : len(plain) - len(arguments.defaults)]
    keyword = zip(arguments.kwonlyargs, arguments.kw_defaults, strict=True)
    needed += [argument.arg for argument, value in keyword if value is None]
    return Signature(parameters(arguments)[skipped:], len(plain) - skipped, needed)


def set_on_self(node: ast.FunctionDef) -> Iterator[ast.Attribute]:
    """Give the attributes that a method assigns."""
    for inner in ast.walk(node):
        if isinstance(inner, ast.Attribute) and isinstance(inner.ctx, ast.Store):
            yield inner
