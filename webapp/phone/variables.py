"""Which variables are a function's own, and whether each has a value wherever it is read.

CPython stops at a variable without a value; JavaScript would go on with nothing.
"""

import ast
from collections.abc import Callable, Iterator

Missing = Callable[[ast.Name], None]
State = set[str] | None  # None: no way leads here
COMPREHENSIONS = (ast.ListComp, ast.SetComp, ast.DictComp, ast.GeneratorExp)


class Assigned:
    """Follows every way through a function, with the variables that surely have a value on it."""

    def __init__(self, node: ast.FunctionDef, missing: Missing) -> None:
        self.variables = set(bound(node.body))
        self.missing = missing
        self.breaks: list[list[State]] = []
        self.follow(node.body, set(parameters(node.args)))

    def follow(self, nodes: list[ast.stmt], state: State) -> State:
        """Go through statements; give what surely has a value after them."""
        for node in nodes:
            if state is None:
                return None
            step = getattr(self, f"after_{type(node).__name__.lower()}", self.after_other)
            state = step(node, state)
        return state

    def read(self, node: ast.AST | None, state: set[str]) -> None:
        """Look at every variable that an expression reads."""
        for name in loads(node) if node else ():
            if name.id in self.variables and name.id not in state:
                self.missing(name)

    def after_other(self, node: ast.stmt, state: set[str]) -> State:
        """Go through a statement that reads, then binds."""
        self.read(node, state)
        if isinstance(node, ast.Return | ast.Raise):
            return None
        targets = node.targets if isinstance(node, ast.Assign) else []
        return state | set(bound([ast.Expr(target) for target in targets])) if targets else state

    def after_augassign(self, node: ast.AugAssign, state: set[str]) -> State:
        """Read what is worked on, too."""
        self.read(node, state)
        if isinstance(node.target, ast.Name):
            self.read(ast.copy_location(ast.Name(node.target.id, ast.Load()), node), state)
        return state

    def after_annassign(self, node: ast.AnnAssign, state: set[str]) -> State:
        """Leave the annotation aside; without a value nothing is bound."""
        self.read(node.value, state)
        self.read(node.target, state)
        return state | set(bound([ast.Expr(node.target)])) if node.value else state

    def after_if(self, node: ast.If, state: set[str]) -> State:
        """Go both ways."""
        self.read(node.test, state)
        return met([self.follow(node.body, state), self.follow(node.orelse, state)])

    def after_while(self, node: ast.While, state: set[str]) -> State:
        """Go round; what is bound inside is not sure after it, but at the breaks of an endless one."""
        self.read(node.test, state)
        self.breaks.append([])
        self.follow(node.body, state)
        ends = self.breaks.pop()
        return met(ends) if is_endless(node) else state

    def after_for(self, node: ast.For, state: set[str]) -> State:
        """Go round with the loop's own variables, which are not sure after it: there may be no rows."""
        self.read(node.iter, state)
        self.breaks.append([])
        self.follow(node.body, state | set(bound([ast.Expr(node.target)])))
        self.breaks.pop()
        return state

    def after_break(self, _: ast.Break, state: set[str]) -> State:
        """Leave the loop with what has a value here."""
        self.breaks[-1].append(state)
        return None

    def after_continue(self, _: ast.Continue, state: set[str]) -> State:
        """Go round again."""
        return None

    def after_try(self, node: ast.Try, state: set[str]) -> State:
        """Go through, or from before it to each handler; the error's name ends with its handler."""
        ways = [self.follow(node.body, state)]
        for handler in node.handlers:
            name = {handler.name} if handler.name else set()
            way = self.follow(handler.body, state | name)
            ways.append(None if way is None else way - name)
        return met(ways)


def met(ways: list[State]) -> State:
    """Give what surely has a value where ways meet."""
    open_ways = [way for way in ways if way is not None]
    return set.intersection(*open_ways) if open_ways else None


def is_endless(node: ast.While) -> bool:
    """Tell whether only a break, a return or an error leaves a loop."""
    return isinstance(node.test, ast.Constant) and node.test.value is True


def ends(body: list[ast.stmt]) -> bool:
    """Tell whether statements never run through to what follows them."""
    last = body[-1]
    if isinstance(last, ast.If):
        return bool(last.orelse) and ends(last.body) and ends(last.orelse)
    if isinstance(last, ast.Try):
        return ends(last.body) and all(ends(handler.body) for handler in last.handlers)
    if isinstance(last, ast.While):
        return is_endless(last) and not any(isinstance(inner, ast.Break) for inner in ast.walk(last))
    return isinstance(last, ast.Return | ast.Raise)


def parameters(found: ast.arguments) -> list[str]:
    """Give the names of a function's parameters."""
    return [argument.arg for argument in (*found.posonlyargs, *found.args, *found.kwonlyargs)]


def bound(nodes: list[ast.stmt]) -> list[str]:
    """Give the variables that statements bind, in their order; lambdas and comprehensions have their own."""
    found: dict[str, None] = {}
    for inner in (inner for node in nodes for inner in own_nodes(node)):
        if isinstance(inner, ast.Name) and isinstance(inner.ctx, ast.Store):
            found[inner.id] = None
        elif isinstance(inner, ast.ExceptHandler) and inner.name:
            found[inner.name] = None
    return list(found)


def own_nodes(node: ast.AST) -> Iterator[ast.AST]:
    """Walk through a node without entering what has variables of its own."""
    yield node
    if not isinstance(node, (ast.Lambda, *COMPREHENSIONS)):
        for inner in ast.iter_child_nodes(node):
            yield from own_nodes(inner)


def loads(node: ast.AST) -> Iterator[ast.Name]:
    """Give the names that are read inside, without those that belong to a comprehension or a lambda."""
    if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load):
        yield node
    own: list[str] = []
    if isinstance(node, ast.Lambda):
        own = parameters(node.args)
    if isinstance(node, COMPREHENSIONS):
        own = [name for clause in node.generators for name in bound([ast.Expr(clause.target)])]
        yield from loads(node.generators[0].iter)
    for inner in ast.iter_child_nodes(node):
        yield from (name for name in loads(inner) if name.id not in own)
