"""Numbers in digits: whole ones, decimals and fractions."""

from fractions import Fraction

from webapp.core.reading_pieces import Token, UnreadError

DIGITS = "0123456789"


def is_digit(letters: list[str], place: int) -> bool:
    """Tell whether a digit stands at a place."""
    return place < len(letters) and letters[place] in DIGITS


def digits_end(letters: list[str], start: int) -> int:
    """Find where a run of digits ends."""
    end = start
    while is_digit(letters, end):
        end += 1
    return end


def number_at(letters: list[str], start: int) -> Token:
    """Read digits, and the point or comma with decimals, or the line with a denominator after them."""
    end = digits_end(letters, start)
    after = letters[end] if end < len(letters) else ""
    if after in [".", ","] and is_digit(letters, end + 1):
        return decimal_at(letters, start, end)
    if after == "/" and is_digit(letters, end + 1):
        return fraction_at(letters, start, end)
    digits = "".join(letters[start:end])
    return Token("whole", digits, start, end, Fraction(int(digits)))


def decimal_at(letters: list[str], start: int, point: int) -> Token:
    """Read a decimal, whose point or comma stands at `point`."""
    end = digits_end(letters, point + 1)
    tens = int("1" + "0" * (end - point - 1))
    whole = int("0" + "".join(letters[start:point]))
    part = int("".join(letters[point + 1 : end]))
    return Token("decimal", "".join(letters[start:end]), start, end, Fraction(whole * tens + part, tens))


def fraction_at(letters: list[str], start: int, line: int) -> Token:
    """Read a fraction, whose line stands at `line`."""
    end = digits_end(letters, line + 1)
    bottom = int("".join(letters[line + 1 : end]))
    if bottom == 0:
        raise UnreadError(line + 1, "A fraction cannot have 0 under its line; write it like 3/16.")
    top = int("".join(letters[start:line]))
    return Token("fraction", "".join(letters[start:end]), start, end, Fraction(top, bottom))
