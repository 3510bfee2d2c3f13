"""The one place where a square root is taken, and rounded: to 1/1000000 in, a half up (rule 14)."""

from fractions import Fraction

PARTS = 1000000


def root(square: Fraction) -> Fraction:
    """Return the root of a number that is not negative, rounded to 1/1000000, a half up."""
    halves = whole_root(4 * PARTS * PARTS * square.numerator // square.denominator)
    return Fraction((halves + 1) // 2, PARTS)


def whole_root(n: int) -> int:
    """Return the largest whole number whose square is at most n, by Newton's steps from above."""
    found = n
    better = (n + 1) // 2
    while better < found:
        found = better
        better = (found + n // found) // 2
    return found
