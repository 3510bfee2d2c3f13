"""Readings that are out from their fellows in a round: they are asked again, once."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.setting import Setting
from webapp.core.text import fold_name

OPENING = "opening"
DIAGONAL = "diagonal"
SHOULDER = "shoulder line"
SIDE = "side"
GROUPS = {name: word for word in (DIAGONAL, SHOULDER, SIDE) for name in (word, word + "s")}
# Over this a reading is taken for a misread: a quarter of an inch, or six millimetres, is more than a dry fit shows.
FAR_INCHES = Fraction(1, 4)
FAR_MM = 6
# And at just these: an inch's number, or one line of the eighths, misread. A metric tape is misread by one of its
# numbers, a centimetre, or by its longer lines, five millimetres.
JUST_INCHES = (Fraction(1), Fraction(1, 8))
JUST_MM = (10, 5)
NEAR = Fraction(1, 32)  # inches: on a coarse graduation half a division would take in every neighbour


@dataclass(frozen=True)
class Reading:
    """What was read last at one place of a round: its group, inches, and its rank by the fold's order."""

    group: str
    inches: Fraction | None
    rank: list[int]


def group_of(place: str) -> str:
    """Return what a place is one of; its fellows are those of the same group."""
    return GROUPS.get(fold_name(place.split(",")[0]), OPENING)


def odd_by(own: Reading, others: list[Reading], how: Setting) -> Fraction | None:
    """Return by how much a reading is over its fellows' middle, if it is to be asked again.

    Sides have no fellows. Of two the later one is asked. Of an even number the nearer of the two in the middle counts:
    beside one that is misread and one that is not, a good one is not out.
    """
    fellows = [r for r in others if r.group == own.group and r.inches is not None]
    if own.inches is None or own.group == SIDE or not fellows:
        return None
    if len(fellows) == 1 and own.rank < fellows[0].rank:
        return None
    out = own.inches - _middle([r.inches for r in fellows if r.inches is not None], own.inches)
    return out if is_odd(abs(out), how) else None


def _middle(values: list[Fraction], own: Fraction) -> Fraction:
    """Return the median, of an even number the nearer one."""
    rising = sorted(values)
    low, high = rising[(len(rising) - 1) // 2], rising[len(rising) // 2]
    return low if abs(own - low) <= abs(own - high) else high


def is_odd(out: Fraction, how: Setting) -> bool:
    """Say whether a reading that is so far out is asked again."""
    mm = how.factors["mm"]
    far = FAR_MM * mm if how.metric else FAR_INCHES
    just = [each * mm for each in JUST_MM] if how.metric else list(JUST_INCHES)
    near = min(how.division / 2, NEAR)
    return out > far or any(abs(out - each) <= near for each in just)
