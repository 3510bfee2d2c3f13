"""Where a list of lengths is parted."""

from webapp.core.text import WHITE, small, trim
from webapp.core.words import LEANS


def list_parts(text: str) -> list[tuple[int, int]]:
    """Find the parts between semicolons, and between commas before white space, as (start, end)."""
    letters = list(text)
    parts: list[tuple[int, int]] = []
    start = 0
    for place, letter in enumerate(letters):
        if letter == ";" or (letter == "," and is_parting(letters, place)):
            parts.append((start, place))
            start = place + 1
    return parts + [(start, len(letters))]


def is_parting(letters: list[str], comma: int) -> bool:
    """Tell whether a comma parts a list: white space follows it, and not a lean by itself."""
    if comma + 1 >= len(letters) or letters[comma + 1] not in WHITE:
        return False
    end = comma + 1
    while end < len(letters) and letters[end] not in ",;":
        end += 1
    return small(trim("".join(letters[comma + 1 : end]))) not in LEANS
