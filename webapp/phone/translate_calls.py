"""Calls of functions, classes, methods, and of functions that a value holds."""

import ast

from webapp.phone.declared import Signature
from webapp.phone.subset import DIRECT, INSTEAD, METHODS, WALKING_METHODS
from webapp.phone.translate_builtins import Builtins, counted

STILL = (ast.Constant, ast.Name)  # may be worked before or after anything


class Calls(Builtins):
    """Adds all other calls to the builtins."""

    def on_call(self, node: ast.Call) -> str:
        """Translate a call."""
        if self.is_lazy(node) and ast.unparse(node.func) == "range":
            return f"$.tuple({self.lazy(node)})"  # may be walked through twice, asked, cut, and never changed
        if self.is_lazy(node):
            raise self.refused(node, f"{ast.unparse(node.func)}() kept or asked", "list(…) round it, or a loop over it")
        if any(keyword.arg is None for keyword in node.keywords):
            raise self.refused(node, "** in a call", "the arguments by name")
        if isinstance(node.func, ast.Name):
            return self.call_name(node, node.func.id)
        if isinstance(node.func, ast.Attribute):
            return self.call_attribute(node, node.func)
        return f"{self.expression(node.func)}({self.by_position(node)})"

    def call_name(self, node: ast.Call, name: str) -> str:
        """Translate a call of a name."""
        if self.is_local(name):
            return f"{self.local(name)}({self.by_position(node)})"
        if self.module.imports.get(name) == ("typing", "cast"):
            return self.expression(node.args[1])
        known = self.known(name)
        if known is None:
            return self.builtin(node, name)
        if known.kind == "fraction":
            return f"new Fraction({self.fraction_parts(node)})"
        if known.kind == "type":
            raise self.refused(node, f"a call of the type {name}", "a display, or a class of the core")
        made = f"new {known.text}" if known.kind in ("class", "error") else known.text
        return self.arranged(node, made, known.signature) if known.signature else f"{made}({self.by_position(node)})"

    def fraction_parts(self, node: ast.Call) -> str:
        """Translate the arguments of Fraction; a text is refused, for Fraction() takes many that are no length."""
        if any(isinstance(part, ast.JoinedStr) or is_text(part) for part in node.args):
            raise self.refused(node, "Fraction of a text", "Fraction of two ints")
        if not 1 <= len(node.args) <= 2:
            raise self.refused(node, f"Fraction of {len(node.args)} arguments", "one or two ints")
        return self.by_position(node)

    def by_position(self, node: ast.Call) -> str:
        """Translate arguments of which none has a name."""
        if node.keywords:
            raise self.refused(node, f"the keyword {node.keywords[0].arg} here", "the argument by its position")
        return ", ".join(self.argument(part) for part in node.args)

    def argument(self, node: ast.expr) -> str:
        """Translate an argument or an item of a display, with its star."""
        return f"...{self.rows(node.value)}" if isinstance(node, ast.Starred) else self.expression(node)

    def arranged(self, node: ast.Call, made: str, signature: Signature) -> str:
        """Translate a call of something whose parameters are known."""
        if any(isinstance(part, ast.Starred) for part in node.args):
            return f"{made}({self.starred(node, signature)})"
        places = self.places(node, signature)
        parts = [*node.args, *(keyword.value for keyword in node.keywords)]
        texts = [self.expression(part) for part in parts]
        if places != sorted(places) and sum(not isinstance(part, STILL) for part in parts) > 1:
            # The arguments are worked in the order in which they are written.
            names = [self.fresh() for _ in parts]
            return f"(({', '.join(names)}) => {made}({in_places(places, names)}))({', '.join(texts)})"
        return f"{made}({in_places(places, texts)})"

    def places(self, node: ast.Call, signature: Signature) -> list[int]:
        """Give the place of each argument among the parameters, in the order in which they are written."""
        if len(node.args) > signature.positional:
            found = f"{len(node.args)} arguments by position"
            raise self.refused(node, found, f"at most {signature.positional}, and others by name")
        places = list(range(len(node.args)))
        for keyword in node.keywords:
            place = signature.names.index(keyword.arg) if keyword.arg in signature.names else -1
            if place < 0 or place in places:
                wanted = f"each of {', '.join(signature.names)} once at most"
                raise self.refused(node, f"the keyword {keyword.arg}", wanted)
            places.append(place)
        for name in signature.required:
            if signature.names.index(name) not in places:
                raise self.refused(node, f"a call without {name}", "a value for it")
        return places

    def starred(self, node: ast.Call, signature: Signature) -> str:
        """Translate arguments with stars among them; how many there are is looked at when they are met."""
        names = signature.names[: signature.positional]
        needed = [name for name in signature.required if name in names]
        if node.keywords or len(needed) < len(signature.required):
            raise self.refused(node, "a star beside keywords", "all arguments by position")
        row = ", ".join(self.argument(part) for part in node.args)
        return f"...$.spread([{row}], {len(needed)}, {len(names)})"

    def call_attribute(self, node: ast.Call, func: ast.Attribute) -> str:
        """Translate a call of a method, or of a function that a field holds."""
        if func.attr in METHODS:
            return self.method(node, func)
        signatures = [found.methods[func.attr] for found in self.members() if func.attr in found.methods]
        if not signatures and not any(func.attr in found.members for found in self.members()):
            wanted = INSTEAD.get(func.attr) or f"a method of the core's own, or one of {', '.join(sorted(METHODS))}"
            raise self.refused(node, f"the unknown method {func.attr}", wanted)
        owner = self.expression(func.value)
        if signatures and all(other == signatures[0] for other in signatures):
            return self.arranged(node, f"{owner}.{func.attr}", signatures[0])
        return f"{owner}.{func.attr}({self.by_position(node)})"

    def method(self, node: ast.Call, func: ast.Attribute) -> str:
        """Translate a call of a method of texts, lists or dicts."""
        least, most = METHODS[func.attr]
        if any(isinstance(part, ast.Starred) for part in node.args):
            raise self.refused(node, f"a star in {func.attr}()", "the arguments one by one")
        if node.keywords or not least <= len(node.args) <= most:
            wanted = f"{counted(least, most)} by position: what it would do without them differs between the languages"
            raise self.refused(node, f"{func.attr}() with these arguments", wanted)
        walks = func.attr in WALKING_METHODS
        texts = [self.walked(part) if walks else self.expression(part) for part in node.args]
        name = [] if func.attr in DIRECT else [f'"{func.attr}"']
        parts = ", ".join([self.expression(func.value), *name, *texts])
        return f"$.{func.attr if func.attr in DIRECT else 'm'}({parts})"

    def lazy(self, node: ast.Call) -> str:
        """Translate a call that gives what can only be walked through."""
        if isinstance(node.func, ast.Attribute):
            return self.method(node, node.func)
        return self.builtin(node, node.func.id if isinstance(node.func, ast.Name) else "")

    def on_attribute(self, node: ast.Attribute) -> str:
        """Translate the reading of an attribute."""
        self.check_attribute(node)
        return f"{self.expression(node.value)}.{node.attr}"


def is_text(node: ast.expr) -> bool:
    """Tell whether a node is a text as it stands."""
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def in_places(places: list[int], texts: list[str]) -> str:
    """Lay out arguments by their places, with nothing where a default stands."""
    by_place = dict(zip(places, texts, strict=True))
    return ", ".join(by_place.get(place, "undefined") for place in range(max(places, default=-1) + 1))
