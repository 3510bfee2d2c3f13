"""Comprehensions, and whatever else is walked through one by one."""

import ast

from webapp.phone.subset import BUILTINS, LAZY_METHODS, js_name
from webapp.phone.translate_names import Names, own_nodes

Comprehension = ast.ListComp | ast.GeneratorExp | ast.DictComp


class Walks(Names):
    """Adds loops' heads and comprehensions to the names."""

    def expression(self, node: ast.expr) -> str:
        """Translate an expression; what translates them all is defined further on."""
        raise NotImplementedError

    def condition(self, node: ast.expr) -> str:
        """Translate an expression of which only the truth is wanted."""
        raise NotImplementedError

    def is_lazy(self, node: ast.expr) -> bool:
        """Tell whether an expression gives what can only be walked through."""
        if not isinstance(node, ast.Call):
            return False
        if isinstance(node.func, ast.Attribute):
            return node.func.attr in LAZY_METHODS
        name = node.func.id if isinstance(node.func, ast.Name) else ""
        return name in BUILTINS and BUILTINS[name].lazy and self.is_builtin(name)

    def lazy(self, node: ast.Call) -> str:
        """Translate a call that gives what can only be walked through."""
        raise NotImplementedError

    def walked(self, node: ast.expr, *, at_once: bool = True) -> str:
        """Translate what is walked through where it stands, and by nobody else."""
        if isinstance(node, ast.Call) and self.is_lazy(node):
            return self.lazy(node)
        if at_once and isinstance(node, ast.GeneratorExp):
            return self.comprehension(node, self.expression)
        return self.expression(node)

    def rows(self, node: ast.expr) -> str:
        """Translate what stands behind `of`: known rows as they are, others checked when they are met."""
        made_here = self.is_lazy(node) or isinstance(node, ast.List | ast.ListComp | ast.Tuple)
        return self.walked(node) if made_here else f"$.iter({self.walked(node)})"

    def target(self, node: ast.expr) -> str:
        """Translate the target of a loop or an assignment: a name, or a tuple of targets."""
        if isinstance(node, ast.Name):
            self.check_name(node, node.id)
            return js_name(node.id)
        if isinstance(node, ast.Tuple | ast.List):
            return f"[{', '.join(self.target(inner) for inner in node.elts)}]"
        self.refuse(node, "this target", "a name or a tuple of names")

    def unpacked(self, node: ast.expr, value: str) -> str:
        """Translate the taking apart of a value by a tuple of targets."""
        return f"{self.target(node)} = $.unpack({value}, {shape(node)})"

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
        return {"enumerate": 2, "zip": len(source.args)}.get(name) == len(target.elts)

    def on_listcomp(self, node: ast.ListComp) -> str:
        """Translate a list comprehension."""
        return self.comprehension(node, self.expression)

    def on_dictcomp(self, node: ast.DictComp) -> str:
        """Translate a dict comprehension."""
        return f"new Map({self.comprehension(node, self.expression)})"

    def on_generatorexp(self, node: ast.GeneratorExp) -> str:
        """Translate a generator expression that is walked through step by step."""
        return self.whole(node, "function* ", "yield {};", "")

    def comprehension(self, node: Comprehension, _: object = None) -> str:
        """Translate a comprehension to a list, the simple ones shortly."""
        first = node.generators[0]
        short = len(node.generators) == 1 and not first.ifs and not holds_lambda(node)
        if short and (isinstance(first.target, ast.Name) or self.fits(first.target, first.iter)):
            rows = self.rows(first.iter)
            with self.scope(set(targets(first.target))):
                return f"Array.from({rows}, ({self.target(first.target)}) => {self.element(node)})"
        return self.whole(node, "", "$out.push({});", "const $out = []; ")

    def whole(self, node: Comprehension, head: str, give: str, start: str) -> str:
        """Translate a comprehension to a function of its own, called at once with the first row of things."""
        first = node.generators[0]
        rows = self.rows(first.iter)
        names = [name for clause in node.generators for name in targets(clause.target)]
        with self.scope(set(names)):
            loops = []
            for clause in node.generators:
                if clause.is_async:
                    self.refuse(node, "async for", "for")
                loops.append(self.loop(clause.target, clause.iter, "$rows" if clause is first else self.rows(clause.iter)))
                loops += [f"if ({self.condition(test)}) {{" for test in clause.ifs]
            body = f"{' '.join(loops)} {give.format(self.element(node))} {'}' * len(loops)}"
        variables = f"let {', '.join(dict.fromkeys(map(js_name, names)))}; " if names else ""
        end = " return $out;" if start else ""
        arrow = "" if head else "=> "
        return f"({head}($rows) {arrow}{{ {start}{variables}{body}{end} }})({rows})"

    def element(self, node: Comprehension) -> str:
        """Translate what a comprehension gives for each row."""
        if isinstance(node, ast.DictComp):
            return f"[{self.key(node.key)}, {self.expression(node.value)}]"
        return self.expression(node.elt)

    def key(self, node: ast.expr) -> str:
        """Translate the key of a dict."""
        text = self.expression(node)
        return text if isinstance(node, ast.Constant) and isinstance(node.value, str) else f"$.toKey({text})"


def shape(node: ast.expr) -> str:
    """Give how many values a tuple of targets takes, or the shapes of its parts where one is a tuple too."""
    if isinstance(node, ast.Name):
        return "0"
    parts = node.elts if isinstance(node, ast.Tuple | ast.List) else []
    if all(isinstance(part, ast.Name) for part in parts):
        return str(len(parts))
    return f"[{', '.join(shape(part) for part in parts)}]"


def targets(node: ast.expr) -> list[str]:
    """Give the names that a target binds."""
    return [inner.id for inner in ast.walk(node) if isinstance(inner, ast.Name)]


def holds_lambda(node: ast.AST) -> bool:
    """Tell whether something inside could look at a comprehension's variable later."""
    late = (ast.Lambda, ast.GeneratorExp)
    return any(isinstance(inner, late) for inner in ast.walk(node) if inner is not node)


__all__ = ["Comprehension", "Walks", "holds_lambda", "own_nodes", "shape", "targets"]
