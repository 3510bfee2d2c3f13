"""How a round of dry fit stands: what was read at each place, which is asked again, and where to measure now."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.built import exact_of
from webapp.core.rounds_odd import OPENING, Reading, group_of, odd_by
from webapp.core.setting import Setting
from webapp.core.text import fold_name

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]


@dataclass(frozen=True)
class Place:
    """One place of a round; `odd` is by how much its one reading is over its fellows where it is asked again."""

    number: int  # from 1
    name: str
    taken: list[Item]  # what was read here in this round since something was withdrawn, oldest first
    gone: list[Item]  # what was withdrawn last, where nothing was read since
    stands: bool  # whether what was read here last is what stands at the place
    rivals: bool
    odd: Fraction | None

    @property
    def value(self) -> Fraction | None:
        """What was read here last, in inches."""
        return exact_of(self.taken[-1]["inches"]) if self.taken else None

    @property
    def wanted(self) -> bool:
        """Whether this is to be measured: for the first time, or once more."""
        return not self.taken or self.odd is not None


def places_of(summary: Summary, item: Item, how: Setting) -> list[Place]:
    """Return how the places of a round stand, in the order in which they were laid out."""
    by_key = {place["key"]: place for place in summary["places"]}
    nothing: Item = {"heads": [], "past": []}
    found = [by_key.get(fold_name(name), nothing) for name in item["places"]]
    read = [read_at(place, item["entry"]) for place in found]
    readings = [_reading(name, read[i]) for i, name in enumerate(item["places"])]
    places = []
    for i, name in enumerate(item["places"]):
        taken, heads = read[i], [head["entry"] for head in found[i]["heads"]]
        odd = odd_by(readings[i], readings[:i] + readings[i + 1 :], how) if len(taken) == 1 else None
        stands = len(taken) > 0 and taken[-1]["entry"] in heads
        gone = [] if taken else _own(found[i], item["entry"])[-1:]
        places.append(Place(i + 1, name, taken, gone, stands, stands and len(heads) > 1, odd))
    return places


def read_at(place: Item, entry: str) -> list[Item]:
    """Return what was read at a place in a round and still counts: all since something was withdrawn."""
    taken: list[Item] = []
    for item in _own(place, entry):
        if item["withdrawn"] or item.get("anew", False) is True:
            taken = []
        if not item["withdrawn"]:
            taken.append(item)
    return taken


def _own(place: Item, entry: str) -> list[Item]:
    """Return all readings of a place in a round, oldest first."""
    own = [item for item in place["heads"] + place["past"] if item.get("round", "") == entry]
    return sorted(own, key=lambda item: item["rank"])


def _reading(name: str, taken: list[Item]) -> Reading:
    if not taken:
        return Reading(group_of(name), None, 0)
    return Reading(group_of(name), exact_of(taken[-1]["inches"]), taken[-1]["rank"])


def at_now(places: list[Place], at: int, taken: int, held: str) -> Place | None:
    """Return where to measure now, or nothing where all is done.

    `held` is the place that something is half typed for. `at` names the place that was asked for, which had been read
    `taken` times then; once it is read once more, or where no place has that number, what is wanted is looked for
    from there on, and round again.
    """
    for place in places:
        if held and fold_name(place.name) == fold_name(held):
            return place
    asked = [place for place in places if place.number == at and len(place.taken) == taken]
    if asked:
        return asked[0]
    wanted = [place for place in places if place.wanted]
    onward = [place for place in wanted if place.number >= at]
    return (onward + wanted)[0] if wanted else None


def after(places: list[Place], now: Place) -> Place | None:
    """Return the place that comes where this one is skipped."""
    others = [place for place in places if place.wanted and place.number != now.number]
    onward = [place for place in others if place.number > now.number]
    return (onward + others)[0] if others else None


def number_in(summary: Summary | None, entry: str, place: str) -> int:
    """Return the number of a place in a round, from 1; 0 where it has none."""
    things = summary["rounds"] if summary is not None else []
    for thing in things:
        for item in thing["heads"] + thing["past"]:
            keys = [fold_name(name) for name in item["places"]]
            if item["entry"] == entry and fold_name(place) in keys:
                return keys.index(fold_name(place)) + 1
    return 0


def openings(places: list[Place]) -> list[Place]:
    """Return the openings that were read."""
    return [place for place in places if place.taken and group_of(place.name) == OPENING]
