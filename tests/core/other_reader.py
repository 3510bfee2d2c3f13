"""Another reader of lengths, made in another way: rewritten by patterns into Python's own grammar.

It shares nothing with the core, and is lenient: it gives the value of a text that is a length, and may
give one for a text that is not.
"""

import ast
import operator
import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction

ONES = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
TEENS = ["ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"]
TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
NUMBERS = {word: n for n, word in enumerate(ONES + TEENS)} | {word: 20 + 10 * n for n, word in enumerate(TENS)}
INCHES = {
    "in": Fraction(1),
    "ft": Fraction(12),
    "mm": Fraction(10, 254),
    "cm": Fraction(100, 254),
    "m": Fraction(10000, 254),
}
METRIC = {"mm", "cm", "m"}
SIGNS = {"'": " ft ", "′": " ft ", "’": " ft ", '"': " in ", "″": " in ", "”": " in ", "×": "*", "÷": " / "}
NUMBER = r"(?:\d*[.,]\d+|\d+ \d+/\d+|\d+/\d+|\d+)"
MEASURE = re.compile(
    rf"(?P<feet>{NUMBER}) ?ft ?-?(?P<inches>{NUMBER})(?: ?in)?"
    rf"|(?P<number>{NUMBER})(?: ?(?P<unit>in|ft|mm|cm|m))?"
    r"|(?P<hair>HAIR)"
)
OPERATORS = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv}


@dataclass(frozen=True)
class Said:
    """A number, and the systems it was said in: none for a bare one."""

    value: Fraction
    systems: frozenset[str]


def word(pattern: str) -> str:
    """A pattern that is a whole word, digits touching it or not."""
    return rf"(?<![a-z])(?:{pattern})(?![a-z])"


def judge(text: str, unit: str, graduation: str) -> Fraction:
    """Give the inches of a text that is a length in a project of this unit and graduation."""
    plain = re.sub("[ \t\u00a0\u2009\u202f]+", " ", text).strip(" ")
    plain = "".join(letter.lower() if letter.isascii() else letter for letter in plain)
    plain, lean = without_lean(plain)
    terms: list[Said] = []
    expression = MEASURE.sub(lambda found: named(found, terms, unit), in_digits(plain))
    said = as_length(evaluate(ast.parse(expression.strip(), mode="eval").body, terms, unit), unit)
    return said.value + (1 if said.value >= 0 else -1) * lean * quarter(said, unit, graduation)


def without_lean(text: str) -> tuple[str, int]:
    words = {"strong": 1, "full": 1, "heavy": 1, "scant": -1, "light": -1, "shy": -1}
    if found := re.search(r"(?: *, *| )(strong|full|heavy|scant|light|shy)$", text):
        return text[: found.start()], words[found[1]]
    if found := re.search(r"(?<=[^ ])[+-]$", text):
        return text[:-1], 1 if found[0] == "+" else -1
    return text, 0


def in_digits(text: str) -> str:
    """Rewrite words, primes, vulgar fractions and hyphens, till only digits, units and signs are left."""
    for sign, plain in SIGNS.items():
        text = text.replace(sign, plain)
    text = re.sub(word("inch|inches"), "in", re.sub(word("foot|feet"), "ft", text))
    text = re.sub(word("x"), "*", text)
    text = re.sub(word("plus"), " + ", re.sub(word("minus"), " - ", text))
    text = re.sub(word("a hair"), "HAIR", re.sub(" +", " ", text))
    text = parts_of_words(text)
    text = re.sub(r"(?<=\d)-?([¼½¾⅐-⅞])", lambda found: " " + vulgar(found[1]), text)
    text = re.sub(r"[¼½¾⅐-⅞]", lambda found: vulgar(found[0]), text)
    text = re.sub(r"(\d)-(\d+/\d)", r"\1 \2", re.sub(r"ft ?-(?=\d)", "ft ", text))
    return re.sub(" +", " ", text)


def parts_of_words(text: str) -> str:
    """Write number words in digits, and counted parts as fractions."""
    names = {"thirty[ -]seconds?": 32, "sixty[ -]fourths?": 64, "half|halves": 2, "quarters?|fourths?": 4}
    for name, parts in (names | {"eighths?": 8, "sixteenths?": 16}).items():
        text = re.sub(word(name), f"§{parts}", text)
    number = word(rf"({'|'.join(TENS)})[ -]({'|'.join(ONES[1:])})") + "|" + word(f"({'|'.join(NUMBERS)})")
    text = re.sub(number, lambda found: str(sum(NUMBERS[each] for each in found.groups() if each)), text)
    text = re.sub(r"(?<![a-z])an?(?=[ -]?§)", "1", text)
    text = re.sub(r"(\d+)[ -]?§(\d+)", r"\1/\2", text)
    return re.sub(word(" ?and "), " ", re.sub(r"§(\d+)", r"1/\1", text))


def vulgar(letter: str) -> str:
    return str(Fraction(unicodedata.numeric(letter)).limit_denominator(10))


def number(text: str) -> Fraction:
    return sum((Fraction(part.replace(",", ".")) for part in text.split(" ")), Fraction(0))


def named(found: re.Match[str], terms: list[Said], unit: str) -> str:
    """Keep a term and write its name in its place."""
    if found["feet"]:
        term = Said(number(found["feet"]) * 12 + number(found["inches"]), frozenset(["imperial"]))
    elif found["hair"]:
        finest = Fraction(1, 254) if unit == "mm" else Fraction(1, 64)
        term = Said(finest / 4, frozenset([system(unit)]))
    elif found["unit"]:
        term = Said(number(found["number"]) * INCHES[found["unit"]], frozenset([system(found["unit"])]))
    else:
        term = Said(number(found["number"]), frozenset())
    terms.append(term)
    return f" TERM[{len(terms) - 1}] "


def system(unit: str) -> str:
    return "metric" if unit in METRIC else "imperial"


def as_length(said: Said, unit: str) -> Said:
    return said if said.systems else Said(said.value * INCHES[unit], frozenset([system(unit)]))


def evaluate(node: ast.expr, terms: list[Said], unit: str) -> Said:
    if isinstance(node, ast.UnaryOp):
        inner = evaluate(node.operand, terms, unit)
        return Said(-inner.value, inner.systems)
    if isinstance(node, ast.Subscript):
        return terms[ast.literal_eval(node.slice)]
    assert isinstance(node, ast.BinOp), ast.dump(node)
    left, right = evaluate(node.left, terms, unit), evaluate(node.right, terms, unit)
    if isinstance(node.op, ast.Add | ast.Sub) and (left.systems or right.systems):
        left, right = as_length(left, unit), as_length(right, unit)
    elif isinstance(node.op, ast.Mult | ast.Div):
        assert not right.systems or (isinstance(node.op, ast.Mult) and not left.systems)
    return Said(OPERATORS[type(node.op)](left.value, right.value), left.systems | right.systems)


def quarter(said: Said, unit: str, graduation: str) -> Fraction:
    """Give a quarter of the division the lean was said on."""
    own = said.systems != {"imperial" if unit == "mm" else "metric"}
    metric = (unit == "mm") is own
    usual = "0.5 mm" if metric else "1/32"
    text = graduation if own else usual
    division = Fraction(text.removesuffix(" mm")) * (INCHES["mm"] if metric else 1)
    if 0 < abs(said.value) <= division / 2:
        division = INCHES["mm"] / 10 if metric else Fraction(1, 64)
    return division / 4
