"""A list field: one entry a line, `name: text`."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.reading import ReadingError, read
from webapp.core.setting import Setting
from webapp.core.text import fold_name, trim

MOST_LINES = 200
MOST_LETTERS = 40000


@dataclass(frozen=True)
class Line:
    """One entry: its name, its text, and where the text begins in the field."""

    name: str
    text: str
    start: int


def read_places(field: str, setting: Setting, sign: str = "positive") -> list[tuple[str, Fraction]]:
    """Read a length on each line, as pairs of name and length."""
    return [(line.name, read_line(field, line, setting, sign)) for line in read_lines(field)]


def read_line(field: str, line: Line, setting: Setting, sign: str) -> Fraction:
    """Read the length of one line; an error has its place in the whole field."""
    try:
        return read(line.text, setting, sign)
    except ReadingError as error:
        raise ReadingError(field, line.start + error.position, f"{line.name}: {error.reason}") from None


def read_lines(field: str) -> list[Line]:
    """Part a field into named lines; names must differ, case and spaces folded."""
    if len(field) > MOST_LETTERS:
        raise ReadingError(field, MOST_LETTERS, "A list has at most 40000 characters; part it in two.")
    found: list[Line] = []
    places: dict[str, int] = {}
    start = 0
    for raw in field.split("\n"):
        text = raw[:-1] if raw.endswith("\r") else raw
        if trim(text) != "":
            if len(found) == MOST_LINES:
                raise ReadingError(field, start, "A list has at most 200 lines; part it in two.")
            line = line_of(text, start, len(found) + 1)
            check_name(field, line, start, places)
            found.append(line)
        start += len(raw) + 1
    return found


def line_of(text: str, start: int, number: int) -> Line:
    """Split a line at its last colon; without a colon its number is its name."""
    pieces = text.split(":")
    after = pieces[-1]
    before = trim(":".join(pieces[:-1]))
    return Line(before or str(number), after, start + len(text) - len(after))


def check_name(field: str, line: Line, start: int, places: dict[str, int]) -> None:
    """Refuse a name that another line has."""
    name = fold_name(line.name)
    if name in places:
        raise ReadingError(field, start, f"Two lines are named {line.name}; give each a name of its own.")
    places[name] = start
