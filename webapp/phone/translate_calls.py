"""Calls: of functions, classes, builtins, methods, and of functions that a value holds."""

import ast

from webapp.phone.declared import Signature
from webapp.phone.subset import ATTRIBUTES, BUILTINS, KINDS, METHODS, WALKING_METHODS, Builtin, js_name
from webapp.phone.translate_walks import Walks


class Calls(Walks):
    """Adds calls to what is walked through."""

    def on_call(self, node: ast.Call) -> str:
        """Translate a call."""
        if self.is_lazy(node):
            self.refuse(node, f"{ast.unparse(node.func)}() kept or asked", "list(…) round it, or walk through it")
        if any(keyword.arg is None for keyword in node.keywords):
            self.refuse(node, "** in a call", "the arguments by name")
        if isinstance(node.func, ast.Name):
            return self.call_name(node, node.func.id)
        if isinstance(node.func, ast.Attribute):
            return self.call_attribute(node, node.func)
        return f"{self.expression(node.func)}({self.by_position(node)})"

    def call_name(self, node: ast.Call, name: str) -> str:
        """Translate a call of a name."""
        if self.is_local(name):
            return f"{js_name(name)}({self.by_position(node)})"
        if self.is_cast(name):
            return self.expression(node.args[1])
        known = self.known(name)
        if known is None:
            return self.builtin(node, name)
        if known.kind == "fraction":
            return f"new Fraction({self.fraction_parts(node)})"
        if known.kind == "constant":
            return f"{known.text}({self.by_position(node)})"
        if known.kind == "type":
            self.refuse(node, f"a call of the type {name}", "a display or a class of the core")
        made = known.text if known.kind == "function" else f"new {known.text}"
        return self.arranged(node, made, known.signature) if known.signature else f"{made}({self.by_position(node)})"

    def is_cast(self, name: str) -> bool:
        """Tell whether a name is typing's cast."""
        return self.module.imports.get(name) == ("typing", "cast")

    def fraction_parts(self, node: ast.Call) -> str:
        """Translate the arguments of Fraction; a text is refused, for Fraction() takes many that are no length."""
        if any(isinstance(part, ast.Constant | ast.JoinedStr) and not is_whole(part) for part in node.args):
            self.refuse(node, "Fraction of a text", "Fraction of two ints")
        if not 1 <= len(node.args) <= 2:
            self.refuse(node, "this many arguments of Fraction", "one or two ints")
        return self.by_position(node)

    def by_position(self, node: ast.Call) -> str:
        """Translate arguments of which none has a name."""
        if node.keywords:
            self.refuse(node, f"the keyword {node.keywords[0].arg} here", "the argument by its position")
        return ", ".join(self.argument(part) for part in node.args)

    def argument(self, node: ast.expr) -> str:
        """Translate an argument or an item of a display, with its star."""
        return f"...{self.rows(node.value)}" if isinstance(node, ast.Starred) else self.expression(node)

    def arranged(self, node: ast.Call, made: str, signature: Signature) -> str:
        """Translate a call of something whose parameters are known."""
        if any(isinstance(part, ast.Starred) for part in node.args):
            return f"{made}({self.by_position(node)})"
        places = self.places(node, signature)
        parts = [*node.args, *(keyword.value for keyword in node.keywords)]
        texts = [self.expression(part) for part in parts]
        if places != sorted(places) and sum(not isinstance(part, ast.Constant | ast.Name) for part in parts) > 1:
            names = [self.fresh() for _ in parts]
            return f"(({', '.join(names)}) => {made}({in_places(places, names)}))({', '.join(texts)})"
        return f"{made}({in_places(places, texts)})"

    def places(self, node: ast.Call, signature: Signature) -> list[int]:
        """Give the place of each argument among the parameters, in the order in which they are written."""
        if len(node.args) > signature.positional:
            self.refuse(node, f"{len(node.args)} arguments by position", f"at most {signature.positional}")
        places = list(range(len(node.args)))
        for keyword in node.keywords:
            if keyword.arg not in signature.names or signature.names.index(keyword.arg) in places:
                self.refuse(node, f"the keyword {keyword.arg}", f"one of {', '.join(signature.names)}, once")
            places.append(signature.names.index(keyword.arg))
        for name in signature.required:
            if signature.names.index(name) not in places:
                self.refuse(node, f"a call without {name}", "a value for it")
        return places

    def call_attribute(self, node: ast.Call, func: ast.Attribute) -> str:
        """Translate a call of a method, or of a function that a field holds."""
        if func.attr in METHODS:
            return self.method(node, func)
        owner = self.expression(func.value)
        signatures = [found.methods[func.attr] for found in self.members() if func.attr in found.methods]
        if signatures and all(other == signatures[0] for other in signatures):
            return self.arranged(node, f"{owner}.{func.attr}", signatures[0])
        if not signatures and not any(func.attr in found.members for found in self.members()):
            self.refuse(node, f"the unknown method {func.attr}", f"one of {', '.join(sorted(METHODS))}, or the core's own")
        return f"{owner}.{func.attr}({self.by_position(node)})"

    def method(self, node: ast.Call, func: ast.Attribute) -> str:
        """Translate a call of a method of texts, lists or dicts."""
        least, most = METHODS[func.attr]
        if any(isinstance(part, ast.Starred) for part in node.args):
            self.refuse(node, f"a star in {func.attr}()", "the arguments one by one")
        if not least <= len(node.args) <= most:
            wanted = f"{least}" if least == most else f"{least} to {most}"
            self.refuse(node, f"{func.attr}() with {len(node.args)} arguments", f"{wanted}: the subset leaves nothing out")
        if func.attr in WALKING_METHODS and not node.keywords:
            arguments = self.walked(node.args[0])
        else:
            arguments = self.by_position(node)
        return f'$.m({self.expression(func.value)}, "{func.attr}"{arguments and ", "}{arguments})'

    def lazy(self, node: ast.Call) -> str:
        """Translate a call that gives what can only be walked through."""
        if isinstance(node.func, ast.Attribute):
            return self.method(node, node.func)
        return self.builtin(node, node.func.id if isinstance(node.func, ast.Name) else "")

    def builtin(self, node: ast.Call, name: str) -> str:
        """Translate a call of a builtin."""
        if name not in BUILTINS:
            self.refuse(node, f"a call of the unknown name {name}", f"one of {', '.join(BUILTINS)}, or a function of the core")
        found = BUILTINS[name]
        if not found.least <= len(node.args) <= found.most:
            self.refuse(node, f"{name}() with {len(node.args)} arguments", f"{found.least} to {found.most}")
        if name == "isinstance":
            return f"$.isinstance({self.expression(node.args[0])}, {self.kinds(node.args[1])})"
        return f"$.{found.runtime or name}({', '.join(self.builtin_parts(node, name, found))})"

    def builtin_parts(self, node: ast.Call, name: str, found: Builtin) -> list[str]:
        """Translate the arguments of a builtin, those with a name at their places."""
        row = name in ("min", "max") and len(node.args) > 1
        if any(isinstance(part, ast.Starred) for part in node.args) and name != "zip":
            self.refuse(node, f"a star in {name}()", "the list itself")
        if name == "zip":
            parts = [f"[{', '.join(self.zipped(part) for part in node.args)}]"]
        elif row:
            parts = [f"[{', '.join(self.expression(part) for part in node.args)}]"]
        elif found.walks and node.args:
            at_once = name not in ("any", "all", "enumerate")
            parts = [self.walked(node.args[0], at_once=at_once), *(self.expression(part) for part in node.args[1:])]
        else:
            parts = [self.expression(part) for part in node.args]
        for keyword in node.keywords:
            place = dict(found.keywords).get(keyword.arg or "")
            if place is None or place < len(parts):
                self.refuse(node, f"the keyword {keyword.arg} of {name}()", f"{', '.join(dict(found.keywords)) or 'no keyword'}")
        return self.with_keywords(node, found, parts)

    def with_keywords(self, node: ast.Call, found: Builtin, parts: list[str]) -> list[str]:
        """Put the arguments of a builtin that have a name at their places."""
        given = {dict(found.keywords)[keyword.arg or ""]: self.expression(keyword.value) for keyword in node.keywords}
        last = max(given, default=-1)
        return parts + [given.get(place, "undefined") for place in range(len(parts), last + 1)]

    def zipped(self, node: ast.expr) -> str:
        """Translate one of the rows that zip walks through."""
        return self.argument(node) if isinstance(node, ast.Starred) else self.walked(node, at_once=False)

    def kinds(self, node: ast.expr) -> str:
        """Translate the second argument of isinstance."""
        if isinstance(node, ast.Tuple):
            return ", ".join(self.kinds(inner) for inner in node.elts)
        return self.class_name(node)

    def class_name(self, node: ast.expr) -> str:
        """Translate the name of a class where one is asked for."""
        name = node.id if isinstance(node, ast.Name) else ""
        if name in KINDS and self.is_builtin(name):
            return f'"{name}"'
        known = self.known(name)
        if known is None or known.kind not in ("class", "error", "fraction"):
            self.refuse(node, f"{ast.unparse(node)} as a class", f"one of {', '.join(KINDS)}, Fraction, or a class of the core")
        return known.text

    def on_attribute(self, node: ast.Attribute) -> str:
        """Translate the reading of an attribute."""
        found = any(node.attr in other.members for other in self.members())
        if not found and node.attr not in ATTRIBUTES:
            self.check_member(node)
        return f"{self.expression(node.value)}.{node.attr}"


def is_whole(node: ast.expr) -> bool:
    """Tell whether a node is a whole number as it stands."""
    return isinstance(node, ast.Constant) and isinstance(node.value, int)


def in_places(places: list[int], texts: list[str]) -> str:
    """Lay out arguments by their places, with nothing where a default stands."""
    by_place = dict(zip(places, texts, strict=True))
    return ", ".join(by_place.get(place, "undefined") for place in range(max(places, default=-1) + 1))
