"""All terms of a text, and what may not stand between them."""

from webapp.core.reading_measure import ONE_UNIT, Term, term_at
from webapp.core.reading_pieces import ROUND_A_SIGN, Token, UnreadError
from webapp.core.reading_words import is_kind
from webapp.core.setting import Setting

MOST_TERMS = 16
NOTHING_BETWEEN = "Something is missing between two numbers: + - x or /, or the line of a fraction, 2 3/4."


def find_terms(tokens: list[Token], setting: Setting) -> dict[int, Term]:
    """Read all terms; each stands under the piece it begins at."""
    terms: dict[int, Term] = {}
    place = 0
    while place < len(tokens):
        term = term_at(tokens, place, setting)
        if term is None:
            check_sign(tokens[place])
            place += 1
            continue
        if len(terms) == MOST_TERMS:
            raise UnreadError(tokens[place].start, "A sum has at most 16 terms; work it in two.")
        check_next(tokens, term)
        terms[place] = term
        place = term.after
    return terms


def check_sign(token: Token) -> None:
    """Refuse a piece that is neither a term nor a sign of a sum."""
    if token.kind == "hyphen":
        raise UnreadError(token.start, ROUND_A_SIGN)
    if token.kind == "comma":
        raise UnreadError(token.start, "A comma stands inside a decimal, 45,5 mm, or before strong or scant.")
    if token.kind == "lean":
        raise UnreadError(token.start, f"Say {token.text} once, at the end: 17 3/8 {token.text}.")
    if token.kind == "unit":
        raise UnreadError(token.start, "A number is missing before this unit: 5 mm.")
    if token.kind == "word":
        raise UnreadError(token.start, f"A number does not go so at {token.text}; say seventeen and three eighths.")


def check_next(tokens: list[Token], term: Term) -> None:
    """Refuse a second unit, or a second number with nothing between."""
    if term.after >= len(tokens):
        return
    following = tokens[term.after]
    if following.kind == "unit":
        raise UnreadError(following.start, ONE_UNIT)
    if following.kind in ["whole", "decimal", "fraction", "word"]:
        united = is_kind(tokens, term.after - 1, "unit")
        raise UnreadError(following.start, ONE_UNIT if united else NOTHING_BETWEEN)
