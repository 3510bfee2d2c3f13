"""What each opening lacks against the gauge, and what is done about it by rail (rules 7 and 8)."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.gauge_openings import Opening
from webapp.core.jointing import Jointing, jointing
from webapp.core.text import fold_name

ZERO = Fraction(0)


@dataclass(frozen=True)
class Place:
    """One opening against the gauge, and what it alone would have trimmed."""

    said: Opening
    opening: Fraction
    difference: Fraction  # the gauge less the opening
    fits: bool
    trim: Fraction
    jointing: Jointing

    @property
    def loose(self) -> bool:
        """Whether no trimming mends it."""
        return not self.fits and self.difference < 0


@dataclass(frozen=True)
class Rail:
    """The places of one rail's edge, a parallel cut, and a further cut at each place where it tapers."""

    name: str
    places: list[Place]
    parallel: Fraction
    jointing: Jointing  # of the parallel cut
    taper: list[Fraction]
    cut: Fraction  # the most that comes off anywhere

    def cut_at(self, i: int) -> Fraction:
        """Return what comes off at one place."""
        return self.parallel + self.taper[i] if self.taper else self.parallel


@dataclass(frozen=True)
class Fitted:
    """A dry fit: the gauge, its places in the order said, and the rails."""

    gauge: Fraction
    keep: str | Fraction
    bite: Fraction
    tenon: Fraction | None
    places: list[Place]
    rails: list[Rail]

    @property
    def longest(self) -> Fraction:
        """The longest slat that goes in everywhere, each place trimmed by itself."""
        return min([place.opening + place.trim for place in self.places])

    @property
    def longest_done(self) -> Fraction:
        """The longest slat that goes in everywhere once the rails are cut."""
        return min([place.opening + rail.cut_at(i) for rail in self.rails for i, place in enumerate(rail.places)])


def fitted(
    openings: list[Opening], keep: str | Fraction, fit: Fraction, bite: Fraction, tenon: Fraction | None
) -> Fitted:
    """Work a dry fit; every opening is more than 0."""
    gauge = gauge_length(openings, keep)
    places = [place_of(opening, gauge, fit, bite) for opening in openings]
    return Fitted(gauge, keep, bite, tenon, places, rails_of(places, fit, bite))


def gauge_length(openings: list[Opening], keep: str | Fraction) -> Fraction:
    """Return the stick's length: said, or the largest or the smallest opening."""
    if not isinstance(keep, str):
        return keep
    sizes = [opening.size for opening in openings]
    return max(sizes) if keep == "largest" else min(sizes)


def place_of(opening: Opening, gauge: Fraction, fit: Fraction, bite: Fraction) -> Place:
    """Return an opening with its difference, and what that asks for (rule 7)."""
    size = gauge + opening.size if opening.against else opening.size
    lack = gauge - size
    trim = lack if lack > fit else ZERO
    return Place(opening, size, lack, abs(lack) <= fit, trim, jointing(trim, bite))


def rails_of(places: list[Place], fit: Fraction, bite: Fraction) -> list[Rail]:
    """Return the rails in the order in which they are first named."""
    found: dict[str, list[Place]] = {}
    for place in places:
        found.setdefault(fold_name(place.said.rail), []).append(place)
    return [rail_of(own, fit, bite) for own in found.values()]


def rail_of(places: list[Place], fit: Fraction, bite: Fraction) -> Rail:
    """Return what is done to one rail's edge (rule 8)."""
    name = places[0].said.rail
    lacks = [place.difference for place in places]
    most, least = max(lacks), min(lacks)
    if most <= fit:
        return Rail(name, places, ZERO, jointing(ZERO, bite), [], ZERO)
    if most - least <= fit:
        return Rail(name, places, most, jointing(most, bite), [], most)
    parallel = max(ZERO, least)
    taper = [max(ZERO, lack - parallel) for lack in lacks]
    return Rail(name, places, parallel, jointing(parallel, bite), taper, most)
