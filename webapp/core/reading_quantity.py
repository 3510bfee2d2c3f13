"""Quantities without a unit: decimals, fractions and mixed numbers, in digits and in words."""

from fractions import Fraction

from webapp.core.reading_pieces import Token, UnreadError
from webapp.core.reading_words import Quantity, after_hyphen, is_kind, is_word, parts_at, whole_at
from webapp.core.words import ARTICLES, SINGULAR


def quantity_at(tokens: list[Token], place: int) -> Quantity | None:
    """Read the quantity that begins at a place; None where none begins."""
    if is_kind(tokens, place, "decimal"):
        return Quantity(tokens[place].value, place + 1, False)
    part = part_at(tokens, place)
    if part is not None:
        return part
    whole = whole_at(tokens, place)
    if whole is None:
        return None
    return mixed_at(tokens, whole)


def mixed_at(tokens: list[Token], whole: Quantity) -> Quantity:
    """Read the fraction after a whole number, where there is one."""
    place = after_link(tokens, whole.after)
    part = part_at(tokens, place)
    if part is not None:
        return Quantity(whole.value + part.value, part.after, True)
    if place > whole.after and is_word(tokens, whole.after, ["and"]):
        raise UnreadError(tokens[whole.after].start, "A fraction stands after and: five and 3/16.")
    return whole


def after_link(tokens: list[Token], place: int) -> int:
    """Step over `and`, or over the hyphen of 2-17/64."""
    if is_word(tokens, place, ["and"]):
        return place + 1
    after = after_hyphen(tokens, place)
    return after if is_kind(tokens, after, "fraction") else place


def part_at(tokens: list[Token], place: int) -> Quantity | None:
    """Read a fraction: 3/16, three sixteenths, a sixteenth, half."""
    if is_kind(tokens, place, "fraction"):
        return Quantity(tokens[place].value, place + 1, True)
    if is_word(tokens, place, ["half", "quarter"]):
        return Quantity(Fraction(1, SINGULAR[tokens[place].text]), place + 1, True)
    if is_word(tokens, place, ARTICLES):
        return counted(tokens, Quantity(Fraction(1), place + 1, False))
    count = whole_at(tokens, place)
    return None if count is None else counted(tokens, count)


def counted(tokens: list[Token], count: Quantity) -> Quantity | None:
    """Read the parts that are counted; `five sixteenth` could be two lengths."""
    parts = parts_at(tokens, count.after)
    if parts is None:
        return None
    if count.value > 1 and not parts.several:
        reason = "This could be two lengths; say five sixteenths, or five and a sixteenth."
        raise UnreadError(tokens[count.after].start, reason)
    return Quantity(count.value / parts.bottom, parts.after, True)
