"""The answer and the figures of a gauge stick, and each place in words."""

from webapp.core.gauge_solve import Fitted, Place
from webapp.core.gauge_tapes import USUAL, disagreement
from webapp.core.gauge_words import KEPT, PLACES, STICK
from webapp.core.mark import length
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure
from webapp.core.sums import amount, fine


def answer(made: Fitted, how: Setting) -> Part:
    """Return the gauge length, with what it is of."""
    label = KEPT[made.keep] if isinstance(made.keep, str) else STICK
    return figure("gauge", label, length(made.gauge, how))


def figures(made: Fitted, how: Setting) -> list[Part]:
    """Return the slats, the longest that goes in, what tapes may do, and each place."""
    found = [figure("shoulder", "Slats, shoulder to shoulder", length(made.gauge, how))]
    if made.tenon is not None:
        found.append(figure("overall", "Slats, over all", length(made.gauge + 2 * made.tenon, how)))
    tapes = disagreement(made.gauge, USUAL, how)
    return [
        *found,
        figure("longest", "Longest that goes in everywhere", length(made.longest, how)),
        figure("tapes", f"Two class {USUAL} tapes may disagree, {fine(tapes, how)}", length(tapes, how)),
        *[figure(f"place-{i + 1}", numbered(i, place), place_words(place, how)) for i, place in enumerate(made.places)],
    ]


def numbered(i: int, place: Place) -> str:
    """Return a place's name with the number that stands for it on the strip."""
    return f"{i + 1}. {place.said.name}"


def place_words(place: Place, how: Setting) -> str:
    """Return how one place stands against the stick, as it is said in a shop."""
    size = abs(place.difference)
    parts = {"size": amount(size, how), "fine": fine(size, how), "passes": place.jointing.words}
    return sentence(PLACES[standing(place)], parts)


def standing(place: Place) -> str:
    """Return which of the words fit a place."""
    if place.loose:
        return "loose"
    if place.trim > 0:
        return "lacks"
    if place.difference == 0:
        return "fits"
    return "tight" if place.difference > 0 else "slack"
