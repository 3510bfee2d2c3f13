"""The room that a cut off a rail's edge leaves for the slats' tenons (rule 8); other screens ask it too."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount, fine
from webapp.core.tool import Field

ZERO = Fraction(0)
CLEARANCE = Field(
    "clearance",
    "Clearance",
    "length",
    default=("1/16 in", "1.5 mm"),
    sign="zero",
    help="Between a tenon's end and the bottom of its mortise.",
)
ROOM = {
    "gone": "nothing is left of the mortise",
    "bottoms": "the tenon bottoms: {over} ({fine}) longer than the mortise is deep now",
    "touches": "the tenon stands on the bottom of the mortise: nothing to spare, and {clearance} is wanted",
    "tight": "the tenon goes in with {left} ({fine}) to spare, less than the {clearance} that is wanted",
    "fits": "the tenon goes in with {left} to spare",
    "open": "no slat's tenon longer than {longest}",
}


@dataclass(frozen=True)
class Room:
    """A slat's mortise after a cut, in inches; `tenon` is None where its length is not known."""

    depth: Fraction  # what the mortise is deep after the cut; 0 or less where the cut took all of it
    tenon: Fraction | None
    clearance: Fraction

    @property
    def longest(self) -> Fraction:
        """Return the longest tenon that a slat may have; 0 or less where there is room for none."""
        return self.depth - self.clearance

    @property
    def left(self) -> Fraction:
        """Return the room beyond the tenon's end, less than 0 where it bottoms; all of it where no tenon is known."""
        return self.depth if self.tenon is None else self.depth - self.tenon

    @property
    def needs(self) -> Fraction:
        """Return how deep the mortise must be for its tenon and the clearance; as it is where no tenon is known."""
        return self.depth if self.tenon is None else self.tenon + self.clearance

    @property
    def deepen(self) -> Fraction:
        """Return how much deeper the mortise must get, or how much comes off the tenon's end."""
        return max(ZERO, self.needs - self.depth)

    @property
    def standing(self) -> str:
        """Return which it is: gone, open (no tenon known), bottoms, touches, tight or fits."""
        if self.depth <= 0:
            return "gone"
        if self.tenon is None:
            return "open"
        if self.left < 0:
            return "bottoms"
        if self.left >= self.clearance:
            return "fits"
        return "tight" if self.left > 0 else "touches"


def room(depth: Fraction, cut: Fraction, tenon: Fraction | None, clearance: Fraction) -> Room:
    """Return the room in a mortise `depth` deep once `cut` is off the edge, all in inches; nothing is refused."""
    return Room(depth - cut, tenon, clearance)


def room_words(found: Room, how: Setting) -> str:
    """Return in words how the slats' tenons stand in it, as part of a sentence: no capital, no point."""
    size = abs(found.left)
    parts = {
        "over": amount(size, how),
        "left": amount(size, how),
        "fine": fine(size, how),
        "clearance": amount(found.clearance, how),
        "longest": amount(max(ZERO, found.longest), how),
    }
    return sentence(ROOM[found.standing], parts)
