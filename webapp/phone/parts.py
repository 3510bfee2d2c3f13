"""Walks the parse tree of the macros that draw all data, and hands it to the phone as plain JSON."""

from collections.abc import Iterable
from typing import Any, TypeAlias

from jinja2 import Environment, nodes

Path: TypeAlias = list[str]
Tree: TypeAlias = list[Any]
Macros: TypeAlias = dict[str, nodes.Macro]

# Jinja looks for an attribute before it looks for a key: a view's dict would hand out its own method.
METHODS = frozenset(name for name in dir(dict) if not name.startswith("_"))

INSTEAD: dict[type[nodes.Node], str] = {
    nodes.Filter: "a filter: let the view hold the finished text",
    nodes.Test: "a test: let the view hold a yes or no, and ask `if a.b`",
    nodes.Compare: "a comparison: let the view hold a yes or no, and ask `if a.b`",
    nodes.Not: "`not`: write `{% if a.b %}{% else %}…{% endif %}`",
    nodes.And: "`and`: put one `if` inside the other, or let the view hold a yes or no",
    nodes.Or: "`or`: let the view hold a yes or no",
    nodes.CondExpr: "`a if b else c`: write `{% if b %}{{ a }}{% else %}{{ c }}{% endif %}`",
    nodes.Const: "a constant: write it as text of the template",
    nodes.Concat: "`~`: put two `{{ … }}` side by side",
    nodes.Getitem: "`a[b]`: write `a.b`; what stands at a place in a list belongs in the view under a name",
    nodes.List: "a list: let the view hold it",
    nodes.Tuple: "a tuple: let the view hold a list of dicts",
    nodes.Dict: "a dict: let the view hold it",
    nodes.Assign: "`set`: let the view hold it under that name",
    nodes.AssignBlock: "`set`: let the view hold it under that name",
    nodes.Include: "`include`: call a macro of this file",
    nodes.Import: "`import`: call a macro of this file",
    nodes.FromImport: "`import`: call a macro of this file",
    nodes.CallBlock: "`call`: call a macro with `{{ name(a.b) }}`",
    nodes.FilterBlock: "`filter`: let the view hold the finished text",
    nodes.With: "`with`: hand the part to a macro with `{{ name(a.b) }}`",
    nodes.Macro: "a macro inside another: put it beside the others",
    nodes.Block: "`block`: this file holds macros and nothing else",
    nodes.Extends: "`extends`: this file holds macros and nothing else",
}


class PartsError(ValueError):
    """What a part may not say, with the file, the line, and what to write instead."""

    def __init__(self, file: str, line: int, reason: str) -> None:
        super().__init__(f"{file}:{line}: {reason}")
        self.file, self.line, self.reason = file, line, reason


def parts(environment: Environment, name: str = "parts.html") -> dict[str, dict[str, Any]]:
    """Return each macro of a file as {"args": [name], "body": tree}.

    A tree is a list of text and of ["put", path], ["call", macro, path…], ["if", path, yes, no] and
    ["for", name, path, body]; a path is a list of names. Raise PartsError for anything else.
    """
    if environment.loader is None:
        raise PartsError(name, 0, "there is no folder of templates to read it from")
    source, file, _ = environment.loader.get_source(environment, name)
    return _Walk(file or name).file(environment.parse(source, name))


