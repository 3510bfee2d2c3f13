"""The one error of the translator: what stands outside the subset, where, and what to write instead."""

import ast
from typing import NoReturn


class Refused(SyntaxError):
    """A source that the phone would not run as CPython does: `file:line: what was found; write X instead`."""


def refuse(file: str, node: ast.AST | int, found: str, instead: str) -> NoReturn:
    """Stop the translation at a node (or a line) of a file."""
    line = node if isinstance(node, int) else getattr(node, "lineno", 1)
    raise Refused(f"{file}:{line}: {found}; write {instead} instead")
