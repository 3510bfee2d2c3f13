"""A layout with every slat at its place: wood and air in order, and how the middle falls."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import Length
from webapp.core.spacing_said import Said
from webapp.core.spacing_solve import Layout


@dataclass(frozen=True)
class Laid:
    """A layout at its places from the datum: left and right of each slat, exact and as LENGTHs."""

    made: Layout
    places: list[tuple[Fraction, Fraction]]
    lengths: list[tuple[Length, Length]]
    airs: list[str]  # what each piece of air is called, in order


def laid(said: Said, made: Layout, how: Setting) -> Laid:
    """Lay a layout out from the datum."""
    places = slat_places(made, said.offset + made.lead)
    lengths = [(length(left, how), length(right, how)) for left, right in places]
    return Laid(made, places, lengths, air_names(said, made))


def slat_places(made: Layout, start: Fraction) -> list[tuple[Fraction, Fraction]]:
    """Return left and right of each slat, exact, the first at `start`."""
    places = []
    left = start
    for width in made.widths:
        right = left + width
        places.append((left, right))
        left = right + made.gap
    return places


def air_names(said: Said, made: Layout) -> list[str]:
    """Name all the air in order: numbered gaps, and what stands at the ends."""
    if said.ends == "gap":
        return [f"gap {i + 1}" for i in range(made.count + 1)]
    inner = [f"gap {i + 1}" for i in range(made.count - 1)]
    outer = [] if made.lead == 0 else ["half gap" if said.ends == "half" else "margin"]
    return [*outer, *inner, *outer]


def airs(made: Layout) -> list[Fraction]:
    """Return all the air in order, margins and halves included: slats and airs fill the span."""
    outer = [] if made.lead == 0 else [made.lead]
    return [*outer, *[made.gap for _ in range(made.count - 1)], *outer]


def middle(said: Said, row: Laid) -> str:
    """Return how the middle of the span falls."""
    centre = said.offset + said.span / 2
    before = said.offset
    for i, (left, right) in enumerate(row.places):
        if centre < left:
            name = row.airs[i if row.made.lead > 0 else i - 1]
            return f"in the middle of {name}" if before + left == 2 * centre else f"in {name}"
        if centre <= right:
            return on_slat(i + 1, left, right, centre)
        before = right
    return f"in {row.airs[-1]}"


def on_slat(number: int, left: Fraction, right: Fraction, centre: Fraction) -> str:
    """Return how the middle falls on a slat: within it, in its own middle, or on an edge."""
    if centre in (left, right):
        return f"on the edge of slat {number}"
    return f"in the middle of slat {number}" if left + right == 2 * centre else f"on slat {number}"
