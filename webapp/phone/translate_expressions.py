"""Expressions."""

import ast
import json

from webapp.phone.declared import signature
from webapp.phone.subset import BUILTINS, COMPARISONS, METHODS, OPERATORS, OUTSIDE, TRUTHS, js_name
from webapp.phone.translate_calls import Calls

SAFE = 2**53 - 1


class Expressions(Calls):
    """Adds all other expressions to the calls."""

    def expression(self, node: ast.expr) -> str:
        """Translate any expression."""
        translate = getattr(self, f"on_{type(node).__name__.lower()}", None)
        if translate is None:
            self.outside(node)
        return str(translate(node))

    def outside(self, node: ast.AST) -> None:
        """Refuse a node that the subset does not have."""
        name = type(node).__name__
        found, instead = OUTSIDE.get(name, (name, "what DEVELOPERS.md lists as the core's subset"))
        self.refuse(node, found, instead)

    def on_constant(self, node: ast.Constant) -> str:
        """Translate a literal."""
        value = node.value
        if value is None or isinstance(value, bool):
            return {None: "null", True: "true", False: "false"}[value]
        if isinstance(value, int):
            return str(value) if value <= SAFE else f"{value}n"
        if isinstance(value, str):
            return json.dumps(value, ensure_ascii=False)
        found = "a float" if isinstance(value, float) else f"the literal {value!r}"
        self.refuse(node, found, "an int, a Fraction or a text")

    def on_name(self, node: ast.Name) -> str:
        """Translate the reading of a name."""
        if node.id in BUILTINS and self.is_builtin(node.id):
            found = BUILTINS[node.id]
            if not found.value:
                self.refuse(node, f"the builtin {node.id} as a value", "a lambda that calls it")
            return f"$.{found.runtime or node.id}"
        return self.name(node)

    def on_binop(self, node: ast.BinOp) -> str:
        """Translate an operator with two sides."""
        name = OPERATORS.get(type(node.op))
        if name is None:
            found = ast.unparse(node)
            self.refuse(node, f"the operator in {found}", "+ - * / // %, or {**a, **b} for two dicts")
        if name == "div" and all(isinstance(s, ast.Constant) and isinstance(s.value, int) for s in (node.left, node.right)):
            self.refuse(node, "a division of two ints, which is a float", "Fraction(a, b) or //")
        if name == "mod" and isinstance(node.left, ast.Constant | ast.JoinedStr) and not isinstance(node.left.value if isinstance(node.left, ast.Constant) else "", int):
            self.refuse(node, "text % values", "an f-string")
        return f"$.{name}({self.expression(node.left)}, {self.expression(node.right)})"

    def on_unaryop(self, node: ast.UnaryOp) -> str:
        """Translate a sign or a not."""
        if isinstance(node.op, ast.Not):
            return self.condition(node)
        if not isinstance(node.op, ast.USub):
            self.refuse(node, f"the sign in {ast.unparse(node)}", "the value itself")
        text = self.expression(node.operand)
        return f"-{text}" if isinstance(node.operand, ast.Constant) and text.isdigit() and text != "0" else f"$.neg({text})"

    def is_truth(self, node: ast.expr) -> bool:
        """Tell whether an expression is known to give True or False."""
        if isinstance(node, ast.BoolOp):
            return all(self.is_truth(value) for value in node.values)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            return node.func.id in TRUTHS and self.is_builtin(node.func.id)
        if isinstance(node, ast.Constant):
            return isinstance(node.value, bool)
        return isinstance(node, ast.Compare) or (isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not))

    def condition(self, node: ast.expr) -> str:
        """Translate an expression of which only the truth is wanted."""
        if isinstance(node, ast.BoolOp):
            sign = " && " if isinstance(node.op, ast.And) else " || "
            return sign.join(self.operand(value) for value in node.values)
        if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
            return f"!{self.operand(node.operand)}"
        if isinstance(node, ast.Compare):
            return self.comparison(node)
        return self.expression(node) if self.is_truth(node) else f"$.t({self.expression(node)})"

    def operand(self, node: ast.expr) -> str:
        """Translate a condition that is a part of a greater one."""
        text = self.condition(node)
        bare = isinstance(node, ast.Compare) and len(node.ops) == 1 and "===" not in text and "!==" not in text
        return f"({text})" if isinstance(node, ast.BoolOp | ast.Compare) and not bare else text

    def on_boolop(self, node: ast.BoolOp) -> str:
        """Translate `and` or `or` that gives one of its values."""
        if all(self.is_truth(value) for value in node.values[:-1]):
            sign = " && " if isinstance(node.op, ast.And) else " || "
            return f"({sign.join([*(self.operand(v) for v in node.values[:-1]), self.expression(node.values[-1])])})"
        name = "and" if isinstance(node.op, ast.And) else "or"
        text = self.expression(node.values[-1])
        for value in reversed(node.values[:-1]):
            text = f"$.{name}({self.expression(value)}, () => {text})"
        return text

    def on_compare(self, node: ast.Compare) -> str:
        """Translate a comparison as a value."""
        text = self.comparison(node)
        return f"({text})"

    def comparison(self, node: ast.Compare) -> str:
        """Translate a comparison, a chain of them with each middle worked once."""
        left, middle = node.left, node.comparators[0]
        if len(node.ops) == 1:
            return self.pair(node.ops[0], left, middle, self.expression(left), self.asked(node.ops[0], middle))
        rest = ast.copy_location(ast.Compare(middle, node.ops[1:], node.comparators[1:]), node)
        if isinstance(middle, ast.Constant | ast.Name):
            first = self.pair(node.ops[0], left, middle, self.expression(left), self.asked(node.ops[0], middle))
            return f"{first} && {self.comparison(rest)}"
        one, two = self.fresh(), self.fresh()
        first = self.pair(node.ops[0], left, middle, one, two)
        rest.left = ast.copy_location(ast.Name(two, ast.Load()), middle)
        with self.scope({two}):
            return f"(({one}, {two}) => {first} && {self.comparison(rest)})({self.expression(left)}, {self.expression(middle)})"

    def asked(self, op: ast.cmpop, node: ast.expr) -> str:
        """Translate the right side of a comparison; `in` walks through it."""
        return self.walked(node, at_once=False) if isinstance(op, ast.In | ast.NotIn) else self.expression(node)

    def pair(self, op: ast.cmpop, left: ast.expr, right: ast.expr, one: str, two: str) -> str:
        """Translate one comparison of two sides that are translated already."""
        sign = "===" if isinstance(op, ast.Eq | ast.Is) else "!=="
        if isinstance(op, ast.Is | ast.IsNot):
            if not (isinstance(right, ast.Constant) and (right.value is None or isinstance(right.value, bool))):
                self.refuse(left, "`is` between values", "== or !=")
            return f"{one} {sign} {two}"
        if isinstance(op, ast.Eq | ast.NotEq) and any(is_text(side) for side in (left, right)):
            return f"{one} {sign} {two}"
        return f"{'!' if isinstance(op, ast.NotIn) else ''}$.{COMPARISONS[type(op)]}({one}, {two})"

    def on_ifexp(self, node: ast.IfExp) -> str:
        """Translate a conditional expression."""
        return f"({self.condition(node.test)} ? {self.expression(node.body)} : {self.expression(node.orelse)})"

    def on_joinedstr(self, node: ast.JoinedStr) -> str:
        """Translate an f-string."""
        return f"`{''.join(self.piece(part) for part in node.values)}`"

    def piece(self, node: ast.expr) -> str:
        """Translate one piece of an f-string."""
        if isinstance(node, ast.Constant):
            text = json.dumps(node.value, ensure_ascii=False)[1:-1].replace('\\"', '"')
            return text.replace("`", "\\`").replace("${", "\\${")
        if isinstance(node, ast.FormattedValue) and node.conversion == -1 and node.format_spec is None:
            return f"${{$.str({self.expression(node.value)})}}"
        self.refuse(node, "a format or a conversion in an f-string", "a function that makes the text")

    def on_list(self, node: ast.List) -> str:
        """Translate a list."""
        return f"[{', '.join(self.argument(item) for item in node.elts)}]"

    def on_tuple(self, node: ast.Tuple) -> str:
        """Translate a tuple."""
        return f"$.tup({', '.join(self.argument(item) for item in node.elts)})"

    def on_dict(self, node: ast.Dict) -> str:
        """Translate a dict."""
        pairs = [
            f"...$.dict({self.expression(value)})" if key is None else f"[{self.key(key)}, {self.expression(value)}]"
            for key, value in zip(node.keys, node.values, strict=True)
        ]
        return f"new Map([{', '.join(pairs)}])" if pairs else "new Map()"

    def on_subscript(self, node: ast.Subscript) -> str:
        """Translate a subscript or a slice."""
        owner, index = self.expression(node.value), node.slice
        if not isinstance(index, ast.Slice):
            return f"$.at({owner}, {self.expression(index)})"
        if index.step is not None:
            self.refuse(node, "a slice with a step", "reversed(…) or a comprehension over range(…)")
        bounds = [self.expression(bound) if bound else "null" for bound in (index.lower, index.upper)]
        return f"$.slice({owner}, {bounds[0]}{'' if bounds[1] == 'null' else ', ' + bounds[1]})"

    def on_lambda(self, node: ast.Lambda) -> str:
        """Translate a lambda."""
        if node.args.defaults or node.args.kwonlyargs or node.args.vararg or node.args.kwarg:
            self.refuse(node, "a lambda with defaults, stars or keywords", "a function at the top of the module")
        names = signature(node.args).names
        for name in names:
            self.check_name(node, name)
        with self.scope(set(names)):
            return f"(({', '.join(map(js_name, names))}) => {self.expression(node.body)})"


def is_text(node: ast.expr) -> bool:
    """Tell whether a node is a text as it stands."""
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


__all__ = ["METHODS", "Expressions"]
