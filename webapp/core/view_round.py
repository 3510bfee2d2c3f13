"""What a round of dry fit says: the place to measure now, all places with what was read, and where it leads."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.address import reading_address, round_address
from webapp.core.built import exact_of
from webapp.core.drawing import mark_view
from webapp.core.entries_round import round_of
from webapp.core.fold_shape import measured
from webapp.core.gauge_against import against
from webapp.core.mark import mark
from webapp.core.reading_numbers import DIGITS
from webapp.core.rounds import Place, after, at_now, openings, places_of
from webapp.core.rounds_odd import OPENING, group_of
from webapp.core.setting import Setting, setting
from webapp.core.sums import amount, with_unit
from webapp.core.view_project import back_to
from webapp.core.view_round_ways import ways

Gathered: TypeAlias = dict[str, Any]
Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]

MOST_LETTERS = 4  # of a number in an address


def round_view(g: Gathered, item: Item) -> View:
    """Give a round's page."""
    summary, typed = g["project"], g["typed"]
    how = setting(summary["unit"], summary["graduation"], g["factors"])
    places = places_of(summary, item, how)
    now = at_now(places, _number(typed, "at"), _number(typed, "taken"), typed.get("held", ""))
    before = earlier(summary, item, how)
    return {
        "title": item["called"],
        "project": back_to(summary),
        "now": _now_view(summary, item, places, now, how) if now else None,
        "done": now is None,
        "spread": _spread(places, how) if now is None else [],
        "stick": _stick(item),
        "tried": now is not None and _stick(item) != "" and group_of(now.name) == OPENING,
        "compared": before["called"] if before else "",
        "rows": [_row(summary, item, p, now, before, how) for p in places],
        "ways": ways(summary, item, places),
        "fills": {"place": now.name if now else "", "round": item["entry"], "like": item["entry"]},
    }


def _number(typed: dict[str, str], name: str) -> int:
    """Return a number of the address; 0 for what is none."""
    text = typed.get(name, "")
    return int(text) if 0 < len(text) <= MOST_LETTERS and all(c in DIGITS for c in text) else 0


def earlier(summary: Summary, item: Item, how: Setting) -> View | None:
    """Return the round that this one measures once more: its name, and by place what was read in it."""
    like = item.get("like", "")
    found = round_of(summary, like) if isinstance(like, str) and like else None
    if found is None:
        return None
    read = {place.name: place.taken[-1] for place in places_of(summary, found, how) if place.taken}
    return {"called": found["called"], "read": read}


def _now_view(summary: Summary, item: Item, places: list[Place], now: Place, how: Setting) -> View:
    left = len([place for place in places if place.wanted])
    skipped = after(places, now)
    return {
        "place": now.name,
        "left": f"Place {now.number} of {len(places)}, {left} left to measure",
        "odd": f"Read it again: {now.taken[-1]['text']} is {_out(now.odd, how)}." if now.odd is not None else "",
        "was": f"It was read before: {now.taken[-1]['text']}" if now.taken and now.odd is None else "",
        "skip": {"href": _at(summary, item, skipped), "place": skipped.name} if skipped else None,
    }


def _at(summary: Summary, item: Item, place: Place) -> str:
    """Give the address that asks for a place, as it stands now."""
    return f"{round_address(summary['id'], item['entry'])}?at={place.number}&taken={len(place.taken)}"


def _out(odd: Fraction, how: Setting) -> str:
    return f"{_by(odd, how)} {'over' if odd > 0 else 'under'} its fellows"


def _by(difference: Fraction, how: Setting) -> str:
    """Say how large a difference is: "1 in", which alone would be no length."""
    size = abs(difference)
    return with_unit(mark(size, how), "in") if how.unit == "in" else amount(size, how)


def _spread(places: list[Place], how: Setting) -> list[View]:
    """Say between what the openings lie."""
    read = [place.value for place in openings(places) if place.value is not None]
    if not read:
        return []
    ends = [("The least opening", min(read)), ("The largest", max(read))]
    return [{"label": label, "mark": mark_view(mark(value, how), ""), "words": ""} for label, value in ends]


def _stick(item: Item) -> str:
    stick = item.get("stick")
    return f"against a stick of {stick['text']}" if stick is not None and measured(stick) else ""


def _row(summary: Summary, item: Item, place: Place, now: Place | None, before: View | None, how: Setting) -> View:
    """Give a place's line: what was read, in the round before too, and what can be done about it."""
    last = place.taken[-1] if place.taken else None
    old = before["read"].get(place.name) if before else None
    return {
        "place": place.name,
        "href": _at(summary, item, place),
        "now": now is not None and now.number == place.number,
        "mark": _mark(last, how) if last else None,
        "said": last["text"] if last and against(last["text"]) else "",
        "odd": _out(place.odd, how) if place.odd is not None else "",
        "noted": bool(place.gone or old or len(place.taken) > 1 or (last and against(last["text"]))),
        "twice": f"read {len(place.taken)} times" if len(place.taken) > 1 else "",
        "rivals": reading_address(summary["id"], last["entry"]) if last and place.rivals else "",
        "withdraw": last["entry"] if last and place.stands and not place.rivals else "",
        "gone": {"text": place.gone[0]["text"], "entry": place.gone[0]["entry"]} if place.gone else None,
        "before": _mark(old, how) if old else None,
        "difference": _difference(last, old, how) if last and old else "",
    }


def _mark(reading: Item, how: Setting) -> View:
    """Give a reading as it was said; what was said against the stick, as the length that it means."""
    return mark_view(mark(exact_of(reading["inches"]), how) if against(reading["text"]) else reading["text"], "")


def _difference(last: Item, old: Item, how: Setting) -> str:
    more = exact_of(last["inches"]) - exact_of(old["inches"])
    return "as before" if more == 0 else f"{'more' if more > 0 else 'less'} by {_by(more, how)}"
