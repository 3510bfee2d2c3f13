"""Scripts and styles without their comments and indents, as the phone keeps them."""

import re
from functools import cache

# A regular expression's own text: no line break, and a slash only after a backslash or in brackets.
PATTERN = r"/(?![/*\s=])(?:[^/\\\[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])+/[a-z]*"
TOKEN = re.compile(
    rf"""(?P<comment>//[^\n]*|/\*.*?\*/)
    |(?P<string>"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*')
    |(?P<pattern>{PATTERN})
    |(?P<break>[ \t]*\n[ \t]*)
    |(?P<space>[ \t]+)
    |(?P<word>[\w$]+)
    |(?P<other>.)""",
    re.VERBOSE | re.DOTALL,
)
CHARS = re.compile(r"(?:[^`\\$]|\\.|\$(?!\{))*", re.DOTALL)  # of a template, up to its end or to a value in it
STYLE = re.compile(r"""(?P<kept>"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*')|(?P<comment>/\*.*?\*/)|\n[ \t]+""", re.DOTALL)
# Words that a value may follow, so that a slash after them begins a regular expression.
BEFORE = frozenset(
    (
        "return",
        "typeof",
        "case",
        "in",
        "of",
        "do",
        "else",
        "void",
        "delete",
        "throw",
        "new",
        "instanceof",
        "yield",
        "await",
    )
)
CLOSING = frozenset(")]}")


class StripError(ValueError):
    """A place in a script that cannot be told apart without reading all of the language."""


@cache
def script(text: str) -> str:
    """Return a script without comments, indents and blank lines."""
    return _Script(text).stripped()


@cache
def style(text: str) -> str:
    """Return a style sheet without comments and indents, on the same lines."""
    return STYLE.sub(lambda found: found["kept"] or "\n" * found[0].count("\n"), text)


def parts(before: str, after: str) -> bool:
    """Say whether a space between two tokens means something: between words, and where signs would run together."""
    if before[-1:].isidentifier() or before[-1:].isdigit() or before[-1:] == "$":
        return after[0].isidentifier() or after[0].isdigit() or after[0] == "$"
    return before == "/" or (before[-1:] in "+-" and after[0] in "+-")  # a slash that divides keeps its space


class _Script:
    """One walk over a script: what was put out, and the last token that means something."""

    def __init__(self, text: str) -> None:
        self.text, self.at, self.last = text, 0, ""
        self.out: list[str] = []
        self.depths: list[int] = []  # open braces in each template's value that the walk is in

    def stripped(self) -> str:
        while self.at < len(self.text):
            self.token()
        if self.depths:
            raise StripError("a template has no end")
        return "".join(self.out).rstrip(" ")

    def token(self) -> None:
        found = TOKEN.match(self.text, self.at)
        if found is None:  # pragma: no cover - the last alternative takes any character
            raise StripError(self.where())
        kind, text = str(found.lastgroup), found[0]
        if kind == "pattern" and not self.begins_value():
            kind, text = "other", "/"
        elif text == "/" and self.last not in CLOSING and self.begins_value():
            raise StripError(f"{self.where()}: a regular expression that begins with a space: write [ ]")
        self.at += len(text)
        if kind == "comment":
            self.comment(text)
        elif kind in {"break", "space"}:
            self.white(text)
        else:
            self.put(text)

    def comment(self, text: str) -> None:
        """Leave a line break or a space: a comment parts two words."""
        self.white("\n" if "\n" in text else " ")

    def white(self, text: str) -> None:
        """Put white space: one break, or one space; none at the start or the end of a line."""
        if self.out and self.out[-1] == " ":
            self.out.pop()
        if self.out and not self.out[-1].endswith("\n"):
            self.out.append("\n" if "\n" in text else " ")

    def put(self, text: str) -> None:
        """Put a token that means something, and follow templates in and out of their values."""
        if self.out and self.out[-1] == " " and not parts(self.last, text):
            self.out.pop()
        self.out.append(text)
        self.last = text
        if text == "`":
            self.chars()
        elif self.depths and text == "{":
            self.depths[-1] += 1
        elif self.depths and text == "}":
            self.depths[-1] -= 1
            if self.depths[-1] == 0:
                self.depths.pop()
                self.chars()

    def chars(self) -> None:
        """Put a template's characters as they are, up to its end or to the next value."""
        found = CHARS.match(self.text, self.at)
        text = found[0] if found else ""
        self.at += len(text)
        end = "`" if self.text.startswith("`", self.at) else "${"
        if not self.text.startswith(end, self.at):
            raise StripError(f"{self.where()}: a template has no end")
        self.at += len(end)
        self.out.append(text + end)
        self.last = "`0" if end == "`" else "{"  # after a template a slash divides
        if end == "${":
            self.depths.append(1)

    def begins_value(self) -> bool:
        """Say whether a slash here begins a regular expression; refuse where only a parser could tell."""
        if self.last in CLOSING:
            raise StripError(f"{self.where()}: a space behind a slash that divides, a name for an expression")
        ends_value = re.fullmatch(r"[\w$]+|[\"'`/].+", self.last, re.DOTALL)
        return not ends_value or self.last in BEFORE

    def where(self) -> str:
        return f"line {self.text.count(chr(10), 0, self.at) + 1}"
