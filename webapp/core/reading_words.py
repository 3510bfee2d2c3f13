"""Whole numbers and the names of parts, in digits and in words."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.reading_pieces import Token, UnreadError
from webapp.core.words import AFTER_TENS, PLURAL, SINGULAR, SMALL_NUMBERS, TENS


@dataclass(frozen=True)
class Quantity:
    """A number without its unit, the piece after it, and whether a fraction is in it."""

    value: Fraction
    after: int
    broken: bool


@dataclass(frozen=True)
class Parts:
    """The parts a fraction counts, `sixteenths` or `sixteenth`, and the piece after them."""

    bottom: int
    after: int
    several: bool


def is_kind(tokens: list[Token], place: int, kind: str) -> bool:
    """Tell whether a piece of this kind stands at a place."""
    return 0 <= place < len(tokens) and tokens[place].kind == kind


def is_word(tokens: list[Token], place: int, words: list[str]) -> bool:
    """Tell whether one of these words stands at a place."""
    return is_kind(tokens, place, "word") and tokens[place].text in words


def after_hyphen(tokens: list[Token], place: int) -> int:
    """Step over a hyphen that touches what is on both sides of it."""
    if not is_kind(tokens, place, "hyphen") or place + 1 >= len(tokens):
        return place
    hyphen = tokens[place]
    touches = tokens[place - 1].end == hyphen.start and tokens[place + 1].start == hyphen.end
    return place + 1 if touches else place


def whole_at(tokens: list[Token], place: int) -> Quantity | None:
    """Read a whole number in digits or in words."""
    if is_kind(tokens, place, "whole"):
        return Quantity(tokens[place].value, place + 1, False)
    if not is_kind(tokens, place, "word"):
        return None
    word = tokens[place].text
    if word in SMALL_NUMBERS:
        return Quantity(Fraction(SMALL_NUMBERS[word]), place + 1, False)
    if word in TENS and tens_parts_at(tokens, place) is None:
        return tens_at(tokens, place)
    return None


def tens_at(tokens: list[Token], place: int) -> Quantity:
    """Read twenty, or twenty and its ones; `twenty five eighths` could be two lengths."""
    tens = TENS[tokens[place].text]
    ones_place = after_hyphen(tokens, place + 1)
    if not is_kind(tokens, ones_place, "word"):
        return Quantity(Fraction(tens), place + 1, False)
    ones = SMALL_NUMBERS.get(tokens[ones_place].text, 0)
    if ones < 1 or ones > 9:
        return Quantity(Fraction(tens), place + 1, False)
    if ones_place == place + 1 and parts_at(tokens, ones_place + 1) is not None:
        raise UnreadError(tokens[place].start, two_ways(tokens, place))
    return Quantity(Fraction(tens + ones), ones_place + 1, False)


def two_ways(tokens: list[Token], place: int) -> str:
    """Say the two lengths that `twenty five eighths` could be."""
    tens, ones = tokens[place].text, tokens[place + 1].text
    return f"This could be two lengths; write {tens}-{ones} with a hyphen, or {tens} and {ones}."


def parts_at(tokens: list[Token], place: int) -> Parts | None:
    """Read the name of parts, after a hyphen too: three-quarters."""
    at = after_hyphen(tokens, place)
    if not is_kind(tokens, at, "word"):
        return None
    word = tokens[at].text
    if word in SINGULAR:
        return Parts(SINGULAR[word], at + 1, False)
    if word in PLURAL:
        return Parts(PLURAL[word], at + 1, True)
    return tens_parts_at(tokens, at)


def tens_parts_at(tokens: list[Token], place: int) -> Parts | None:
    """Read thirty-seconds or sixty-fourths, with a hyphen or a space."""
    after = after_hyphen(tokens, place + 1)
    if tokens[place].text not in AFTER_TENS or not is_kind(tokens, after, "word"):
        return None
    names = AFTER_TENS[tokens[place].text]
    word = tokens[after].text
    if word not in names:
        return None
    return Parts(names[word], after + 1, word.endswith("s"))
