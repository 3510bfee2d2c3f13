"""Lengths as they are typed and spoken, read exactly."""

from fractions import Fraction

from webapp.core.reading_lean import leant, touching_sign, without_lean
from webapp.core.reading_parts import list_parts
from webapp.core.reading_pieces import UnreadError
from webapp.core.reading_sum import work_sum
from webapp.core.reading_tokens import tokens
from webapp.core.reading_words import whole_at
from webapp.core.setting import Setting
from webapp.core.text import indent, trim
from webapp.core.words import LEANS

MOST_LETTERS = 120
MOST_INCHES = 12000
MOST_LIST = 1000
MOST_COUNT = 1000
COUNT = "A count is a whole number from 1 to 1,000."
EMPTY_COUNT = "Nothing is typed here yet; write a count like 9."


class ReadingError(ValueError):
    """A text that cannot be read: the text, the place in it, what is wrong and what would be right."""

    def __init__(self, text: str, position: int, reason: str) -> None:
        super().__init__(sentence(text, position, reason))
        self.text = text
        self.position = position
        self.reason = reason


def sentence(text: str, position: int, reason: str) -> str:
    """Say a reason and the place it is about."""
    if position == 0:
        return reason
    if position >= len(text):
        return f"{reason} (At the end.)"
    return f"{reason} (At character {position + 1}.)"


def read(text: str, setting: Setting, sign: str = "any") -> Fraction:
    """Read a length in inches; `sign` is positive (more than 0), zero (0 or more) or any."""
    check_length(text)
    inner = trim(text)
    try:
        value = read_trimmed(inner, setting)
    except UnreadError as error:
        raise ReadingError(text, indent(text) + error.position, error.reason) from None
    check_value(value, text, sign)
    return value


def check_length(text: str) -> None:
    """Refuse a text that is too long, before anything looks into it."""
    if len(text) > MOST_LETTERS:
        raise ReadingError(text, MOST_LETTERS, "A length has at most 120 characters; work it in two.")


def check_value(value: Fraction, text: str, sign: str) -> None:
    """Refuse a length beyond 1,000 feet, and one below what a field allows."""
    if abs(value) > MOST_INCHES:
        raise ReadingError(text, 0, "This is beyond 1,000 feet; a length here is at most 1000'.")
    if sign == "positive" and value <= 0:
        raise ReadingError(text, 0, f"This comes to {'0' if value == 0 else 'less than 0'}; give more than 0.")
    if sign == "zero" and value < 0:
        raise ReadingError(text, 0, "This comes to less than 0; give 0 or more.")


def read_trimmed(text: str, setting: Setting) -> Fraction:
    """Read a text without outer white: a sum, then at most one lean."""
    if text == "":
        raise UnreadError(0, "Nothing is typed here yet; write a length like 17 3/8.")
    end, lean = touching_sign(text)
    pieces = tokens(text[:end])
    if lean == 0 and pieces[-1].kind == "lean":
        lean = LEANS[pieces[-1].text]
        pieces = without_lean(pieces)
    if len(pieces) == 0:
        raise UnreadError(0, "A length is missing before strong or scant: 17 3/8 strong.")
    amount = work_sum(pieces, setting)
    return leant(amount.value, lean, amount.system, setting) if lean != 0 else amount.value


def read_list(text: str, setting: Setting, sign: str = "positive") -> list[Fraction]:
    """Read lengths that are parted by a semicolon, or by a comma and a space."""
    if len(text) > MOST_LIST:
        raise ReadingError(text, MOST_LIST, "A list has at most 1000 characters; work it in two.")
    values: list[Fraction] = []
    for start, end in list_parts(text):
        try:
            values.append(read(text[start:end], setting, sign))
        except ReadingError as error:
            raise ReadingError(text, start + error.position, error.reason) from None
    return values


def read_count(text: str) -> int:
    """Read a count, 1 to 1,000, in digits or in words."""
    check_length(text)
    inner = trim(text)
    try:
        pieces = tokens(inner)
    except UnreadError as error:
        raise ReadingError(text, indent(text) + error.position, COUNT) from None
    if len(pieces) == 0:
        raise ReadingError(text, 0, EMPTY_COUNT)
    count = whole_at(pieces, 0)
    if count is None or count.after < len(pieces) or not 1 <= count.value <= MOST_COUNT:
        raise ReadingError(text, indent(text), COUNT)
    return count.value.numerator
