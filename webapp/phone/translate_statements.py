"""Statements, each on the line that it has in its source."""

import ast

from webapp.phone.subset import OPERATORS
from webapp.phone.translate_expressions import Expressions

FROZEN = "a new value of the class: values are frozen"


class Statements(Expressions):
    """Adds statements to the expressions."""

    def put(self, node: ast.stmt, text: str) -> None:
        """Write a statement at its line."""
        self.out.put(node.lineno, self.depth, text)

    def block(self, nodes: list[ast.stmt]) -> None:
        """Translate statements that stand one step further in."""
        self.depth += 1
        for node in nodes:
            self.statement(node)
        self.depth -= 1

    def statement(self, node: ast.stmt) -> None:
        """Translate any statement."""
        name = f"do_{type(node).__name__.lower()}"
        if not hasattr(self, name):
            raise self.outside(node)
        getattr(self, name)(node)

    def do_pass(self, node: ast.Pass) -> None:
        """Translate nothing."""

    def do_break(self, node: ast.Break) -> None:
        """Translate break."""
        self.put(node, "break;")

    def do_continue(self, node: ast.Continue) -> None:
        """Translate continue."""
        self.put(node, "continue;")

    def do_expr(self, node: ast.Expr) -> None:
        """Translate an expression that is a statement; docstrings stay behind."""
        if isinstance(node.value, ast.Constant):
            return
        base = base_call(node.value) if self.making else None
        self.put(node, f"super.__init__({self.by_position(base)});" if base else f"{self.expression(node.value)};")

    def do_return(self, node: ast.Return) -> None:
        """Translate return."""
        self.put(node, f"return {self.expression(node.value) if node.value else 'null'};")

    def do_assign(self, node: ast.Assign) -> None:
        """Translate an assignment."""
        if len(node.targets) > 1:
            raise self.refused(node, "one value for several targets", "an assignment for each")
        self.assign(node, node.targets[0], node.value)

    def do_annassign(self, node: ast.AnnAssign) -> None:
        """Translate an annotated assignment; without a value it only speaks of a type."""
        if node.value is not None:
            self.assign(node, node.target, node.value)

    def assign(self, node: ast.stmt, target: ast.expr, value: ast.expr) -> None:
        """Translate the assignment of a value to a target."""
        if isinstance(value, ast.Tuple) and is_flat(target, value):
            # Nothing is to be checked where a tuple of names meets a tuple of as many values.
            text = f"{self.target(target)} = [{', '.join(self.expression(item) for item in value.elts)}]"
        elif isinstance(target, ast.Attribute):
            text = f"{self.own_attribute(target)} = {self.expression(value)}"
        elif isinstance(target, ast.Subscript):
            text = self.put_at(target, self.expression(value))
        elif isinstance(target, ast.Name):
            text = f"{self.target(target)} = {self.expression(value)}"
        else:
            text = self.unpacked(target, self.expression(value))
        self.put(node, f"{text};")

    def own_attribute(self, target: ast.Attribute) -> str:
        """Translate an attribute that is set: an error's own, while it is made, and no other."""
        owner = target.value.id if isinstance(target.value, ast.Name) else ""
        if not self.making or owner != self.making:
            raise self.refused(target, f"setting the attribute {target.attr}", FROZEN)
        return f"{self.local(owner)}.{target.attr}"

    def put_at(self, target: ast.Subscript, value: str) -> str:
        """Translate the setting of an item."""
        if isinstance(target.slice, ast.Slice | ast.Tuple):
            raise self.refused(target, f"setting {ast.unparse(target)}", "one index, or a new list")
        return f"$.put({value}, {self.expression(target.value)}, {self.expression(target.slice)})"

    def do_augassign(self, node: ast.AugAssign) -> None:
        """Translate an assignment that works on what is there."""
        name = OPERATORS.get(type(node.op))
        if name is None:
            raise self.refused(node, "this operator before =", "+= -= *= /= //= %=")
        if isinstance(node.target, ast.Attribute):
            raise self.refused(node, f"setting the attribute {node.target.attr}", FROZEN)
        name = {"add": "grow", "mul": "regrow"}.get(name, name)  # lists change in place
        if isinstance(node.target, ast.Name):
            target = self.target(node.target)
            self.put(node, f"{target} = $.{name}({target}, {self.expression(node.value)});")
        else:
            self.put(node, f"{self.augmented_item(node.target, name, node.value)};")

    def augmented_item(self, target: ast.Subscript, name: str, value: ast.expr) -> str:
        """Translate an item that works on what is there; its place is read twice, so it may not do anything."""
        if any(isinstance(inner, ast.Call) for inner in ast.walk(target)):
            raise self.refused(target, "a call inside the target", "the list and the index as names first")
        loaded = f"$.at({self.expression(target.value)}, {self.expression(target.slice)})"
        return self.put_at(target, f"$.{name}({loaded}, {self.expression(value)})")

    def do_if(self, node: ast.If) -> None:
        """Translate if, elif and else."""
        self.put(node, f"if ({self.condition(node.test)}) {{")
        self.branches(node)

    def branches(self, node: ast.If) -> None:
        """Translate what follows an opened branch."""
        self.block(node.body)
        rest = node.orelse
        if len(rest) == 1 and isinstance(rest[0], ast.If):
            self.put(rest[0], f"}} else if ({self.condition(rest[0].test)}) {{")
            self.branches(rest[0])
            return
        if rest:
            self.out.add("} else {")
            self.block(rest)
        self.out.add("}")

    def do_while(self, node: ast.While) -> None:
        """Translate while."""
        self.looped(node, f"while ({self.condition(node.test)}) {{")

    def do_for(self, node: ast.For) -> None:
        """Translate for."""
        self.looped(node, self.loop(node.target, node.iter, self.taken_apart(node.target, node.iter)))

    def looped(self, node: ast.For | ast.While, head: str) -> None:
        """Translate what a loop goes round."""
        if node.orelse:
            raise self.refused(node, "else after a loop", "a flag or a function that returns")
        self.put(node, head)
        self.block(node.body)
        self.out.add("}")

    def do_raise(self, node: ast.Raise) -> None:
        """Translate raise, with what it comes from."""
        if node.exc is None:
            raise self.refused(node, "raise without an error", "raise and the name that `except … as` gave")
        text = self.raised(node.exc)
        if node.cause is not None and not (isinstance(node.cause, ast.Constant) and node.cause.value is None):
            text = f"$.from({text}, {self.expression(node.cause)})"
        self.put(node, f"throw {text};")

    def raised(self, node: ast.expr) -> str:
        """Translate what is raised: a caught error, one that is made here, or a class alone."""
        if isinstance(node, ast.Name) and self.is_local(node.id):
            return self.name(node)
        self.error_class(node.func if isinstance(node, ast.Call) else node)
        return self.expression(node if isinstance(node, ast.Call) else ast.copy_location(ast.Call(node, [], []), node))

    def do_try(self, node: ast.Try) -> None:
        """Translate try with its handlers."""
        if node.orelse or node.finalbody:
            raise self.refused(node, "else or finally after try", "the statements before or after it")
        self.put(node, "try {")
        self.block(node.body)
        caught = self.fresh()
        self.out.add(f"}} catch ({caught}) {{")
        for number, handler in enumerate(node.handlers):
            self.handler(handler, caught, "else " if number else "")
        self.out.add(f"else throw {caught}; }}")

    def handler(self, node: ast.ExceptHandler, caught: str, start: str) -> None:
        """Translate one handler to a branch on the error's class."""
        if node.type is None:
            raise self.refused(node, "except without a class", "the error that is expected")
        classes = node.type.elts if isinstance(node.type, ast.Tuple) else [node.type]
        test = " || ".join(f"{caught} instanceof {self.error_class(one)}" for one in classes)
        named = f" {self.local(node.name)} = {caught};" if node.name else ""
        self.out.put(node.lineno, self.depth, f"{start}if ({test}) {{{named}")
        self.block(node.body)
        self.out.add("}")


def is_flat(target: ast.expr, value: ast.Tuple) -> bool:
    """Tell whether a target is a tuple of as many names as there are values."""
    if not isinstance(target, ast.Tuple) or len(target.elts) != len(value.elts):
        return False
    starred = any(isinstance(item, ast.Starred) for item in value.elts)
    return not starred and all(isinstance(item, ast.Name) for item in target.elts)


def base_call(node: ast.expr) -> ast.Call | None:
    """Give the call when a node is `super().__init__(…)`."""
    found = isinstance(node, ast.Call) and ast.unparse(node.func) == "super().__init__"
    return node if found and isinstance(node, ast.Call) else None
