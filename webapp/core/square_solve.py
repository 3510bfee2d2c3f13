"""How far a frame is out of square, from its sides and diagonals."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.reading_pairs import parting_signs, read_pair, read_part
from webapp.core.root import root
from webapp.core.setting import Setting


@dataclass(frozen=True)
class Frame:
    """Four sides in order round from the bottom, and the diagonals, in inches."""

    sides: list[Fraction]
    rising: Fraction  # bottom left to top right
    falling: Fraction

    @property
    def along(self) -> Fraction:
        """Return the mean of bottom and top."""
        return (self.sides[0] + self.sides[2]) / 2

    @property
    def up(self) -> Fraction:
        """Return the mean of right and left."""
        return (self.sides[1] + self.sides[3]) / 2

    @property
    def excess(self) -> Fraction:
        """Return how much the rising diagonal's square is over the falling one's, in square inches."""
        return self.rising * self.rising - self.falling * self.falling

    @property
    def out(self) -> Fraction:
        """Return how far the top has gone right over the height: (d1² - d2²)/(4a) (geometry; rule 14)."""
        return self.excess / (4 * self.along)

    @property
    def out_up(self) -> Fraction:
        """Return how far the right end has gone up over the length: (d1² - d2²)/(4b)."""
        return self.excess / (4 * self.up)

    @property
    def goal(self) -> Fraction:
        """Return what both diagonals read when the frame is square: sqrt((d1² + d2²)/2)."""
        return root((self.rising * self.rising + self.falling * self.falling) / 2)

    @property
    def true(self) -> Fraction:
        """Return the diagonal that the sides alone would have, square: sqrt(a² + b²)."""
        return root(self.along * self.along + self.up * self.up)

    @property
    def clamp(self) -> str:
        """Return the longer diagonal, across which the clamp goes."""
        if self.excess == 0:
            return "none"
        return "rising" if self.excess > 0 else "falling"


def read_sides(text: str, how: Setting) -> list[Fraction]:
    """Read `a x b`, or all four sides in order round from the bottom, as four lengths in inches."""
    crosses = parting_signs(text)
    if len(crosses) != 3:
        return read_pair(text, how) * 2
    bounds = [-1] + crosses + [len(text)]
    return [read_part(text, bounds[i] + 1, bounds[i + 1], how, "positive") for i in range(4)]
