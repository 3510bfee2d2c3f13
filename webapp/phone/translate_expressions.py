"""Literals, operators, displays, subscripts, f-strings and lambdas."""

import ast
import json

from webapp.phone.refused import Refused
from webapp.phone.subset import BUILTINS, OPERATORS, OUTSIDE
from webapp.phone.translate_calls import is_text
from webapp.phone.translate_truth import Truth, is_not
from webapp.phone.variables import parameters

SAFE = 2**53 - 1
POWER = "the number itself, or a loop that multiplies: with a negative exponent a power is a float"


class Expressions(Truth):
    """Adds all other expressions to the conditions."""

    def expression(self, node: ast.expr) -> str:
        """Translate any expression."""
        name = f"on_{type(node).__name__.lower()}"
        if not hasattr(self, name):
            raise self.outside(node)
        return str(getattr(self, name)(node))

    def outside(self, node: ast.AST) -> Refused:
        """Make the error for a node that the subset does not have."""
        name = type(node).__name__
        found, instead = OUTSIDE.get(name, (name, "what DEVELOPERS.md lists as the core's subset"))
        return self.refused(node, found, instead)

    def on_constant(self, node: ast.Constant) -> str:
        """Translate a literal."""
        value = node.value
        if value is None or isinstance(value, bool):
            return {None: "null", True: "true", False: "false"}[value]
        if isinstance(value, int):
            return str(value) if value <= SAFE else f"{value}n"
        if isinstance(value, str):
            return self.text(node, value)
        found = "a float" if isinstance(value, float) else f"the literal {value!r}"
        raise self.refused(node, found, "an int, a Fraction or a text")

    def text(self, node: ast.AST, value: str) -> str:
        """Translate a text."""
        if any("\ud800" <= letter <= "\udfff" for letter in value):
            raise self.refused(node, "half of a surrogate pair", "a whole code point")
        return json.dumps(value, ensure_ascii=False)

    def on_name(self, node: ast.Name) -> str:
        """Translate the reading of a name."""
        if node.id not in BUILTINS or not self.is_builtin(node.id):
            return self.name(node)
        found = BUILTINS[node.id]
        if not found.value:
            raise self.refused(node, f"the builtin {node.id} as a value", "a lambda that calls it")
        return f"$.{found.runtime or node.id}"

    def on_binop(self, node: ast.BinOp) -> str:
        """Translate an operator with two sides."""
        name = OPERATORS.get(type(node.op))
        if name is None:
            wanted = POWER if isinstance(node.op, ast.Pow) else "+ - * / // %, or {**a, **b} for two dicts"
            raise self.refused(node, f"the operator of {ast.unparse(node)}", wanted)
        if name == "div" and is_whole(node.left) and is_whole(node.right):
            raise self.refused(node, "a division of two ints, which is a float", "Fraction(a, b) or //")
        if name == "mod" and (is_text(node.left) or isinstance(node.left, ast.JoinedStr)):
            raise self.refused(node, "text % values", "an f-string")
        return f"$.{name}({self.expression(node.left)}, {self.expression(node.right)})"

    def on_unaryop(self, node: ast.UnaryOp) -> str:
        """Translate a sign or a not."""
        if is_not(node):
            return self.condition(node)
        if not isinstance(node.op, ast.USub):
            raise self.refused(node, f"the sign of {ast.unparse(node)}", "the value itself")
        text = self.expression(node.operand)
        plain = is_whole(node.operand) and text.isdigit() and text != "0"
        return f"-{text}" if plain else f"$.neg({text})"

    def on_joinedstr(self, node: ast.JoinedStr) -> str:
        """Translate an f-string."""
        return f"`{''.join(self.piece(part) for part in node.values)}`"

    def piece(self, node: ast.expr) -> str:
        """Translate one piece of an f-string."""
        if isinstance(node, ast.Constant):
            text = self.text(node, str(node.value))[1:-1].replace('\\"', '"')
            return text.replace("`", "\\`").replace("${", "\\${")
        if isinstance(node, ast.FormattedValue) and node.conversion == -1 and node.format_spec is None:
            return f"${{$.str({self.expression(node.value)})}}"
        raise self.refused(node, "a format or a conversion in an f-string", "a function that makes the text")

    def on_list(self, node: ast.List) -> str:
        """Translate a list."""
        return f"[{', '.join(self.argument(item) for item in node.elts)}]"

    def on_tuple(self, node: ast.Tuple) -> str:
        """Translate a tuple."""
        return f"$.tup({', '.join(self.argument(item) for item in node.elts)})"

    def on_dict(self, node: ast.Dict) -> str:
        """Translate a dict."""
        made = "new Map()"
        for key, value in zip(node.keys, node.values, strict=True):
            text = self.expression(value) if key is None else f"{self.key(key)}, {self.expression(value)}"
            made = f"$.mixed({made}, {text})" if key is None else f"{made}.set({text})"
        return made

    def on_subscript(self, node: ast.Subscript) -> str:
        """Translate a subscript or a slice."""
        owner, index = self.expression(node.value), node.slice
        if isinstance(index, ast.Tuple):
            raise self.refused(node, "a tuple as an index", "one index, or a key that is text")
        if not isinstance(index, ast.Slice):
            return f"$.at({owner}, {self.expression(index)})"
        if index.step is not None:
            raise self.refused(node, "a slice with a step", "reversed(…) or a comprehension over range(…)")
        low = self.expression(index.lower) if index.lower else "null"
        high = f", {self.expression(index.upper)}" if index.upper else ""
        return f"$.slice({owner}, {low}{high})"

    def on_lambda(self, node: ast.Lambda) -> str:
        """Translate a lambda."""
        if node.args.defaults or node.args.kwonlyargs or node.args.vararg or node.args.kwarg:
            wanted = "a function at the top of the module"
            raise self.refused(node, "a lambda with defaults, stars or keywords", wanted)
        names = parameters(node.args)
        for name in names:
            self.check_name(node, name)
        with self.scope(set(names)):
            return f"(({', '.join(map(self.local, names))}) => {self.expression(node.body)})"


def is_whole(node: ast.expr) -> bool:
    """Tell whether a node is a whole number as it stands."""
    return isinstance(node, ast.Constant) and isinstance(node.value, int)