class _Walk:
    """One walk over one file's parse tree."""

    def __init__(self, file: str) -> None:
        self.name = file
        self.macros: Macros = {}

    def refuse(self, node: nodes.Node, reason: str) -> PartsError:
        return PartsError(self.name, node.lineno, reason)

    def outside(self, node: nodes.Node) -> PartsError:
        """Refuse a node that is outside the subset, and say what is inside it."""
        known = "text, {{ a.b }}, {{ macro(a.b) }}, if, elif, else and for"
        instead = INSTEAD.get(type(node), f"{type(node).__name__}: parts know {known}")
        return self.refuse(node, f"outside what parts may say: {instead}")

    def file(self, template: nodes.Template) -> dict[str, dict[str, Any]]:
        for node in template.body:
            if isinstance(node, nodes.Macro):
                self.declare(node)
            elif not _blank(node):
                raise self.refuse(node, "this file holds macros and nothing else: put it inside a macro")
        return {name: self.macro(node) for name, node in self.macros.items()}

    def declare(self, node: nodes.Macro) -> None:
        if node.name in self.macros:
            raise self.refuse(node, f"a second macro called {node.name}: give it another name")
        if node.defaults:
            raise self.refuse(node, "a default: hand over every argument")
        self.macros[node.name] = node

    def macro(self, node: nodes.Macro) -> dict[str, Any]:
        arguments = [argument.name for argument in node.args]
        return {"args": arguments, "body": self.body(node.body, frozenset(arguments))}

    def body(self, statements: Iterable[nodes.Node], known: frozenset[str]) -> Tree:
        tree: Tree = []
        for statement in statements:
            for branch in self.statement(statement, known):
                _grow(tree, branch)
        return tree

    def statement(self, node: nodes.Node, known: frozenset[str]) -> Tree:
        if isinstance(node, nodes.Output):
            return [self.output(said, known) for said in node.nodes]
        if isinstance(node, nodes.If):
            return [self.condition(node, known)]
        if isinstance(node, nodes.For):
            return [self.loop(node, known)]
        raise self.outside(node)

    def output(self, node: nodes.Node, known: frozenset[str]) -> Any:
        if isinstance(node, nodes.TemplateData):
            return node.data
        if isinstance(node, nodes.Call):
            return self.call(node, known)
        return ["put", self.path(node, known)]

    def condition(self, node: nodes.If, known: frozenset[str]) -> Tree:
        """Return an if; each elif is an if inside the else before it."""
        no = self.body(node.else_, known)
        for other in reversed(node.elif_):
            no = [["if", self.path(other.test, known), self.body(other.body, known), no]]
        return ["if", self.path(node.test, known), self.body(node.body, known), no]

    def loop(self, node: nodes.For, known: frozenset[str]) -> Tree:
        if not isinstance(node.target, nodes.Name):
            raise self.refuse(node, "a loop has one name: let the view hold a list of dicts")
        if node.test or node.else_ or node.recursive:
            raise self.refuse(node, "a loop is plain: no `if`, `else` or `recursive`; use an `if` about it or in it")
        name = node.target.name
        return ["for", name, self.path(node.iter, known), self.body(node.body, known | {name})]

    def call(self, node: nodes.Call, known: frozenset[str]) -> Tree:
        macro = self.called(node, known)
        if node.kwargs or node.dyn_args or node.dyn_kwargs:
            raise self.refuse(node, f"arguments by name or with a star: write {macro.name}(a, b)")
        if len(node.args) != len(macro.args):
            raise self.refuse(node, f"{macro.name} takes {len(macro.args)}, not {len(node.args)}: hand over all")
        return ["call", macro.name, *(self.path(argument, known) for argument in node.args)]

    def called(self, node: nodes.Call, known: frozenset[str]) -> nodes.Macro:
        """Return the macro that is called; a name of the scope would hide it."""
        if isinstance(node.node, nodes.Name) and node.node.name not in known and node.node.name in self.macros:
            return self.macros[node.node.name]
        raise self.refuse(node, "a call of what is no macro of this file: let the view hold what it gives")

    def path(self, node: nodes.Node, known: frozenset[str]) -> Path:
        if isinstance(node, nodes.Getattr):
            return [*self.path(node.node, known), self.attribute(node)]
        if not isinstance(node, nodes.Name):
            raise self.outside(node)
        if node.name not in known:
            raise self.refuse(node, f"{node.name} is no argument of the macro and no name of a loop about it")
        return [node.name]

    def attribute(self, node: nodes.Getattr) -> str:
        if node.attr in METHODS:
            raise self.refuse(node, f".{node.attr} is a method of every dict: give it another name in the view")
        return node.attr


def _grow(tree: Tree, branch: Any) -> None:
    """Add a branch; text joins the text before it."""
    if isinstance(branch, str) and tree and isinstance(tree[-1], str):
        tree[-1] += branch
    else:
        tree.append(branch)


def _blank(node: nodes.Node) -> bool:
    return isinstance(node, nodes.Output) and all(
        isinstance(part, nodes.TemplateData) and not part.data.strip() for part in node.nodes
    )
