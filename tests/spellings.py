"""One length in the many ways it is typed, drawn from a random source."""

from collections.abc import Callable
from fractions import Fraction
from random import Random

from webapp.core.mark import mark, mixed, spoken
from webapp.core.setting import setting
from webapp.core.sums import decimal
from webapp.units import FACTORS

MM = FACTORS["mm"]
FINEST = setting("in", "1/64", FACTORS)
VULGAR = {Fraction(1, 2): "½", Fraction(1, 4): "¼", Fraction(3, 4): "¾", Fraction(3, 8): "⅜", Fraction(2, 3): "⅔"}
OUTER = ["", "", "", " ", "\t", "\u00a0", "\u2009", "\u202f "]
LEANS = ["", "", "", "", "", "", "", " strong", ", scant", " heavy", "+", "-"]


def spell(x: Fraction, unit: str, draw: Random) -> str:
    """Write a length of more than 0 inches so that it reads as itself, give or take a lean."""
    text = draw.choice([form for form in (form(x, unit, draw) for form in FORMS) if form])
    lean = draw.choice(LEANS) if text[-1] not in "'\"′″)" else ""
    return draw.choice(OUTER) + text + lean + draw.choice(OUTER)


def finite(x: Fraction) -> bool:
    return 10**4 % x.denominator == 0


def with_inches(x: Fraction, unit: str, draw: Random) -> str:
    return mixed(x) + draw.choice([" in", '"', "in", " inches", "″", " IN"])


def hyphened(x: Fraction, unit: str, draw: Random) -> str:
    return mixed(x).replace(" ", "-") + draw.choice(['"', " in"])


def all_over(x: Fraction, unit: str, draw: Random) -> str:
    return f"{x.numerator}/{x.denominator} in"


def divided(x: Fraction, unit: str, draw: Random) -> str:
    return f"{x.numerator}in {draw.choice('/÷')} {x.denominator}"


def in_feet(x: Fraction, unit: str, draw: Random) -> str:
    feet, rest = divmod(x, 12)
    return f'{feet}{draw.choice(["′", chr(39), " ft "])}{draw.choice([" ", ""])}{mixed(rest)}"' if feet else ""


def metric(x: Fraction, unit: str, draw: Random) -> str:
    name = draw.choice(["mm", "cm", "m"])
    number = x / FACTORS[name]
    return plain(number).replace(".", draw.choice([".", ","])) + draw.choice(["", " "]) + name if finite(number) else ""


def plain(number: Fraction) -> str:
    """Write a number with up to four decimals."""
    digits = f"{number.numerator * 10**4 // number.denominator:05d}"
    return f"{digits[:-4]}.{digits[-4:]}".rstrip("0").rstrip(".")


def bare(x: Fraction, unit: str, draw: Random) -> str:
    if unit == "mm":
        number = x / MM
        return decimal(number) if 1000 % number.denominator == 0 else ""
    number = x / FACTORS[unit]
    return draw.choice([mixed(number), mixed(number).replace(" ", "-"), f"{number.numerator} / {number.denominator}"])


def in_words(x: Fraction, unit: str, draw: Random) -> str:
    text = mark(x, FINEST)
    return spoken(text) + " inches" if x < 100 and 64 % x.denominator == 0 and x.denominator > 1 else ""


def with_vulgar(x: Fraction, unit: str, draw: Random) -> str:
    whole, part = divmod(x, 1)
    return f"{whole or ''}{draw.choice(['', ' ']) if whole else ''}{VULGAR[part]} in" if part in VULGAR else ""


def summed(x: Fraction, unit: str, draw: Random) -> str:
    part = draw.choice([Fraction(1, 2), Fraction(3, 16), Fraction(1)])
    return f"{mixed(x + part)} in - {mixed(part)}{draw.choice([' in', chr(34)])}"


def bracketed(x: Fraction, unit: str, draw: Random) -> str:
    return f"2{draw.choice(['x', ' * ', ' × '])}({mixed(x / 4)} in + {mixed(x / 4)} in)"


FORMS: list[Callable[[Fraction, str, Random], str]] = [
    with_inches, hyphened, all_over, divided, in_feet, metric, bare, bare, bare, in_words, with_vulgar, summed,
    bracketed,
]  # fmt: skip
