"""The next thing to do, in one sentence that names the part.

In this order, the first that there is:
1. rivals: nothing can be worked while two stand for one thing;
2. what no longer holds and can be worked again: every later number may be wrong;
3. a rail that the newest gauge sheet trims and that is not cut yet;
4. a tenon that no longer goes into its mortise, before the slats are cut;
5. a round of dry fit that was begun and not finished;
6. the first stage that is not done, with its part; before the glue-up, what cannot be done after it.
A project without parts and without anything done has readings and sheets alone: it is asked for these.
"""

from dataclasses import dataclass

from webapp.core.address import (
    form_address,
    part_address,
    reading_address,
    round_address,
    sheet_address,
    work_address,
)
from webapp.core.piece import Piece
from webapp.core.piece_rails import planned
from webapp.core.piece_room import SHORT, rail_rooms
from webapp.core.piece_rounds import left_in
from webapp.core.piece_slats import to_cut
from webapp.core.piece_stages import STAGES, begun, passed, reached
from webapp.core.piece_stages_next import stage_next
from webapp.core.piece_words import counted_words, the
from webapp.core.sums import amount, counted


@dataclass(frozen=True)
class Next:
    """What to do, what there is to know beside it, where it is done, and the line of a sheet that it cuts."""

    words: str
    more: str = ""
    href: str = ""
    entry: str = ""
    key: str = ""
    way: str = ""  # where that which is to know is done, where it is something else to do


def next_thing(here: Piece) -> Next:
    """Return the next thing to do."""
    ways = (_rivals, _stale, _trim, _room, _round)
    for way in ways:
        found = way(here)
        if found is not None:
            return found
    return _stage(here) if begun(here) else _readings(here)


RIVALS = (("places", "readings", "place"), ("sheets", "sheets", "called"), ("parts", "parts", "name"))


def _rivals(here: Piece) -> Next | None:
    for name, what, called in RIVALS:
        for thing in here.summary[name]:
            if len(thing["heads"]) > 1:
                said = thing.get(called, thing["heads"][0].get(called, "")) or "one sheet"
                words = (
                    f"{'Two' if len(thing['heads']) == 2 else 'Several'} {what} stand for {said}: say which one holds"
                )
                return Next(words, "", _address(here, name, thing["heads"][0]["entry"]))
    numbers = [thing["heads"][0]["number"] for thing in here.summary["joints"] if len(thing["heads"]) > 1]
    return (
        Next(f"Two joints have the number {numbers[0]}: say which one holds", "", "#joints-words") if numbers else None
    )


def _address(here: Piece, name: str, entry: str) -> str:
    project = here.summary["id"]
    if name == "sheets":
        return sheet_address(project, entry)
    return part_address(project, entry) if name == "parts" else reading_address(project, entry)


def _stale(here: Piece) -> Next | None:
    """Return what can be worked again; what is cut is a fact, and its own page offers the ways out."""
    held = [held for held in here.followed.of("stale") if not held.cuts]
    if not held:
        return None
    names = ", ".join([each.item["called"] if each.kind == "sheet" else the(each.item["name"]) for each in held[:3]])
    more = f"{names}{', and others' if len(held) > 3 else ''}"
    sheets = len([each for each in held if each.kind == "sheet"])
    return Next(f"Work again what no longer holds: {counted_words(sheets, len(held) - sheets)}", more, "#held-words")


def _trim(here: Piece) -> Next | None:
    rails = planned(here.summary, here.worked)
    if not rails:
        return None
    rail = rails[0]
    more = f"{rail.said} comes off; from {rail.called}"
    return Next(rail.words, more, sheet_address(here.summary["id"], rail.entry), rail.entry, rail.key)


def _room(here: Piece) -> Next | None:
    if reached(here) > [stage.key for stage in STAGES].index("slats"):
        return None
    rooms = [found for found in rail_rooms(here.summary, here.worked) if found.room.standing in SHORT]
    if not rooms:
        return None
    found = rooms[0]
    words = f"Before the slats are cut: deepen the slat mortises of {the(found.rail['name'])}"
    deeper = f"by {amount(found.room.deepen, here.how)}, or take that much off each tenon's end of {found.other}"
    return Next(words, deeper, part_address(here.summary["id"], found.rail["entry"]))


def _round(here: Piece) -> Next | None:
    open_rounds = [(found, left_in(here.summary, found, here.how)) for found in here.rounds]
    begun_rounds = [(found, left) for found, left in open_rounds if left]
    if not begun_rounds or reached(here) > [stage.key for stage in STAGES].index("trim"):
        return None
    found, left = begun_rounds[-1]
    words = f"Go on with {found['called'] or 'the round of dry fit'}: measure {left[0]}"
    return Next(words, f"{counted(len(left), 'place')} left", round_address(here.summary["id"], found["entry"]))


def _stage(here: Piece) -> Next:
    at = reached(here)
    if at < len(STAGES):
        words, more, href = stage_next(here, STAGES[at].key)
        entry, key = to_cut(here) if STAGES[at].key == "slats" else ("", "")
        return Next(words, more, href or form_address(here.summary["id"], f"stage-{STAGES[at].key}"), entry, key)
    over = [stage.title for stage in passed(here)]
    return Next("All is done", f"passed over without a tick: {', '.join(over)}" if over else "")


def _readings(here: Piece) -> Next:
    """Return what a project is asked for of which no part is named yet."""
    project = here.summary["id"]
    if not here.summary["places"]:
        reading, part = [form_address(project, form) for form in ("reading", "part")]
        more = "or name the parts of the piece, the posts first"
        return Next("Measure the clear span of the rail", more, reading, way=part)
    if not here.sheets:
        return Next("Space the slats", "", work_address("spacing", {"project": project}))
    last = here.sheets[-1]
    address = sheet_address(project, last["entry"])
    return Next(f"Mark out from {last['called'] or last['tool']}", "", address)
