"""Two readings in one text: a size as `A x B`, a run as `LENGTH x COUNT`; the last ` x ` parts them."""

from fractions import Fraction

from webapp.core.reading import ReadingError, check_length, read, read_count
from webapp.core.setting import Setting
from webapp.core.text import WHITE, small

SIGNS = "x×"


def read_pair(text: str, setting: Setting, sign: str = "positive") -> list[Fraction]:
    """Read two lengths in inches, `1 1/2 x 5 1/2`."""
    cross = parting_sign(text, "Two lengths stand here with x between: 1 1/2 x 5 1/2.")
    first = read_part(text, 0, cross, setting, sign)
    return [first, read_part(text, cross + 1, len(text), setting, sign)]


def read_run(text: str, setting: Setting, sign: str = "positive") -> tuple[Fraction, int]:
    """Read a length in inches and how often it stands, `24 x 8`."""
    cross = parting_sign(text, "A length and a count stand here with x between: 24 x 8.")
    length = read_part(text, 0, cross, setting, sign)
    try:
        return length, read_count(text[cross + 1 :])
    except ReadingError as error:
        raise ReadingError(text, cross + 1 + error.position, error.reason) from None


def parting_sign(text: str, reason: str) -> int:
    """Find the last x that has white space on both sides."""
    check_length(text)
    found = parting_signs(text)
    if not found:
        raise ReadingError(text, 0, reason)
    return found[-1]


def parting_signs(text: str) -> list[int]:
    """Find every x that has white space on both sides."""
    letters = list(small(text))
    inner = range(1, len(letters) - 1)
    return [i for i in inner if letters[i] in SIGNS and letters[i - 1] in WHITE and letters[i + 1] in WHITE]


def read_part(text: str, start: int, end: int, setting: Setting, sign: str) -> Fraction:
    """Read one part of a text; an error has its place in the whole."""
    try:
        return read(text[start:end], setting, sign)
    except ReadingError as error:
        raise ReadingError(text, start + error.position, error.reason) from None
