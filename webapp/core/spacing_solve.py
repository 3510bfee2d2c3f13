"""What is left out of a spacing, worked from what was said (rules 2 and 3)."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.spacing_said import MOST, ZERO, Said, shares, total

NEIGHBOURS = 2  # counts shown on either side


@dataclass(frozen=True)
class Layout:
    """One way to lay the slats out: how many, their widths in turn, the gap, the air before the first."""

    count: int
    pattern: list[Fraction]
    gap: Fraction
    lead: Fraction

    @property
    def stands(self) -> bool:
        """Whether wood and air are all there."""
        return self.gap > 0 and self.lead >= 0 and self.pattern[0] > 0

    @property
    def widths(self) -> list[Fraction]:
        """The width of every slat."""
        turns = len(self.pattern)
        return [self.pattern[i % turns] for i in range(self.count)]

    @property
    def mean(self) -> Fraction:
        """The mean of the widths used."""
        return self.pattern[0] if len(self.pattern) == 1 else total(self.pattern, self.count) / self.count


def layout(said: Said, n: int) -> Layout:
    """Return what n slats come to, with all else as said; it may not stand."""
    u = shares(said.ends, n)
    if said.frees_margin:
        return freed(said, n)
    if said.slat:
        return ended(said, n, said.slat, (said.room - total(said.slat, n)) / u)
    if said.gap is not None:
        return ended(said, n, [(said.room - u * said.gap) / n], said.gap)
    even = said.room / (n + u)
    return ended(said, n, [even], even)


def freed(said: Said, n: int) -> Layout:
    """Return n slats with their gap as said, and what is over as two margins."""
    gap = ZERO if said.gap is None else said.gap
    over = said.span - total(said.slat, n) - (n - 1) * gap
    return Layout(n, said.slat, gap, over / 2)


def ended(said: Said, n: int, pattern: list[Fraction], gap: Fraction) -> Layout:
    """Return the layout with the air at its ends that `ends` asks for."""
    if said.ends == "gap":
        return Layout(n, pattern, gap, gap)
    if said.ends == "half":
        return Layout(n, pattern, gap, gap / 2)
    return Layout(n, pattern, gap, ZERO if said.margin is None else said.margin)


def nearest_layout(said: Said) -> Layout:
    """Return the count whose gap is nearest to the gap said, else to the slats; a tie takes more slats."""
    best = layout(said, said.least)
    least = missed(said, best)
    for n in range(said.least + 1, MOST + 1):
        tried = layout(said, n)
        if not tried.stands:
            break
        off = missed(said, tried)
        if off <= least:
            best, least = tried, off
    return best


def missed(said: Said, tried: Layout) -> Fraction:
    """Return how far a gap is from the gap said, or else from the mean of the widths used."""
    return abs(tried.gap - (tried.mean if said.gap is None else said.gap))


def alternatives(said: Said, n: int) -> list[Layout]:
    """Return the two possible counts below n and the two above, rising."""
    below = [layout(said, k) for k in range(max(said.least, n - NEIGHBOURS), n)]
    above = [layout(said, k) for k in range(n + 1, min(MOST, n + NEIGHBOURS) + 1)]
    return [tried for tried in below + above if tried.stands]
