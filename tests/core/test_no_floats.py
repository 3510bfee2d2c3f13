"""No float gets into the core, as far as its text can tell."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

CORE = Path(__file__).parent.parent.parent / "webapp" / "core"
PATHS = sorted(CORE.glob("*.py"))
# Each gives a float, takes one, or rounds by a rule that is not named; `float` as a type says that one is expected.
NAMES = {"float", "complex", "round", "pow"}
MODULES = {"math", "cmath", "decimal", "statistics", "random", "numpy", "pint"}
METHODS = {"as_integer_ratio", "from_float", "from_decimal", "limit_denominator", "fromhex", "is_integer", "sqrt"}


def floats(source: str) -> Iterator[str]:
    """Say where a source has, makes or asks for a float."""
    for node in ast.walk(ast.parse(source)):
        found = float_in(node)
        if found:
            yield f"line {node.lineno}: {found}"  # type: ignore[attr-defined]


def float_in(node: ast.AST) -> str:
    """Say what a node has to do with floats, or nothing."""
    if isinstance(node, ast.Constant) and isinstance(node.value, float | complex):
        return f"the literal {node.value!r}"
    if isinstance(node, ast.BinOp | ast.AugAssign) and isinstance(node.op, ast.Pow):
        return "a power"
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div) and is_int(node.left) and is_int(node.right):
        return "an int over an int"
    if isinstance(node, ast.Name) and node.id in NAMES:
        return f"the name {node.id}"
    if isinstance(node, ast.Attribute) and node.attr in METHODS:
        return f"the method {node.attr}"
    names = [alias.name for alias in node.names] if isinstance(node, ast.Import | ast.ImportFrom) else []
    names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
    return "".join(f"the import of {name}" for name in names if name.split(".")[0] in MODULES)


def is_int(node: ast.expr) -> bool:
    """Tell whether a node gives an int for sure: a literal, len(…), int(…), a numerator, or a sum of such."""
    if isinstance(node, ast.BinOp) and not isinstance(node.op, ast.Div):
        return is_int(node.left) and is_int(node.right)
    if isinstance(node, ast.Call):
        return isinstance(node.func, ast.Name) and node.func.id in ("len", "int", "ord")
    if isinstance(node, ast.Attribute):
        return node.attr in ("numerator", "denominator")
    return isinstance(node, ast.Constant) and isinstance(node.value, int)


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_a_module_of_the_core_has_no_float(path: Path) -> None:
    assert list(floats(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize(
    "source",
    [
        "x = 0.5",
        "x = 1e3",
        "x = 2j",
        "x = 1 / 2",
        "x = len(y) / 2",
        "x = (2 * len(y) + 1) / y.denominator",
        "x = y ** 2",
        "x **= 2",
        "x = round(y)",
        "x = float(y)",
        "def f(x: float): ...",
        "import math",
        "from math import sqrt",
        "import pint",
        "from decimal import Decimal",
        "x = y.limit_denominator(64)",
        "x = y.as_integer_ratio()",
    ],
)
def test_a_float_is_found(source: str) -> None:
    assert len(list(floats(source))) >= 1


def test_what_only_looks_like_one_is_let_be() -> None:
    assert list(floats("x = y / 2\nz = 'round 0.5'\nw = Fraction(1, 2) / 3\nv = 7 // 2")) == []
