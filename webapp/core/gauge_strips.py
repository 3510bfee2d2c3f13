"""The strips of a gauge stick: its end drawn large, with every opening, then each opening that does not fit."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.gauge_figures import numbered, place_words
from webapp.core.gauge_solve import Fitted
from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import Length, Part, span, strip, tick
from webapp.core.sums import amount


@dataclass(frozen=True)
class Window:
    """The part of the stick that is drawn, so that what an opening lacks can be seen: from `start` on."""

    start: Fraction
    end: Fraction
    how: Setting

    @property
    def length(self) -> Length:
        """The length that is drawn."""
        return self.at(self.end)

    def at(self, x: Fraction) -> Length:
        """Return a place along the stick as it lies in the window."""
        return length(x - self.start, self.how)


def strips(made: Fitted, how: Setting) -> list[Part]:
    """Return the stick's end with all openings, then a strip for each that does not fit."""
    window = window_of(made, how)
    stick = span(window.at(window.start), window.at(made.gauge), "Stick", "wood")
    beyond = span(window.at(made.gauge), window.length, "Beyond the stick", "air")
    shown = f"The stick's end from {amount(window.start, how)} on, drawn large" if window.start > 0 else "The stick"
    whole = strip(
        f"{shown}: where each opening ends, by its number", window.length, [stick, beyond], ticks(made, window)
    )
    return [whole, *[place_strip(made, i, window) for i, place in enumerate(made.places) if not place.fits]]


def window_of(made: Fitted, how: Setting) -> Window:
    """Return twice as far to either side as any opening differs, so that all of them are seen."""
    reach = 2 * max([how.division] + [abs(place.difference) for place in made.places])
    return Window(max(Fraction(0), made.gauge - reach), made.gauge + reach, how)


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
    short = place.difference > 0
    inner, outer = (place.opening, made.gauge) if short else (made.gauge, place.opening)
    spans = [
        span(window.at(window.start), window.at(inner), "Stick", "wood"),
        span(window.at(inner), window.at(outer), "Comes off the rail" if short else "Loose", "cut" if short else "air"),
    ]
    label = f"{numbered(i, place)}: {place_words(place, window.how)}"
    return strip(label, window.length, spans, [tick(window.at(place.opening), str(i + 1))])
