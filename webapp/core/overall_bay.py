"""Two posts, what is clear between them, and the rail that goes in (rule 16)."""

from dataclasses import dataclass
from fractions import Fraction

CLEARANCE = Fraction(1, 16)  # between a tenon's end and its mortise's bottom (rule 11, common practice)
LEAD = Fraction(1, 16)  # how far the bit's point is ahead (rule 11)
WALL = Fraction(1, 4)  # the least that stays behind a mortise (rule 11)


@dataclass(frozen=True)
class End:
    """One end of a rail: its post's thickness, and the tenon in it (0 where none was said)."""

    post: Fraction
    tenon: Fraction

    @property
    def inside(self) -> Fraction:
        """Return how much of the post the tenon fills."""
        return min(self.post, self.tenon)

    @property
    def through(self) -> bool:
        """Whether the tenon comes out of the post's far side, or is flush with it."""
        return self.tenon >= self.post

    @property
    def wall(self) -> Fraction:
        """Return what stays of the post behind a blind mortise: less the clearance and the bit's lead (rule 11)."""
        return self.post - self.tenon - CLEARANCE - LEAD


@dataclass(frozen=True)
class Bay:
    """What is over all, and both ends, the first at the datum."""

    overall: Fraction
    first: End
    second: End

    @property
    def clear(self) -> Fraction:
        """Return what is between the posts, which is the rail from shoulder to shoulder."""
        return self.overall - self.first.post - self.second.post

    @property
    def tenoned(self) -> bool:
        """Whether tenons were said."""
        return self.first.tenon > 0

    @property
    def rail(self) -> Fraction:
        """Return the rail's length over its tenons."""
        return self.first.tenon + self.clear + self.second.tenon


def bay(overall: Fraction, posts: tuple[Fraction, Fraction], tenon: Fraction | None, proud: Fraction | None) -> Bay:
    """Return the bay; with `proud` each tenon is as long as its own post and what stands proud (rule 9)."""
    one, other = posts
    if proud is not None:
        return Bay(overall, End(one, one + proud), End(other, other + proud))
    long = Fraction(0) if tenon is None else tenon
    return Bay(overall, End(one, long), End(other, long))
