"""Calls of Python's builtins, and the names of classes where one is asked for."""

import ast

from webapp.phone.subset import BUILTINS, INSTEAD, KINDS, LAZY_METHODS, Builtin
from webapp.phone.translate_walks import Walks

ENDS = {"all": False, "any": True}  # what ends the walk when it is met
STEP_BY_STEP = ("any", "all", "enumerate", "zip")  # stop early, or give one while the next is not yet made


class Builtins(Walks):
    """Adds builtins to what is walked through."""

    def builtin(self, node: ast.Call, name: str) -> str:
        """Translate a call of a builtin."""
        if name not in BUILTINS:
            wanted = INSTEAD.get(name) or f"a function of the core, or one of {', '.join(BUILTINS)}"
            raise self.refused(node, f"a call of the unknown name {name}", wanted)
        found = BUILTINS[name]
        if not found.least <= len(node.args) <= found.most:
            raise self.refused(node, f"{name}() with {len(node.args)} arguments", counted(found.least, found.most))
        if name in ENDS and isinstance(node.args[0], ast.GeneratorExp) and not node.keywords:
            return self.tested(node.args[0], ends=ENDS[name])
        parts = self.builtin_parts(node, name)
        named = self.builtin_keywords(node, name, found, len(parts))
        return f"$.{found.runtime or name}({', '.join([*parts, *named])})"

    def builtin_parts(self, node: ast.Call, name: str) -> list[str]:
        """Translate the arguments of a builtin that have no name."""
        if name == "zip":
            return [f"[{', '.join(self.spread(part) for part in node.args)}]"]
        stars = any(isinstance(part, ast.Starred) for part in node.args)
        if name in ("min", "max") and len(node.args) > 1:
            row = f"[{', '.join(self.spread(part) for part in node.args)}]"
            return [f"$.spread({row}, 2, Infinity)" if stars else row]
        if stars:
            raise self.refused(node, f"a star in {name}()", "the list itself")
        if name == "isinstance":
            return [self.expression(node.args[0]), self.kinds(node.args[1])]
        if node.args and (BUILTINS[name].walks or is_view(name, node.args[0])):
            first = self.walked(node.args[0], at_once=name not in STEP_BY_STEP)
            return [first, *(self.expression(part) for part in node.args[1:])]
        return [self.expression(part) for part in node.args]

    def builtin_keywords(self, node: ast.Call, name: str, found: Builtin, given: int) -> list[str]:
        """Translate the arguments of a builtin that have a name, at their places after those that have none."""
        places = dict(found.keywords)
        named: dict[int, str] = {}
        for keyword in node.keywords:
            place = places.get(keyword.arg or "", -1)
            if place < given or place in named:
                wanted = f"each of {', '.join(places)} once at most" if places else "its arguments by position"
                raise self.refused(node, f"the keyword {keyword.arg} of {name}()", wanted)
            named[place] = self.expression(keyword.value)
        return [named.get(place, "undefined") for place in range(given, max(named, default=-1) + 1)]

    def spread(self, node: ast.expr) -> str:
        """Translate one of several values, or the row of them behind a star."""
        return f"...{self.rows(node.value)}" if isinstance(node, ast.Starred) else self.walked(node, at_once=False)

    def kinds(self, node: ast.expr) -> str:
        """Translate the second argument of isinstance."""
        if isinstance(node, ast.Tuple):
            return ", ".join(self.kinds(inner) for inner in node.elts)
        name = node.id if isinstance(node, ast.Name) else ""
        if name in KINDS and self.is_builtin(name):
            return f'"{name}"'
        known = None if self.is_local(name) else self.known(name)
        if known is None or known.kind not in ("class", "error", "fraction"):
            wanted = f"one of {', '.join(KINDS)}, Fraction, or a class of the core"
            raise self.refused(node, f"{ast.unparse(node)} as a class", wanted)
        return known.text

    def error_class(self, node: ast.expr) -> str:
        """Translate the name of an error class."""
        name = node.id if isinstance(node, ast.Name) else ""
        known = None if self.is_local(name) else self.known(name)
        if known is None or known.kind != "error":
            raise self.refused(node, f"{ast.unparse(node)} as an error", "ValueError or another error of the subset")
        return known.text


def is_view(name: str, node: ast.expr) -> bool:
    """Tell whether the length of a dict's items, keys or values is asked."""
    view = isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in LAZY_METHODS
    return name == "len" and view


def counted(least: int, most: int) -> str:
    """Say how many arguments are wanted."""
    return f"{least}" if least == most else f"{least} to {most}"
