"""Comparisons, `and`, `or` and `not`, as values and as conditions."""

import ast

from webapp.phone.subset import COMPARISONS, TRUTHS
from webapp.phone.translate_calls import Calls, is_text


class Truth(Calls):
    """Adds comparisons and conditions to the calls."""

    def is_truth(self, node: ast.expr) -> bool:
        """Tell whether an expression is known to give True or False."""
        if isinstance(node, ast.BoolOp):
            return all(self.is_truth(value) for value in node.values)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            return node.func.id in TRUTHS and self.is_builtin(node.func.id)
        if isinstance(node, ast.Constant):
            return isinstance(node.value, bool)
        return isinstance(node, ast.Compare) or is_not(node)

    def condition(self, node: ast.expr) -> str:
        """Translate an expression of which only the truth is wanted."""
        if isinstance(node, ast.BoolOp):
            return sign(node).join(self.operand(value) for value in node.values)
        if isinstance(node, ast.UnaryOp) and is_not(node):
            return f"!{self.operand(node.operand)}"
        if isinstance(node, ast.Compare):
            return self.comparison(node)
        return self.expression(node) if self.is_truth(node) else f"$.t({self.expression(node)})"

    def operand(self, node: ast.expr) -> str:
        """Translate a condition that is a part of a greater one."""
        text = self.condition(node)
        one_call = text.startswith("$.") and isinstance(node, ast.Compare) and len(node.ops) == 1 and "==" not in text
        return f"({text})" if isinstance(node, ast.BoolOp | ast.Compare) and not one_call else text

    def on_boolop(self, node: ast.BoolOp) -> str:
        """Translate `and` or `or` that gives one of its values."""
        if all(self.is_truth(value) for value in node.values[:-1]):
            texts = [*(self.operand(value) for value in node.values[:-1]), self.expression(node.values[-1])]
            return f"({sign(node).join(texts)})"
        name = "and" if isinstance(node.op, ast.And) else "or"
        text = self.expression(node.values[-1])
        for value in reversed(node.values[:-1]):
            text = f"$.{name}({self.expression(value)}, () => {text})"
        return text

    def on_compare(self, node: ast.Compare) -> str:
        """Translate a comparison as a value."""
        return f"({self.comparison(node)})"

    def comparison(self, node: ast.Compare) -> str:
        """Translate a comparison, a chain of them with each middle worked once."""
        left, middle = node.left, node.comparators[0]
        if len(node.ops) == 1:
            return self.pair(node, self.expression(left), self.right(node))
        rest = ast.copy_location(ast.Compare(middle, node.ops[1:], node.comparators[1:]), node)
        if isinstance(middle, ast.Constant | ast.Name):
            return f"{self.pair(node, self.expression(left), self.right(node))} && {self.comparison(rest)}"
        one, two = self.fresh(), self.fresh()
        rest.left = ast.copy_location(ast.Name(two, ast.Load()), middle)
        with self.scope({two}):
            tail = self.comparison(rest)
        first = self.pair(node, one, two)
        return f"(({one}, {two}) => {first} && {tail})({self.expression(left)}, {self.right(node)})"

    def right(self, node: ast.Compare) -> str:
        """Translate the first right side of a comparison; `in` walks through it."""
        walks = isinstance(node.ops[0], ast.In | ast.NotIn)
        return self.walked(node.comparators[0], at_once=False) if walks else self.expression(node.comparators[0])

    def pair(self, node: ast.Compare, one: str, two: str) -> str:
        """Translate the first comparison of a chain, whose two sides are translated already."""
        op, right = node.ops[0], node.comparators[0]
        same = "===" if isinstance(op, ast.Eq | ast.Is) else "!=="
        if isinstance(op, ast.Is | ast.IsNot):
            if not isinstance(right, ast.Constant):
                return f"{'!' if same == '!==' else ''}$.same({one}, {two})"
            if right.value is not None and not isinstance(right.value, bool):
                raise self.refused(node, f"`is` in {ast.unparse(node)}", "== or !=")
            return f"{one} {same} {two}"
        if isinstance(op, ast.Eq | ast.NotEq) and (is_text(node.left) or is_text(right)):
            return f"{one} {same} {two}"
        return f"{'!' if isinstance(op, ast.NotIn) else ''}$.{COMPARISONS[type(op)]}({one}, {two})"

    def on_ifexp(self, node: ast.IfExp) -> str:
        """Translate a conditional expression."""
        return f"({self.condition(node.test)} ? {self.expression(node.body)} : {self.expression(node.orelse)})"


def is_not(node: ast.expr) -> bool:
    """Tell whether a node is a `not`."""
    return isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not)


def sign(node: ast.BoolOp) -> str:
    """Give JavaScript's sign between conditions."""
    return " && " if isinstance(node.op, ast.And) else " || "
