"""Texts in entries: which are well formed, how long they may be, and what is said of the others."""

from webapp.core.text import WHITE, lines, trim

NAME = 80  # a project, a place, a sheet, a device
WHY = 200
NOTE = 1000
HEX = "0123456789abcdef"
DAYS = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
EDGE = WHITE + "\n"
INSTANT = "0000-00-00T00:00:00.000Z"
IDENTITY = "00000000-0000-7000-y000-000000000000"


def bad_text(text: str) -> bool:
    """Say whether a text holds what no keyboard writes: half a character, or a control character."""
    return any(ord(c) < 32 or 0xD800 <= ord(c) <= 0xDFFF or 0x7F <= ord(c) < 0xA0 for c in text)


def line_error(text: str, most: int) -> str:
    """Return what is wrong with one line of free text, or nothing."""
    if bad_text(text):
        return "This holds a character that cannot be written; type it anew on one line."
    if len(text) > most:
        return f"This has {len(text)} characters; there is room for {most}."
    return ""


def needed_error(text: str, asked: str, most: int) -> str:
    """Return what is wrong with a line that may not be blank; `asked` says what belongs there."""
    return line_error(text, most) if text != "" else asked


def note_error(text: str) -> str:
    """Return what is wrong with a note, which may have several lines."""
    return line_error(text.replace("\n", " "), NOTE)


def tidy(typed: dict[str, str], name: str) -> str:
    """Return a field as it is kept: outer white removed."""
    return trim(typed.get(name, ""))


def tidy_lines(typed: dict[str, str], name: str) -> str:
    """Return a field of several lines as it is kept: one kind of line end, outer white removed."""
    return "\n".join(lines(typed.get(name, ""))).strip(EDGE)


def is_identity(text: str) -> bool:
    """Say whether a text is a UUIDv7 (RFC 9562) in lower case."""
    return len(text) == len(IDENTITY) and all(_hex_fits(text[i], IDENTITY[i]) for i in range(len(text)))


def _hex_fits(c: str, want: str) -> bool:
    if want == "0":
        return c in HEX
    return c in "89ab" if want == "y" else c == want


def is_instant(text: str) -> bool:
    """Say whether a text is a time of RFC 3339 in UTC with milliseconds, as "2026-11-25T10:17:35.123Z"."""
    if len(text) != len(INSTANT) or not all(_digit_fits(text[i], INSTANT[i]) for i in range(len(text))):
        return False
    return _is_day(int(text[0:4]), int(text[5:7]), int(text[8:10])) and _is_time(text)


def _digit_fits(c: str, want: str) -> bool:
    return c in "0123456789" if want == "0" else c == want


def _is_time(text: str) -> bool:
    return int(text[11:13]) < 24 and int(text[14:16]) < 60 and int(text[17:19]) < 60


def _is_day(year: int, month: int, day: int) -> bool:
    if not 1 <= month <= 12 or not 1 <= day <= DAYS[month - 1]:
        return False
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    return leap or (month, day) != (2, 29)
