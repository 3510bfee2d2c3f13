"""Measures from pieces: a quantity with its unit, and feet with their inches."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.mark import fine_scale
from webapp.core.reading_pieces import Token, UnreadError
from webapp.core.reading_quantity import quantity_at
from webapp.core.reading_words import Quantity, after_hyphen, is_kind, is_word
from webapp.core.setting import Setting

INCH = "inch"
METRIC = "metric"
SYSTEMS = {"in": INCH, "ft": INCH, "mm": METRIC, "cm": METRIC, "m": METRIC}
ONE_UNIT = "One measure has one unit; take one away, or put + between: 5' + 200 mm."


@dataclass(frozen=True)
class Amount:
    """A number: bare without a system, else a length in inches and the systems it was said in."""

    value: Fraction
    system: str


@dataclass(frozen=True)
class Term:
    """An amount and the pieces it was made of, from the first to the one after the last."""

    amount: Amount
    first: int
    after: int


def project_system(setting: Setting) -> str:
    """Name the system that the project's unit is of."""
    return METRIC if setting.metric else INCH


def term_at(tokens: list[Token], place: int, setting: Setting) -> Term | None:
    """Read the measure or the plain number that begins at a place; None where none begins."""
    if is_word(tokens, place, ["a"]) and is_word(tokens, place + 1, ["hair"]):
        return Term(Amount(hair(setting), project_system(setting)), place, place + 2)
    quantity = quantity_at(tokens, place)
    if quantity is None:
        return None
    if not is_kind(tokens, quantity.after, "unit"):
        check_bare(tokens, place, quantity, setting)
        return Term(Amount(quantity.value, ""), place, quantity.after)
    unit = tokens[quantity.after].text
    check_comma(tokens[place], metric=SYSTEMS[unit] == METRIC)
    amount = Amount(quantity.value * setting.factors[unit], SYSTEMS[unit])
    after = quantity.after + 1
    if unit == "ft":
        return with_inches(tokens, Term(amount, place, after), quantity, setting)
    return Term(amount, place, after)


def hair(setting: Setting) -> Fraction:
    """Give what is read as `a hair`: a quarter of the finest division that a mark is said on."""
    return fine_scale(setting) / 4


def with_inches(tokens: list[Token], feet: Term, number: Quantity, setting: Setting) -> Term:
    """Read the inches after feet, where there are any."""
    place = after_hyphen(tokens, feet.after)
    inches = quantity_at(tokens, place)
    if inches is None:
        return feet
    if number.value.denominator != 1 or is_kind(tokens, feet.first, "decimal"):
        raise UnreadError(tokens[feet.first].start, "Feet before inches are a whole number: 5' 6\".")
    after = inches.after
    if is_kind(tokens, after, "unit"):
        if tokens[after].text != "in":
            raise UnreadError(tokens[after].start, ONE_UNIT)
        after += 1
    check_comma(tokens[place], metric=False)
    length = feet.amount.value + inches.value * setting.factors["in"]
    return Term(Amount(length, INCH), feet.first, after)


def check_comma(token: Token, metric: bool) -> None:
    """Refuse a comma as the decimal sign of inches."""
    comma = token.text.find(",")
    if token.kind == "decimal" and comma >= 0 and not metric:
        point = token.text.replace(",", ".")
        raise UnreadError(token.start + comma, f"Inches take a point, {point}; a comma is for metric: {token.text} mm.")


def check_bare(tokens: list[Token], place: int, quantity: Quantity, setting: Setting) -> None:
    """Refuse a number without a unit that would be misread in the project's unit."""
    if quantity.broken and setting.metric:
        said = " ".join([token.text for token in tokens[place : quantity.after] if token.kind != "hyphen"])
        raise UnreadError(tokens[place].start, f"A fraction needs its unit in a millimetre project; write {said} in.")
    check_comma(tokens[place], setting.metric)
