"""What is said against a stick: it fits, lacks so much, or is loose by so much."""

from fractions import Fraction

from webapp.core.gauge_words import ERRORS
from webapp.core.reading import ReadingError, read
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.text import fold_name, indent, trim

FITS = "fits"
SIGNS = {"lacks": -1, "loose": 1}


def against(text: str) -> bool:
    """Say whether a text is said against a stick."""
    word = fold_name(text).split(" ")[0]
    return word == FITS or word in SIGNS


def difference(text: str, how: Setting) -> Fraction:
    """Return by how much a place is over the stick, less than 0 where it lacks; there may be a `by` between."""
    word = fold_name(text).split(" ")[0]
    if word == FITS:
        if fold_name(text) != FITS:
            raise ReadingError(text, indent(text), ERRORS["fits"])
        return Fraction(0)
    after = indent(text) + len(word)
    if fold_name(text[after:]).split(" ")[0] == "by":
        after += indent(text[after:]) + len("by")
    if trim(text[after:]) == "":
        raise ReadingError(text, indent(text), sentence(ERRORS["how-much"], {"word": word}))
    try:
        return SIGNS[word] * read(text[after:], how, "positive")
    except ReadingError as error:
        raise ReadingError(text, after + error.position, error.reason) from None
