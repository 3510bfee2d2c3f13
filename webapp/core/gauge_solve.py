"""What each opening lacks against the gauge, and what is done about it by rail (rules 7 and 8)."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.gauge_openings import Opening
from webapp.core.jointing import Jointing, jointing
from webapp.core.text import fold_name

ZERO = Fraction(0)


@dataclass(frozen=True)
class Place:
    """One opening against the gauge: `difference` is the gauge less the opening."""

    said: Opening
    opening: Fraction
    difference: Fraction
    fit: Fraction
    bite: Fraction

    @property
    def fits(self) -> bool:
        """Whether the stick goes in, as near as fitting is meant."""
        return abs(self.difference) <= self.fit

    @property
    def trim(self) -> Fraction:
        """What this place alone would have trimmed."""
        return self.difference if self.difference > self.fit else ZERO

    @property
    def jointing(self) -> Jointing:
        """The passes of that trim."""
        return jointing(self.trim, self.bite)

    @property
    def loose(self) -> bool:
        """Whether no trimming mends it."""
        return self.difference < -self.fit


@dataclass(frozen=True)
class Rail:
    """The places of one rail's edge, a parallel cut, and a further cut at each place where it tapers."""

    name: str
    places: list[Place]
    parallel: Fraction
    taper: list[Fraction]

    @property
    def jointing(self) -> Jointing:
        """The passes of the parallel cut."""
        return jointing(self.parallel, self.places[0].bite)

    @property
    def cut(self) -> Fraction:
        """The most that comes off anywhere."""
        return self.parallel + max(self.taper, default=ZERO)

    def cut_at(self, i: int) -> Fraction:
        """Return what comes off at one place."""
        return self.parallel + (self.taper[i] if self.taper else ZERO)


@dataclass(frozen=True)
class Fitted:
    """A dry fit: the gauge, its places in the order said, and the rails."""

    gauge: Fraction
    keep: str | Fraction
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
    return Fitted(gauge, keep, tenon, places, rails_of(places, fit))


def gauge_length(openings: list[Opening], keep: str | Fraction) -> Fraction:
    """Return the stick's length: said, or the largest or the smallest opening."""
    if not isinstance(keep, str):
        return keep
    sizes = [opening.size for opening in openings]
    return max(sizes) if keep == "largest" else min(sizes)


def place_of(opening: Opening, gauge: Fraction, fit: Fraction, bite: Fraction) -> Place:
    """Return an opening with its difference."""
    size = gauge + opening.size if opening.against else opening.size
    return Place(opening, size, gauge - size, fit, bite)


def rails_of(places: list[Place], fit: Fraction) -> list[Rail]:
    """Return the rails in the order in which they are first named."""
    found: dict[str, list[Place]] = {}
    for place in places:
        found.setdefault(fold_name(place.said.rail), []).append(place)
    return [rail_of(own, fit) for own in found.values()]


def rail_of(places: list[Place], fit: Fraction) -> Rail:
    """Return what is done to one rail's edge (rule 8)."""
    name = places[0].said.rail
    lacks = [place.difference for place in places]
    most, least = max(lacks), min(lacks)
    if most <= fit:
        return Rail(name, places, ZERO, [])
    if most - least <= fit:
        return Rail(name, places, most, [])
    parallel = max(ZERO, least)
    return Rail(name, places, parallel, [max(ZERO, lack - parallel) for lack in lacks])
