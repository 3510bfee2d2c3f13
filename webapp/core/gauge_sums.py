"""The working of a gauge stick, as a maker writes it on a scrap of wood."""

from fractions import Fraction

from webapp.core.gauge_solve import Fitted, Place, Rail
from webapp.core.setting import Setting
from webapp.core.sums import exactly


def sums(made: Fitted, how: Setting) -> list[str]:
    """Return the lines of the working, each once."""
    lines = [difference_sum(made, place, how) for place in made.places]
    lines += [passes_sum(rail, made.bite, how) for rail in made.rails]
    if made.tenon is not None:
        lines.append(
            f"{exactly(made.gauge, how)} + 2 x {exactly(made.tenon, how)} = {exactly(made.gauge + 2 * made.tenon, how)}"
        )
    return list({line: True for line in lines if line})


def difference_sum(made: Fitted, place: Place, how: Setting) -> str:
    """Return how an opening and the stick differ; an opening that was said against the stick, from it."""
    if place.difference == 0:
        return ""
    stick, size = exactly(made.gauge, how), exactly(abs(place.difference), how)
    opening = exactly(place.opening, how)
    if place.said.against:
        return f"{stick} {'-' if place.difference > 0 else '+'} {size} = {opening}"
    return f"{stick} - {opening} = {size}" if place.difference > 0 else f"{opening} - {stick} = {size}"


def passes_sum(rail: Rail, bite: Fraction, how: Setting) -> str:
    """Return how bites come to a parallel cut; one light pass needs no line."""
    if rail.jointing.full == 0:
        return ""
    cut, rest = exactly(rail.parallel, how), exactly(rail.jointing.rest, how)
    full = f"{rail.jointing.full} x {exactly(bite, how)}"
    return f"{full} + {rest} = {cut}" if rail.jointing.rest > 0 else f"{full} = {cut}"
