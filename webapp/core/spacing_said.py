"""What was said of a spacing, and the rules of its ends (rule 2)."""

from dataclasses import dataclass
from fractions import Fraction

ZERO = Fraction(0)
MOST = 1000  # slats
LEAST = {"gap": 1, "slat": 2, "half": 1, "margin": 2}  # slats, so that there is a gap to share


@dataclass(frozen=True)
class Said:
    """What was said, in inches; what was left out is an empty list, 0 or None."""

    span: Fraction
    slat: list[Fraction]
    count: int
    gap: Fraction | None
    ends: str
    margin: Fraction | None
    shoulder: Fraction | None
    offset: Fraction

    @property
    def least(self) -> int:
        """The fewest slats that leave a gap to share."""
        return LEAST[self.ends]

    @property
    def room(self) -> Fraction:
        """What slats and gaps share: the span less both margins."""
        return self.span if self.margin is None else self.span - 2 * self.margin

    @property
    def frees_margin(self) -> bool:
        """Whether the margin is what is left out."""
        return self.ends == "margin" and self.margin is None

    @property
    def turns(self) -> int:
        """How many widths repeat in turn."""
        return len(self.slat)


def shares(ends: str, n: int) -> int:
    """Return how many gaps (two halves are one) share what n slats leave."""
    if ends == "gap":
        return n + 1
    return n if ends == "half" else n - 1


def total(widths: list[Fraction], n: int) -> Fraction:
    """Return what n slats take, their widths in turn."""
    if len(widths) == 1:
        return n * widths[0]
    rounds, rest = divmod(n, len(widths))
    return rounds * sum(widths, ZERO) + sum(widths[:rest], ZERO)
