"""The subset of Python that the core is written in, as tables."""

import ast
from dataclasses import dataclass

PACKAGE = "webapp.core"
TYPES_ONLY = ("typing", "collections.abc", "__future__")

OPERATORS: dict[type[ast.AST], str] = {
    ast.Add: "add",
    ast.Sub: "sub",
    ast.Mult: "mul",
    ast.Div: "div",
    ast.FloorDiv: "floordiv",
    ast.Mod: "mod",
}
COMPARISONS: dict[type[ast.AST], str] = {
    ast.Eq: "eq",
    ast.NotEq: "ne",
    ast.Lt: "lt",
    ast.LtE: "le",
    ast.Gt: "gt",
    ast.GtE: "ge",
    ast.In: "has",
    ast.NotIn: "has",
}


@dataclass(frozen=True)
class Builtin:
    """How a builtin is called: least and most positional arguments, keywords and their places.

    `lazy` gives something that can only be walked through; `walks` takes such a thing first;
    `value` may be handed on without being called.
    """

    least: int
    most: int
    keywords: tuple[tuple[str, int], ...] = ()
    lazy: bool = False
    walks: bool = False
    value: bool = False
    runtime: str = ""


BUILTINS: dict[str, Builtin] = {
    "len": Builtin(1, 1, value=True),
    "range": Builtin(1, 3, lazy=True),
    "enumerate": Builtin(1, 2, (("start", 1),), lazy=True, walks=True),
    "zip": Builtin(1, 99, (("strict", 1),), lazy=True, walks=True),
    "reversed": Builtin(1, 1, lazy=True, walks=True),
    "sorted": Builtin(1, 1, (("key", 1), ("reverse", 2)), walks=True),
    "min": Builtin(1, 99, (("key", 1), ("default", 2)), walks=True),
    "max": Builtin(1, 99, (("key", 1), ("default", 2)), walks=True),
    "sum": Builtin(1, 2, (("start", 1),), walks=True, value=True),
    "abs": Builtin(1, 1, value=True),
    "str": Builtin(1, 1, value=True),
    "int": Builtin(1, 1, value=True),
    "bool": Builtin(1, 1, value=True, runtime="t"),
    "isinstance": Builtin(2, 2),
    "all": Builtin(1, 1, walks=True, value=True),
    "any": Builtin(1, 1, walks=True, value=True),
    "list": Builtin(0, 1, walks=True, value=True),
    "tuple": Builtin(0, 1, walks=True, value=True),
    "dict": Builtin(0, 1, walks=True),
    "divmod": Builtin(2, 2),
    "ord": Builtin(1, 1, value=True),
}
TRUTHS = ("isinstance", "all", "any", "bool")
KINDS = ("int", "bool", "str", "list", "tuple", "dict")

ERRORS = (
    "Exception", "ValueError", "TypeError", "LookupError", "KeyError", "IndexError", "ArithmeticError",
    "ZeroDivisionError",
)  # fmt: skip

# Methods of text, lists and dicts: least and most arguments, by position only.
METHODS: dict[str, tuple[int, int]] = {
    "join": (1, 1), "split": (1, 1), "startswith": (1, 1), "endswith": (1, 1), "replace": (2, 2),
    "find": (1, 1), "rfind": (1, 1), "strip": (1, 1), "lstrip": (1, 1), "rstrip": (1, 1), "count": (1, 1),
    "append": (1, 1), "extend": (1, 1), "index": (1, 1), "insert": (2, 2), "pop": (0, 2),
    "get": (1, 2), "items": (0, 0), "keys": (0, 0), "values": (0, 0), "setdefault": (1, 2), "update": (1, 1),
}  # fmt: skip
# The methods that are called most, of one kind of value each: the run-time has a function of the same name.
DIRECT = ("get", "setdefault", "append", "extend")
LAZY_METHODS = ("items", "keys", "values")
WALKING_METHODS = ("join", "extend", "update")

