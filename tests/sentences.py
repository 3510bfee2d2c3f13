"""The table of error sentences that the core can give for a tool, derived from the core's own text."""

import ast
import re
from functools import cache
from importlib import import_module
from pathlib import Path

from webapp import core
from webapp.core import working
from webapp.core.tool import Tool

FOLDER = Path(core.__file__).parent
READ_BY = ("reading", "setting")  # modules whose every sentence is an error's
LINE = r"((.|\n)*: )?"  # the name of a line
PLACE = r"( \(At (the end|character \d+)\.\))?"
# What only a tool with a field of this kind, or of this sign, can come to.
ONLY = {
    "A count is a whole number from 1 to 1,000.": "count",
    "Nothing is typed here yet; write a count like 9.": "count",
    "A length and a count stand here with x between: 24 x 8.": "run",
    "A list has at most 1000 characters; work it in two.": "widths",
    "A list has at most 200 lines; part it in two.": "lines",
    "A list has at most 40000 characters; part it in two.": "lines",
    "Two lines are named {}; give each a name of its own.": "lines",
    "Two lengths stand here with x between: 1 1/2 x 5 1/2.": "pair",
    "This is {choices}.": "choice",
    "This comes to {}; give more than 0.": "positive",
    "This comes to less than 0; give 0 or more.": "zero",
}


@cache
def tree_of(module: str) -> ast.Module:
    return ast.parse((FOLDER / f"{module}.py").read_text(encoding="utf-8"))


def imports(module: str) -> set[str]:
    """Return the core's modules that a module of the core stands on, itself included."""
    found, waiting = {module}, [module]
    while waiting:
        for node in ast.walk(tree_of(waiting.pop())):
            if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith(f"{core.__name__}."):
                name = node.module.rpartition(".")[2]
                if name not in found:
                    found.add(name)
                    waiting.append(name)
    return found


def texts(module: str) -> list[str]:
    """Return the sentences of a module, what is put into them as {}: all text that ends with a point."""
    tree = tree_of(module)
    skipped = {id(node.body[0].value) for node in ast.walk(tree) if has_docstring(node)}
    skipped |= {id(part) for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for part in node.values}
    found = [text_of(node) for node in ast.walk(tree) if id(node) not in skipped]
    return [text for text in found if text.endswith(".") and " " in text]


def has_docstring(node: ast.AST) -> bool:
    kinds = ast.Module | ast.FunctionDef | ast.ClassDef
    return isinstance(node, kinds) and ast.get_docstring(node) is not None


def text_of(node: ast.AST) -> str:
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return node.value
    if isinstance(node, ast.JoinedStr):
        return "".join(str(part.value) if isinstance(part, ast.Constant) else "{}" for part in node.values)
    return ""


def sentences(tool: Tool) -> list[str]:
    """Return every sentence that working the tool can refuse with."""
    modules = imports(tool.name) | imports("working")
    read = [text for name in sorted(modules) if name.startswith(READ_BY) for text in texts(name)]
    tables = [import_module(f"{core.__name__}.{name}") for name in sorted(modules) if name.startswith(tool.name)]
    own = [text for table in tables for text in getattr(table, "ERRORS", {}).values()]
    ends = ["{} " + text for table in tables for text in getattr(table, "REMEDIES", {}).values()]
    kinds = {"", *(field.kind for field in tool.fields), *(field.sign for field in tool.fields)}
    return sorted(text for text in {*read, *own, *ends, *working.ERRORS.values()} if ONLY.get(text, "") in kinds)


@cache
def pattern(text: str) -> re.Pattern[str]:
    """Return what a sentence looks like with its parts put in, and its place after it."""
    pieces = re.split(r"\{[a-z_]*\}", text)
    return re.compile(LINE + "(.|\n)*".join(re.escape(piece) for piece in pieces) + PLACE)


def met(table: list[str], error: str) -> list[str]:
    """Return the sentences of the table that an error is."""
    return [text for text in table if pattern(text).fullmatch(error)]
