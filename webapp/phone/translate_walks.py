"""Comprehensions, and whatever else is walked through one by one."""

import ast

from webapp.phone.subset import BUILTINS, LAZY_METHODS
from webapp.phone.translate_names import Names

Comprehension = ast.ListComp | ast.GeneratorExp | ast.DictComp


class Walks(Names):
    """Adds loops' heads and comprehensions to the names."""

    def expression(self, node: ast.expr) -> str:
        """Translate an expression; what translates them all is defined further on."""
        raise NotImplementedError

    def condition(self, node: ast.expr) -> str:
        """Translate an expression of which only the truth is wanted."""
        raise NotImplementedError

    def lazy(self, node: ast.Call) -> str:
        """Translate a call that gives what can only be walked through."""
        raise NotImplementedError

    def is_lazy(self, node: ast.expr) -> bool:
        """Tell whether an expression gives what can only be walked through."""
        if not isinstance(node, ast.Call):
            return False
        if isinstance(node.func, ast.Attribute):
            return node.func.attr in LAZY_METHODS
        name = node.func.id if isinstance(node.func, ast.Name) else ""
        return name in BUILTINS and BUILTINS[name].lazy and self.is_builtin(name)

    def walked(self, node: ast.expr, *, at_once: bool = True) -> str:
        """Translate what is walked through where it stands; a generator that is used up at once becomes a list."""
        if isinstance(node, ast.Call) and self.is_lazy(node):
            return self.lazy(node)
        if at_once and isinstance(node, ast.GeneratorExp):
            return self.comprehension(node)
        return self.expression(node)

    def rows(self, node: ast.expr) -> str:
        """Translate what stands behind `of`: rows made here as they are, others checked when they are met."""
        made_here = self.is_lazy(node) or isinstance(node, ast.List | ast.ListComp | ast.Tuple)
        return self.walked(node) if made_here else f"$.iter({self.walked(node)})"

    def target(self, node: ast.expr) -> str:
        """Translate the target of a loop or an assignment: a name, or a tuple of targets."""
        if isinstance(node, ast.Name):
            self.check_name(node, node.id)
            return self.local(node.id)
        if isinstance(node, ast.Tuple | ast.List):
            return f"[{', '.join(self.target(inner) for inner in node.elts)}]"
        raise self.refused(node, f"the target {ast.unparse(node)}", "a name or a tuple of names")

    def unpacked(self, node: ast.expr, value: str) -> str:
        """Translate the taking apart of a value by a tuple of targets."""
        return f"{self.target(node)} = $.unpack({value}, {shape(node)})"

    def taken_apart(self, target: ast.expr, source: ast.expr) -> str:
        """Translate what stands behind `of` where a target takes each row apart: a dict's items need not be made."""
        if self.fits(target, source) and isinstance(source, ast.Call) and isinstance(source.func, ast.Attribute):
            return f"$.pairs({self.expression(source.func.value)})"
        return self.rows(source)

    def loop(self, target: ast.expr, source: ast.expr, rows: str) -> str:
        """Translate the head of a loop, up to its opening brace and the taking apart of each row."""
        if isinstance(target, ast.Name) or self.fits(target, source):
            return f"for ({self.target(target)} of {rows}) {{"
        row = self.fresh()
        return f"for (const {row} of {rows}) {{ {self.unpacked(target, row)};"

    def fits(self, target: ast.expr, source: ast.expr) -> bool:
        """Tell whether a source is known to give as many as a flat tuple of targets takes."""
        if not isinstance(target, ast.Tuple) or not all(isinstance(inner, ast.Name) for inner in target.elts):
            return False
        if not isinstance(source, ast.Call) or not self.is_lazy(source):
            return False
        if isinstance(source.func, ast.Attribute):
            return source.func.attr == "items" and len(target.elts) == 2
        name = source.func.id if isinstance(source.func, ast.Name) else ""
        stars = any(isinstance(part, ast.Starred) for part in source.args)
        return {"enumerate": 2, "zip": -1 if stars else len(source.args)}.get(name) == len(target.elts)

    def on_listcomp(self, node: ast.ListComp) -> str:
        """Translate a list comprehension."""
        return self.comprehension(node)

    def on_dictcomp(self, node: ast.DictComp) -> str:
        """Translate a dict comprehension."""
        rows, body = self.whole(node, "$out.set({});")
        return f"(($rows) => {{ const $out = new Map(); {body} return $out; }})({rows})"

    def on_generatorexp(self, node: ast.GeneratorExp) -> str:
        """Translate a generator expression that is walked through step by step."""
        rows, body = self.whole(node, "yield {};")
        return f"(function* ($rows) {{ {body} }})({rows})"

    def tested(self, node: ast.GeneratorExp, *, ends: bool) -> str:
        """Translate all() or any() of a generator expression to a loop that ends where the answer is known."""
        test = "if ({}) {{ return true; }}" if ends else "if (!({})) {{ return false; }}"
        rows, body = self.whole(node, test, tested=True)
        return f"(($rows) => {{ {body} return {str(not ends).lower()}; }})({rows})"

    def comprehension(self, node: Comprehension) -> str:
        """Translate a comprehension to a list, the simple ones shortly."""
        first = node.generators[0]
        simple = len(node.generators) == 1 and not first.ifs and not first.is_async and not looks_later(node)
        if simple and (isinstance(first.target, ast.Name) or self.fits(first.target, first.iter)):
            rows = self.taken_apart(first.target, first.iter)
            with self.scope(set(targets(first.target))):
                return f"$.each({rows}, ({self.target(first.target)}) => {self.element(node)})"
        rows, body = self.whole(node, "$out.push({});")
        return f"(($rows) => {{ const $out = []; {body} return $out; }})({rows})"

    def whole(self, node: Comprehension, give: str, *, tested: bool = False) -> tuple[str, str]:
        """Translate a comprehension to its first rows and the body of a function that is called with them."""
        first = node.generators[0]
        rows = self.taken_apart(first.target, first.iter)
        names = dict.fromkeys(name for clause in node.generators for name in targets(clause.target))
        heads: list[str] = []
        with self.scope(set(names)):
            for clause in node.generators:
                if clause.is_async:
                    raise self.refused(node, "async for", "for")
                inner = "$rows" if clause is first else self.taken_apart(clause.target, clause.iter)
                heads.append(self.loop(clause.target, clause.iter, inner))
                heads += [f"if ({self.condition(test)}) {{" for test in clause.ifs]
            given = self.condition(node.elt) if tested and isinstance(node, ast.GeneratorExp) else self.element(node)
            body = f"{' '.join(heads)} {give.format(given)} {'}' * len(heads)}"
        variables = f"let {', '.join(self.local(name) for name in names)}; " if names else ""
        return rows, variables + body

    def element(self, node: Comprehension) -> str:
        """Translate what a comprehension gives for each row."""
        if isinstance(node, ast.DictComp):
            return f"{self.key(node.key)}, {self.expression(node.value)}"
        return self.expression(node.elt)

    def key(self, node: ast.expr) -> str:
        """Translate the key of a dict."""
        text = self.expression(node)
        return text if isinstance(node, ast.Constant) and isinstance(node.value, str) else f"$.toKey({text})"


def shape(node: ast.expr) -> str:
    """Give how many values a tuple of targets takes, or the shapes of its parts where one is a tuple too."""
    if not isinstance(node, ast.Tuple | ast.List):
        return "0"
    if all(isinstance(part, ast.Name) for part in node.elts):
        return str(len(node.elts))
    return f"[{', '.join(shape(part) for part in node.elts)}]"


def targets(node: ast.expr) -> list[str]:
    """Give the names that a target binds."""
    return [inner.id for inner in ast.walk(node) if isinstance(inner, ast.Name)]


def looks_later(node: ast.AST) -> bool:
    """Tell whether something inside could look at a comprehension's variable when it has moved on."""
    return any(isinstance(inner, ast.Lambda | ast.GeneratorExp) for inner in ast.walk(node) if inner is not node)
