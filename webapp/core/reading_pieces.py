"""One piece of a typed length, and what is said when a text cannot be read."""

from dataclasses import dataclass
from fractions import Fraction

# The fault of 5-3 and of 5+ 3, which can be found by their look and in their place.
ROUND_A_SIGN = "Put a space on both sides of + and -: 5 - 3/16."
NOTHING = Fraction(0)


class UnreadError(ValueError):
    """What is wrong in a text, what would be right, and the place."""

    def __init__(self, position: int, reason: str) -> None:
        super().__init__(reason)
        self.position = position
        self.reason = reason


@dataclass(frozen=True)
class Token:
    """One piece; kinds: whole, decimal, fraction, word, lean, unit, op, hyphen, open, close, comma."""

    kind: str
    text: str
    start: int
    end: int
    value: Fraction = NOTHING
