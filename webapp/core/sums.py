"""Amounts and sums in words, as a maker writes them on a scrap of wood."""

from fractions import Fraction

from webapp.core.digits import half_up, point_text
from webapp.core.mark import HAIR, LEAN_WORDS, mark, millimetres, mixed
from webapp.core.setting import Setting

NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
MOST_DECIMALS = 1000


def in_words(n: int) -> str:
    """Return a small number in words, a larger one in digits."""
    return NUMBERS[n] if n < len(NUMBERS) else str(n)


def counted(n: int, one: str) -> str:
    """Return `1 gap`, `2 gaps`."""
    return f"{n} {one}" if n == 1 else f"{n} {one}s"


def amount(x: Fraction, how: Setting) -> str:
    """Return a length as it is said in a sentence: its mark, with the unit where the mark has none."""
    text = mark(x, how)
    return with_unit(text, "mm") if how.metric and x.numerator != 0 else text


def with_unit(text: str, unit: str) -> str:
    """Return a mark with a unit, its lean last as it is read; a hair has no unit."""
    if text.endswith(HAIR):
        return text
    for lean in LEAN_WORDS:
        if text.endswith(" " + lean):
            return f"{text[: -len(lean) - 1]} {unit} {lean}"
    return f"{text} {unit}"


def fine(x: Fraction, how: Setting) -> str:
    """Return a length of 0 or more as a caliper says it: thousandths of an inch, or hundredths of a millimetre."""
    if how.metric:
        return millimetres(x, how) + " mm"
    return point_text(half_up(x.numerator * 1000, x.denominator), 3, 1000) + " in"


def exactly(x: Fraction, how: Setting) -> str:
    """Return a length as it stands in a sum: exact, as inches and a fraction or as millimetres."""
    return decimal(x / how.factors["mm"]) if how.metric else mixed(x)


def decimal(x: Fraction) -> str:
    """Return a number with its decimals where up to three say it exactly, else with a fraction."""
    if MOST_DECIMALS % x.denominator != 0 or x.denominator == 1:
        return mixed(x)
    whole, part = divmod(abs(x.numerator) * (MOST_DECIMALS // x.denominator), MOST_DECIMALS)
    digits = str(MOST_DECIMALS + part)[1:]
    while digits.endswith("0"):
        digits = digits[:-1]
    return f"{'-' if x < 0 else ''}{whole}.{digits}"


def widths_text(widths: list[Fraction], how: Setting) -> str:
    """Return the widths of a pattern as they are said: `2 3/4`, or `2, 6` in turn."""
    return ", ".join([amount(width, how) for width in widths])