# Attributes that are read from what is no dataclass of the core.
ATTRIBUTES = ("numerator", "denominator", "args")
# Names that an attribute cannot have, because a JavaScript object has them already.
TAKEN_ATTRIBUTES = ("constructor", "prototype", "message", "stack", "args", "toString", "valueOf", "toJSON", "then")

# Words of JavaScript, and names that the translation itself leans on.
RESERVED = frozenset(
    [
        "arguments", "await", "break", "case", "catch", "class", "const", "continue", "debugger", "default", "delete",
        "do", "else", "enum", "eval", "export", "extends", "false", "finally", "for", "function", "if", "implements",
        "import", "in", "instanceof", "interface", "let", "new", "null", "package", "private", "protected", "public",
        "return", "static", "super", "switch", "this", "throw", "true", "try", "typeof", "undefined", "var", "void",
        "while", "with", "yield", "async", "of", "Array", "Map", "Object",
    ]
)  # fmt: skip

# What is outside, by its node: what to call it, and what to write.
OUTSIDE: dict[str, tuple[str, str]] = {
    "Set": ("a set", "a dict with True for its values"),
    "SetComp": ("a set comprehension", "a dict comprehension with True for its values"),
    "NamedExpr": ("an assignment inside an expression", "the assignment on a line of its own"),
    "Await": ("await", "a plain call"),
    "Yield": ("yield", "a list that is returned"),
    "YieldFrom": ("yield from", "a list that is returned"),
    "Starred": ("a star here", "the values one by one"),
    "Slice": ("a slice here", "a slice of a list or a text alone"),
    "AsyncFunctionDef": ("async def", "def"),
    "AsyncFor": ("async for", "for"),
    "AsyncWith": ("async with", "plain calls"),
    "With": ("with", "plain calls: the core opens nothing"),
    "Delete": ("del", "pop"),
    "Assert": ("assert", "if … raise"),
    "Global": ("global", "a parameter and a return value"),
    "Nonlocal": ("nonlocal", "a parameter and a return value"),
    "Match": ("match", "if and elif"),
    "TryStar": ("except*", "except"),
    "Import": ("import of a module", f"from fractions import Fraction, or from {PACKAGE}.x import the names"),
    "ImportFrom": ("an import here", "it at the top of the module"),
    "FunctionDef": ("a function inside a function", "it at the top of the module"),
    "ClassDef": ("a class here", "it at the top of the module"),
    "For": ("a loop here", "a function"),
    "While": ("a loop here", "a function"),
    "If": ("if at the top of a module", "a conditional expression"),
    "AugAssign": ("a constant that is changed", "NAME = value once"),
    "TypeAlias": ("a type statement", "NAME: TypeAlias = …"),
}

# What to write for names and methods of Python that the two languages do not share, or not alike.
INSTEAD: dict[str, str] = {
    "round": "a named rounding that says what becomes of a half (webapp/core/digits.py)",
    "float": "Fraction",
    "set": "a dict with True for its values",
    "frozenset": "a dict with True for its values",
    "map": "a comprehension",
    "filter": "a comprehension with if",
    "next": "a loop that returns, or an index",
    "iter": "a loop",
    "print": "a value that is returned",
    "open": "a parameter: the core reads and writes nothing",
    "repr": "a function that makes the text",
    "type": "isinstance",
    "getattr": "the attribute by its name",
    "hasattr": "isinstance",
    "pow": "a loop that multiplies",
    "super": "the function by its name; only an error's __init__ calls super().__init__",
    "lower": "a fold of ASCII letters by a dict (webapp/core/text.py)",
    "upper": "a dict of ASCII letters",
    "casefold": "a fold of ASCII letters by a dict (webapp/core/text.py)",
    "isdigit": "`in` a constant of the ten digits",
    "isspace": "`in` a constant of the white characters (webapp/core/text.py)",
    "splitlines": "a split on the line ends that count (webapp/core/text.py)",
    "format": "an f-string",
    "sort": "sorted(…)",
    "reverse": "list(reversed(…))",
    "remove": "a comprehension with if",
    "clear": "a new list or dict",
    "copy": "list(…) or dict(…)",
    "partition": "find and two slices",
    "zfill": "zeros before it, and a slice from the end",
}
