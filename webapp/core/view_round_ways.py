"""Where a round leads: its gauge sheet and its square sheet, each reading linked to the field that it stands in."""

from typing import Any, TypeAlias

from webapp.core.address import sheet_address, work_address
from webapp.core.entries_round import round_of
from webapp.core.fold_shape import measured
from webapp.core.links import BETWEEN, Link, links_text
from webapp.core.numbers import READING, cuts_of
from webapp.core.rounds import Place, openings
from webapp.core.rounds_odd import DIAGONAL, SIDE, group_of
from webapp.core.text import fold_name

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]

GAUGE = "gauge"
SQUARE = "square"
TENON = "tenon"  # the gauge sheet's field, and the part's measure
PAIRS = (2, 4)  # how many sides the square sheet takes


def ways(summary: Summary, item: Item, places: list[Place]) -> list[View]:
    """Give the sheets that a round can go into, and those that it went into."""
    own = _readings(summary, [item["entry"]])
    kept = [
        {"title": sheet["called"], "about": "kept", "href": sheet_address(summary["id"], sheet["entry"])}
        for sheet in _sheets_on(summary, own)
    ]
    return kept + gauge_way(summary, item, places) + square_way(summary, item, places)


def gauge_way(summary: Summary, item: Item, places: list[Place]) -> list[View]:
    """Give the way to the gauge sheet; one of this round or an earlier one that is not cut is replaced by it."""
    read = openings(places)
    if not read:
        return []
    typed = {"project": summary["id"], "openings": "\n".join([f"{p.name}: {_exactly(p)}" for p in read])}
    stick = item.get("stick")
    if stick is not None and measured(stick):
        typed["keep"] = f"{stick['inches']} in"
    typed["called"] = f"Gauge, {item['called']}"
    typed["replaces"] = _replaced(summary, item, GAUGE)
    tenon = _tenon(summary)
    typed["tenon"] = "".join([f"{link.inches} in" for link in tenon])
    typed["links"] = links_text([*[_link("openings", p.name, p) for p in read if p.stands], *tenon])
    about = f"{len(read)} openings: which trims come off which rail"
    return [{"title": "Gauge sheet of this round", "about": about, "href": work_address(GAUGE, typed)}]


def _tenon(summary: Summary) -> list[Link]:
    """Return the link to the slats' tenon, where a part of that name has one: it is not to be picked once more."""
    parts = [thing["heads"][0] for thing in summary["parts"] if len(thing["heads"]) == 1]
    found = [part for part in parts if "slat" in fold_name(part["name"]) and TENON in part["measures"]]
    return [Link(TENON, "", part["entry"], TENON, part["measures"][TENON]["inches"]) for part in found[:1]]


def square_way(summary: Summary, item: Item, places: list[Place]) -> list[View]:
    """Give the way to the square sheet, where both diagonals were read."""
    read = {_end(place): place for place in places if place.taken and group_of(place.name) == DIAGONAL}
    if "rising" not in read or "falling" not in read:
        return []
    sides = [place for place in places if place.taken and group_of(place.name) == SIDE]
    sides = sides if len(sides) in PAIRS else []
    linked = [(str(i + 1), "sides", side) for i, side in enumerate(sides)]
    linked += [("", name, read[name]) for name in ("rising", "falling")]
    typed = {"project": summary["id"], "sides": BETWEEN.join([_exactly(side) for side in sides])}
    for name in ("rising", "falling"):
        typed[name] = _exactly(read[name])
    typed["called"] = f"Square, {item['called']}"
    typed["replaces"] = _replaced(summary, item, SQUARE)
    typed["links"] = links_text([_link(field, line, place) for line, field, place in linked if place.stands])
    return [{"title": "Square sheet", "about": "how far it leans", "href": work_address(SQUARE, typed)}]


def _end(place: Place) -> str:
    return fold_name(place.name.split(",")[-1])


def _exactly(place: Place) -> str:
    """Give a reading as a linked field holds it."""
    return f"{place.taken[-1]['inches']} in"


def _link(field: str, line: str, place: Place) -> Link:
    return Link(field, line, place.taken[-1]["entry"], READING, place.taken[-1]["inches"])


def _readings(summary: Summary, rounds: list[str]) -> dict[str, bool]:
    """Return the readings of some rounds."""
    items = [item for place in summary["places"] for item in place["heads"] + place["past"]]
    return {item["entry"]: True for item in items if item.get("round", "") in rounds}


def _sheets_on(summary: Summary, readings: dict[str, bool]) -> list[Item]:
    """Return the sheets that stand and take a number from one of these readings."""
    heads = [head for thing in summary["sheets"] for head in thing["heads"]]
    return [head for head in heads if any(link["entry"] in readings for link in head["links"])]


def _replaced(summary: Summary, item: Item, tool: str) -> str:
    """Return the last sheet of a tool on this round or on those before it that stands and is not cut."""
    sheets = _sheets_on(summary, _readings(summary, _chain(summary, item)))
    free = [sheet["entry"] for sheet in sheets if sheet["tool"] == tool and not cuts_of(summary, sheet["entry"])]
    return free[-1] if free else ""


def _chain(summary: Summary, item: Item) -> list[str]:
    """Return a round and those that it measures once more; a ring ends where it closes."""
    chain = [item["entry"]]
    like = item.get("like", "")
    while isinstance(like, str) and like and like not in chain:
        chain.append(like)
        before = round_of(summary, like)
        like = before.get("like", "") if before is not None else ""
    return chain
