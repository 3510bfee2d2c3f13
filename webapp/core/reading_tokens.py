"""The pieces of a typed length: numbers, words, units, signs and brackets, each with its place."""

from fractions import Fraction

from webapp.core.reading_numbers import DIGITS, is_digit, number_at
from webapp.core.reading_pieces import ROUND_A_SIGN, Token, UnreadError
from webapp.core.text import SMALL, WHITE, small
from webapp.core.words import LEANS, UNIT_NAMES, is_number_word

VULGAR = {
    "¼": (1, 4), "½": (1, 2), "¾": (3, 4), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8),
    "⅓": (1, 3), "⅔": (2, 3), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5), "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6),
}  # fmt: skip
MARKS = {"'": "ft", "′": "ft", "’": "ft", '"': "in", "″": "in", "”": "in"}
TIMES = {"*": "x", "×": "x", "÷": "/"}
BRACKETS = {"(": "open", ")": "close"}
WORD_OPERATORS = {"x": "x", "plus": "+", "minus": "-"}
NUMBERS = ["whole", "decimal", "fraction"]
DIVIDE = "A fraction is two whole numbers without spaces, 3/16; a division has spaces, 3 / 2."


def tokens(text: str) -> list[Token]:
    """Part a text into its pieces."""
    letters = list(small(text))
    found: list[Token] = []
    place = 0
    while place < len(letters):
        if letters[place] in WHITE:
            place += 1
        else:
            token = token_at(letters, place)
            if len(found) > 0:
                check_touching(found[-1], token)
            found.append(token)
            place = token.end
    return found


def check_touching(before: Token, token: Token) -> None:
    """Refuse a word that touches digits, five3/16."""
    touching = before.end == token.start and (is_said(before) or is_said(token))
    if touching and (is_said(before) or before.kind in NUMBERS) and (is_said(token) or token.kind in NUMBERS):
        raise UnreadError(token.start, "Put a space between a word and digits; write it like five 3/16.")


def is_said(token: Token) -> bool:
    """Tell whether a piece is a word of a number, or plus or minus as a word."""
    return token.kind == "word" or (token.kind == "op" and token.end - token.start > 1)


def token_at(letters: list[str], start: int) -> Token:
    """Read the piece that begins at a place."""
    letter = letters[start]
    if letter in DIGITS or (letter == "." and is_digit(letters, start + 1)):
        return number_at(letters, start)
    if letter in SMALL:
        return word_at(letters, start)
    if letter in VULGAR:
        top, bottom = VULGAR[letter]
        return Token("fraction", letter, start, start + 1, Fraction(top, bottom))
    if letter in "+-/":
        return sign_at(letters, start)
    return mark_at(letters, start)


def mark_at(letters: list[str], start: int) -> Token:
    """Read a piece of one character: a prime, a times sign, a bracket, a comma."""
    letter = letters[start]
    if letter in MARKS:
        return Token("unit", MARKS[letter], start, start + 1)
    if letter in TIMES:
        return Token("op", TIMES[letter], start, start + 1)
    if letter in BRACKETS:
        return Token(BRACKETS[letter], letter, start, start + 1)
    if letter == ",":
        return Token("comma", letter, start, start + 1)
    if letter == ".":
        raise UnreadError(start, "Digits are missing after the point: 2.5.")
    raise UnreadError(start, "This is no part of a length; write it like 17 3/8, 5' 2 3/16\" or 45.5 mm.")


def is_white(letters: list[str], place: int) -> bool:
    """Tell whether white space, or an end of the text, is at a place."""
    return place < 0 or place >= len(letters) or letters[place] in WHITE


def word_at(letters: list[str], start: int) -> Token:
    """Read a run of letters."""
    end = start
    while end < len(letters) and letters[end] in SMALL:
        end += 1
    word = "".join(letters[start:end])
    if word in WORD_OPERATORS:
        return Token("op", WORD_OPERATORS[word], start, end)
    if word in UNIT_NAMES:
        return Token("unit", UNIT_NAMES[word], start, end)
    if word in LEANS:
        return Token("lean", word, start, end)
    if is_number_word(word):
        return Token("word", word, start, end)
    raise UnreadError(
        start, f'"{word}" is no word of a length; there are numbers, in, ft, mm, cm, m, strong and scant.'
    )


def sign_at(letters: list[str], start: int) -> Token:
    """Read + - or /: with a space on both sides a sum, a touching - a hyphen or the first sign."""
    letter, end = letters[start], start + 1
    if is_white(letters, start - 1) and is_white(letters, end):
        return Token("op", letter, start, end)
    if letter == "/":
        raise UnreadError(start, slash_reason(letters, start))
    if letter == "+":
        raise UnreadError(start, ROUND_A_SIGN)
    first = start == 0 or letters[start - 1] == "("
    return Token("op" if first else "hyphen", letter, start, end)


def slash_reason(letters: list[str], place: int) -> str:
    """Say what a line lacks that is neither a fraction's nor a division's."""
    if is_digit(letters, place + 1) and is_white(letters, place - 1):
        return "Nothing stands over the line of this fraction; write it like 3/16."
    if place > 0 and is_digit(letters, place - 1) and not is_digit(letters, place + 1):
        return "Nothing stands under the line of this fraction; write it like 3/16."
    return DIVIDE
