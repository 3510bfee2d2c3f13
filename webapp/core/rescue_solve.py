"""Slats that are cut, against an opening that is another now (rule 17)."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.trim_room import ZERO, Room, room


@dataclass(frozen=True)
class Rescue:
    """Slats as they are, and the opening as it is now, in inches; None where nothing was said."""

    overall: Fraction
    shoulder: Fraction | None  # between the shoulders as cut; None where none is cut yet
    wanted: Fraction
    planned: Fraction | None  # the tenon as it was to be
    depth: Fraction | None
    clearance: Fraction

    @property
    def tenon(self) -> Fraction:
        """Return the tenon at each end once the shoulders are where they are wanted; 0 or less where none is left."""
        return (self.overall - self.wanted) / 2

    @property
    def was(self) -> Fraction:
        """Return the tenon at each end as cut; the one that is wanted where no shoulder is cut yet."""
        return self.tenon if self.shoulder is None else (self.overall - self.shoulder) / 2

    @property
    def over(self) -> Fraction:
        """Return how much too long the slats are between the shoulders, less than 0 where they are short."""
        return ZERO if self.shoulder is None else self.shoulder - self.wanted

    @property
    def recut(self) -> Fraction:
        """Return how much farther in each end is cut again."""
        return self.over / 2

    @property
    def short(self) -> Fraction:
        """Return what no cut gives back: how far shoulders, or whole slats, fall short of the opening."""
        return -self.over if self.over < 0 else max(ZERO, self.wanted - self.overall)

    @property
    def standing(self) -> str:
        """Return which it is: short (new slats), uncut (no shoulder cut yet), fits or recut."""
        if self.over < 0 or self.tenon <= 0:
            return "short"
        if self.shoulder is None:
            return "uncut"
        return "recut" if self.over > 0 else "fits"

    @property
    def mends(self) -> bool:
        """Whether these slats can be used."""
        return self.standing != "short"

    @property
    def room(self) -> Room | None:
        """Return how the tenon then stands in its mortise, where the slats can be used and its depth is known."""
        return room(self.depth, ZERO, self.tenon, self.clearance) if self.depth is not None and self.mends else None

    @property
    def anew(self) -> Fraction | None:
        """Return how long new slats are over all: with the tenon as planned, else as cut; None where neither is."""
        if self.planned is not None:
            return self.wanted + 2 * self.planned
        return None if self.shoulder is None else self.wanted + 2 * self.was
