"""The strips of a gauge stick: its end drawn large, with every opening, then each opening that does not fit."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.gauge_figures import numbered, place_words
from webapp.core.gauge_solve import ZERO, Fitted
from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import Length, Part, span, strip, tick
from webapp.core.sums import amount


@dataclass(frozen=True)
class Window:
    """The part of the stick that is drawn, so that what an opening lacks can be seen: from `start` on."""

    start: Fraction
    how: Setting
    stick: Length  # where the stick ends, as it lies in the window
    whole: Length
    nothing: Length

    def at(self, x: Fraction) -> Length:
        """Return a place along the stick as it lies in the window."""
        return length(x - self.start, self.how)


def strips(made: Fitted, how: Setting) -> list[Part]:
    """Return the stick's end with all openings, then a strip for each that does not fit."""
    window = window_of(made, how)
    stick = span(window.nothing, window.stick, "Stick", "wood")
    beyond = span(window.stick, window.whole, "Beyond the stick", "air")
    shown = f"The stick's end from {amount(window.start, how)} on, drawn large" if window.start > 0 else "The stick"
    whole = strip(
        f"{shown}: where each opening ends, by its number", window.whole, [stick, beyond], ticks(made, window)
    )
    return [whole, *[place_strip(made, i, window) for i, place in enumerate(made.places) if not place.fits]]


def window_of(made: Fitted, how: Setting) -> Window:
    """Return twice as far to either side as any opening differs, so that all of them are seen."""
    reach = 2 * max([how.division] + [abs(place.difference) for place in made.places])
    start = max(ZERO, made.gauge - reach)
    stick, whole = length(made.gauge - start, how), length(made.gauge + reach - start, how)
    return Window(start, how, stick, whole, length(ZERO, how))


def ticks(made: Fitted, window: Window) -> list[Part]:
    """Return a tick where openings end, with the numbers of all that end there."""
    ends: dict[str, Length] = {}
    numbers: dict[str, list[str]] = {}
    for i, place in enumerate(made.places):
        end = window.at(place.opening)
        ends[end["inches"]] = end
        numbers.setdefault(end["inches"], []).append(str(i + 1))
    return [tick(end, ", ".join(numbers[key])) for key, end in ends.items()]


def place_strip(made: Fitted, i: int, window: Window) -> Part:
    """Return one opening against the stick: what comes off, or the air that stays."""
    place = made.places[i]
    end = window.at(place.opening)
    if place.loose:
        inner, rest = window.stick, span(window.stick, end, "Loose", "air")
    else:
        inner, rest = end, span(end, window.stick, "Comes off the rail", "cut")
    label = f"{numbered(i, place)}: {place_words(place, window.how)}"
    return strip(label, window.whole, [span(window.nothing, inner, "Stick", "wood"), rest], [tick(end, str(i + 1))])
