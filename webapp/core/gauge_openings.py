"""The openings as they are said: a reading on each line, or said against the stick."""

from dataclasses import dataclass
from fractions import Fraction
from typing import NoReturn

from webapp.core.gauge_against import against, difference
from webapp.core.gauge_words import ERRORS
from webapp.core.reading import ReadingError, read
from webapp.core.reading_lines import Line, read_line, read_lines
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.text import fold_name, indent, trim

DIGITS = "0123456789"
AGAINST = (("fits", "fits"), ("lacks ", "lacks"), ("loose ", "loose"))
KEEPS = (("largest", "the largest"), ("smallest", "the smallest"))


@dataclass(frozen=True)
class Opening:
    """One place: its rail and end, and its size, or by how much it differs from the stick."""

    name: str
    rail: str
    end: str
    size: Fraction
    against: bool  # the stick


def read_openings(field: str, how: Setting) -> list[Opening]:
    """Read an opening on each line, `rail, end: reading`."""
    lines = read_lines(field)
    if len(lines) == 0:
        raise ReadingError(field, 0, ERRORS["nothing"])
    found = [opening_of(field, line, how) for line in lines]
    check_names(field, lines, found)
    return found


def opening_of(field: str, line: Line, how: Setting) -> Opening:
    """Read one line."""
    pieces = line.name.split(",")
    rail, end = trim(",".join(pieces[:-1])), trim(pieces[-1])
    if len(pieces) == 1:
        rail, end = line.name, ""
    elif rail == "" or end == "":
        refuse(field, line, "rail" if rail == "" else "end", {})
    if against(line.text):
        return Opening(line.name, rail, end, said_against(field, line, how), True)
    return Opening(line.name, rail, end, read_line(field, line, how, "positive"), False)


def refuse(field: str, line: Line, key: str, parts: dict[str, str]) -> NoReturn:
    """Raise the error of the table at a line, which it names."""
    reason = f"{line.name}: {sentence(ERRORS[key], parts)}"
    raise ReadingError(field, line.start + indent(line.text), reason)


def said_against(field: str, line: Line, how: Setting) -> Fraction:
    """Read what a line says against the stick; an error has its place in the whole field."""
    try:
        return difference(line.text, how)
    except ReadingError as error:
        raise ReadingError(field, line.start + error.position, f"{line.name}: {error.reason}") from None


def check_names(field: str, lines: list[Line], found: list[Opening]) -> None:
    """Refuse one place on two lines, and a rail that stands both alone and with an end."""
    ends: dict[str, list[str]] = {}
    for i, opening in enumerate(found):
        named = ends.setdefault(fold_name(opening.rail), [])
        end = fold_name(opening.end)
        if end in named:
            refuse(field, lines[i], "twice", {})
        named.append(end)
        if "" in named and len(named) > 1:
            refuse(field, lines[i], "alone", {"rail": opening.rail})


def read_keep(text: str, how: Setting) -> str | Fraction:
    """Read which opening is kept, or the stick's own length."""
    word = fold_name(text)
    if word in [name for name, label in KEEPS]:
        return word
    try:
        return read(text, how, "positive")
    except ReadingError as error:
        if any(letter in DIGITS for letter in list(text)):
            raise ReadingError(text, error.position, error.reason) from None
        raise ReadingError(text, 0, ERRORS["keep"]) from None
