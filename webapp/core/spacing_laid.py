"""A layout with every slat at its place: wood and air in order, and how the middle falls."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.ruler import Ruler, ruler
from webapp.core.setting import Setting
from webapp.core.sheet import Length
from webapp.core.spacing_said import Said
from webapp.core.spacing_solve import Layout


@dataclass(frozen=True)
class Laid:
    """A layout at its places from the datum: left and right of each slat, on a ruler and as LENGTHs."""

    made: Layout
    ruler: Ruler
    places: list[tuple[int, int]]
    lengths: list[tuple[Length, Length]]
    airs: list[str]  # what each piece of air is called, in order


def laid(said: Said, made: Layout, how: Setting) -> Laid:
    """Lay a layout out from the datum."""
    shoulder = [] if said.shoulder is None else [said.shoulder]
    rule = ruler([said.span, said.offset, made.lead, made.gap, *made.pattern, *shoulder], how)
    places = slat_places(made, rule, said.offset + made.lead)
    lengths = [(rule.length(left), rule.length(right)) for left, right in places]
    return Laid(made, rule, places, lengths, air_names(said, made))


def slat_places(made: Layout, rule: Ruler, start: Fraction) -> list[tuple[int, int]]:
    """Return left and right of each slat on the ruler, exact, the first at `start`."""
    widths = [rule.top(width) for width in made.pattern]
    gap = rule.top(made.gap)
    places = []
    left = rule.top(start)
    for i in range(made.count):
        right = left + widths[i % len(widths)]
        places.append((left, right))
        left = right + gap
    return places


def air_names(said: Said, made: Layout) -> list[str]:
    """Name all the air in order: numbered gaps, and what stands at the ends."""
    if said.ends == "gap":
        return [f"gap {i + 1}" for i in range(made.count + 1)]
    inner = [f"gap {i + 1}" for i in range(made.count - 1)]
    outer = ["half gap" if said.ends == "half" else "margin" for lead in outer_airs(made)]
    return [*outer, *inner, *outer]


def outer_airs(made: Layout) -> list[Fraction]:
    """Return the air that stands at each end, where there is any."""
    return [made.lead] if made.lead > 0 else []


def middle(said: Said, row: Laid) -> str:
    """Return how the middle of the span falls."""
    twice = row.ruler.top(2 * said.offset + said.span)
    before = row.ruler.top(said.offset)
    for i, (left, right) in enumerate(row.places):
        if twice < 2 * left:
            name = row.airs[i if row.made.lead > 0 else i - 1]
            return f"in the middle of {name}" if before + left == twice else f"in {name}"
        if twice <= 2 * right:
            return on_slat(i + 1, left, right, twice)
        before = right
    return f"in {row.airs[-1]}"


def on_slat(number: int, left: int, right: int, twice: int) -> str:
    """Return how the middle falls on a slat: within it, in its own middle, or on an edge."""
    if twice in (2 * left, 2 * right):
        return f"on the edge of slat {number}"
    return f"in the middle of slat {number}" if left + right == twice else f"on slat {number}"
