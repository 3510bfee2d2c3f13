"""Exact values as text, back to numbers: "43/24", "-3", never what a user typed."""

from fractions import Fraction

DIGITS = "0123456789"


def from_exact(text: str) -> Fraction | None:
    """Return the value of an exact text in lowest terms, or None where it is no such text."""
    negative = text[:1] == "-"
    parts = (text[1:] if negative else text).split("/")
    if len(text) > 80 or len(parts) > 2 or not all(_plain(part) for part in parts):
        return None
    below = int(parts[1]) if len(parts) > 1 else 1
    if below == 0:
        return None
    size = Fraction(int(parts[0]), below)
    value = -size if negative else size
    return value if str(value) == text else None


def _plain(part: str) -> bool:
    return part != "" and part.strip(DIGITS) == ""
