"""Sums of measures and plain numbers, with brackets."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.reading_measure import Amount, Term, project_system
from webapp.core.reading_pieces import Token, UnreadError
from webapp.core.reading_terms import NOTHING_BETWEEN, find_terms
from webapp.core.reading_words import is_kind
from webapp.core.setting import Setting

MOST_DEPTH = 4
BARE = ""
BOTH = "both"


@dataclass(frozen=True)
class Sum:
    """What is being worked: the pieces, the terms by the piece they begin at, the setting."""

    tokens: list[Token]
    terms: dict[int, Term]
    setting: Setting


@dataclass(frozen=True)
class Worked:
    """An amount and the piece after it."""

    amount: Amount
    after: int


def work_sum(tokens: list[Token], setting: Setting) -> Amount:
    """Work a whole sum and give a length; a bare result takes the project's unit."""
    worked = total(Sum(tokens, find_terms(tokens, setting), setting), 0, 0)
    if worked.after < len(tokens):
        left = tokens[worked.after]
        if left.kind == "close":
            raise UnreadError(left.start, "This bracket was never opened; take it away.")
        raise UnreadError(left.start, NOTHING_BETWEEN)
    return as_length(worked.amount, setting)


def total(whole: Sum, place: int, depth: int) -> Worked:
    """Work products joined by + and -, of which the first may have a minus."""
    negative = is_operator(whole.tokens, place, "-")
    worked = product(whole, place + 1 if negative else place, depth)
    amount = Amount(-worked.amount.value, worked.amount.system) if negative else worked.amount
    after = worked.after
    while is_operator(whole.tokens, after, "+-"):
        right = product(whole, after + 1, depth)
        amount = add(amount, right.amount, whole.tokens[after].text, whole.setting)
        after = right.after
    return Worked(amount, after)


def product(whole: Sum, place: int, depth: int) -> Worked:
    """Work terms and brackets joined by x and /."""
    worked = factor(whole, place, depth)
    amount, after = worked.amount, worked.after
    while is_operator(whole.tokens, after, "x/"):
        sign = whole.tokens[after]
        right = factor(whole, after + 1, depth)
        amount = times(amount, right.amount, sign) if sign.text == "x" else over(amount, right.amount, sign)
        after = right.after
    return Worked(amount, after)


def factor(whole: Sum, place: int, depth: int) -> Worked:
    """Work one term, or what a bracket holds."""
    if place in whole.terms:
        return Worked(whole.terms[place].amount, whole.terms[place].after)
    if is_kind(whole.tokens, place, "open"):
        return bracket(whole, place, depth)
    raise UnreadError(place_of(whole.tokens, place), "A number is missing here; a sum goes on with one: 5 + 3.")


def bracket(whole: Sum, place: int, depth: int) -> Worked:
    """Work what stands between two brackets."""
    if depth == MOST_DEPTH:
        raise UnreadError(whole.tokens[place].start, "Brackets stand at most 4 deep; work it in two.")
    worked = total(whole, place + 1, depth + 1)
    if is_kind(whole.tokens, worked.after, "close"):
        return Worked(worked.amount, worked.after + 1)
    if worked.after < len(whole.tokens):
        raise UnreadError(whole.tokens[worked.after].start, NOTHING_BETWEEN)
    raise UnreadError(whole.tokens[place].start, "This bracket is never closed; put ) where it ends.")


def is_operator(tokens: list[Token], place: int, signs: str) -> bool:
    """Tell whether one of these operators stands at a place."""
    return is_kind(tokens, place, "op") and tokens[place].text in signs


def place_of(tokens: list[Token], place: int) -> int:
    """Give the place in the text of a piece, or of the end."""
    return tokens[place].start if place < len(tokens) else tokens[-1].end


def add(left: Amount, right: Amount, sign: str, setting: Setting) -> Amount:
    """Add or take; a bare number beside a length takes the project's unit."""
    if left.system != right.system:
        left, right = as_length(left, setting), as_length(right, setting)
    value = left.value + right.value if sign == "+" else left.value - right.value
    return Amount(value, left.system if left.system == right.system else BOTH)


def as_length(amount: Amount, setting: Setting) -> Amount:
    """Give a bare number the project's unit."""
    if amount.system != BARE:
        return amount
    return Amount(amount.value * setting.factors[setting.unit], project_system(setting))


def times(left: Amount, right: Amount, sign: Token) -> Amount:
    """Multiply, one of the two being bare."""
    if left.system != BARE and right.system != BARE:
        raise UnreadError(sign.start, "A length times a length is no length; leave the unit off one: 7 x 2 in.")
    return Amount(left.value * right.value, left.system or right.system)


def over(left: Amount, right: Amount, sign: Token) -> Amount:
    """Divide by a bare number."""
    if right.system != BARE:
        raise UnreadError(sign.start, "Only a plain number divides; leave the unit off it: 30 in / 4.")
    if right.value == Fraction(0):
        raise UnreadError(sign.start, "Nothing can be divided by 0; divide by 1 or more.")
    return Amount(left.value / right.value, left.system)
