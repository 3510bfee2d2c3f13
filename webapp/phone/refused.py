"""The one error of the translator: what stands outside the subset, where, and what to write instead."""

import ast


class Refused(SyntaxError):  # noqa: N818 - a word that reads well where it is caught
    """A source that the phone would not run as CPython does: `file:line: what was found; write X instead`."""


def refused(file: str, node: ast.AST | int, found: str, instead: str) -> Refused:
    """Make the error for a node (or a line) of a file."""
    line = node if isinstance(node, int) else getattr(node, "lineno", 1)
    return Refused(f"{file}:{line}: {found}; write {instead} instead")
