"""Readings and what is said of them, withdrawals, notes and picks, from a form's fields."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.entries_kinds import LISTED
from webapp.core.entries_text import NAME, WHY, is_identity, line_error, needed_error, note_error, tidy, tidy_lines
from webapp.core.fold_shape import measured
from webapp.core.gauge_against import against, difference
from webapp.core.mark import exact, mark
from webapp.core.reading import ReadingError, read
from webapp.core.setting import Setting, setting
from webapp.core.text import fold_name
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

ASK_PLACE = "Name the place that was measured, as left post to right post."
ASK_NOTE = "Write the note."
NO_STICK = "This is said against a stick, and none is named here; give the length, as 13 1/16."
NOT_HERE = "This is not in the project any more, or not yet."


def draft_reading(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make a reading; it replaces what stands at its place. In a `round` with a stick it may be said against that."""
    if summary is None:
        return {"errors": {"place": "The project of this reading is not here."}}
    place, text, note = tidy(typed, "place"), tidy(typed, "reading"), tidy_lines(typed, "note")
    how = setting(summary["unit"], summary["graduation"], factors)
    within = tidy(typed, "round")
    stick = stick_of(summary, within)
    found = {
        "place": needed_error(place, ASK_PLACE, NAME),
        "reading": reading_error(text, how, stick),
        "note": note_error(note),
        "round": NOT_HERE if within and not is_identity(within) else "",
    }
    errors = {name: wrong for name, wrong in found.items() if wrong}
    if errors:
        return {"errors": errors}
    said = {"place": place, "text": text, "inches": exact(reading_value(text, how, stick))}
    body: Item = {**said, "unit": how.unit, "graduation": how.graduation, **({"note": note} if note else {})}
    if within:
        body.update({"round": within, **({"anew": True} if _was_withdrawn(summary, place) else {})})
    if stick is not None and against(text):
        body["stick"] = exact(stick)
    return {"body": body, "replaces": _standing_at(summary, place)}


def stick_of(summary: Any, within: str) -> Fraction | None:
    """Return the length of the stick that a round is measured against, where it has one."""
    for thing in summary["rounds"]:
        for item in thing["heads"] + thing["past"]:
            if item["entry"] == within and measured(item.get("stick")):
                return from_exact(item["stick"]["inches"])
    return None


def reading_error(text: str, how: Setting, stick: Fraction | None = None) -> str:
    """Return what is wrong with a reading, or nothing."""
    try:
        return "" if reading_value(text, how, stick) >= 0 else "Nothing measures less than zero; leave the minus out."
    except ReadingError as e:
        return e.reason


def reading_value(text: str, how: Setting, stick: Fraction | None = None) -> Fraction:
    """Read a reading in inches, said as a length or against a stick."""
    if not against(text):
        return read(text, how)
    if stick is None:
        raise ReadingError(text, 0, NO_STICK)
    value = stick + difference(text, how)
    if value <= 0:
        raise ReadingError(text, 0, f"A stick of {mark(stick, how)} leaves nothing of that.")
    return value


def _standing_at(summary: Any, place: str) -> list[str]:
    """Return what a reading at a place replaces: what stands there, or the withdrawals of what stood there."""
    there = [found for found in summary["places"] if found["key"] == fold_name(place)]
    heads = [head for found in there for head in found["heads"]]
    return tips(heads or [item for found in there for item in found["past"] if item["withdrawn"]])


def _was_withdrawn(summary: Any, place: str) -> bool:
    """Say whether nothing stands at a place because what stood there was withdrawn: what is read there begins anew."""
    there = [found for found in summary["places"] if found["key"] == fold_name(place)]
    past = [item for found in there if not found["heads"] for item in found["past"]]
    return any(item["withdrawn"] for item in past)


def tips(items: list[Item]) -> list[str]:
    """Return the entries that are replaced by what follows all these items, each once."""
    names: dict[str, bool] = {name: True for item in items for name in item["tips"]}
    return list(names)


def draft_withdrawal(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Take back a reading or a sheet that stands; a rival of it goes on standing."""
    entry, why = tidy(typed, "entry"), tidy(typed, "why")
    heads = [head for thing in _around(summary, entry) for head in thing["heads"] if head["entry"] == entry]
    if not heads:
        return {"errors": {"entry": "This does not stand any more: it was replaced or withdrawn."}}
    wrong = line_error(why, WHY)
    if wrong:
        return {"errors": {"why": wrong}}
    body = {"entry": entry, **({"why": why} if why else {})}
    return {"body": body, "replaces": tips(heads)}


def draft_note(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make a note about a reading or a sheet, whether it stands or not."""
    entry, text = tidy(typed, "entry"), tidy_lines(typed, "text")
    if not _around(summary, entry):
        return {"errors": {"entry": NOT_HERE}}
    wrong = note_error(text) if text else ASK_NOTE
    if wrong:
        return {"errors": {"text": wrong}}
    return {"body": {"entry": entry, "text": text}, "replaces": []}


def draft_pick(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Let one of several stand, or one that was replaced or withdrawn stand again."""
    entry = tidy(typed, "entry")
    around = _around(summary, entry)
    if not around:
        return {"errors": {"entry": NOT_HERE}}
    heads = around[0]["heads"]
    if [head["entry"] for head in heads] == [entry]:
        return {"errors": {"entry": "This stands already, and nothing beside it."}}
    picked = [item for item in around[0]["past"] if item["entry"] == entry]
    return {"body": {"entry": entry}, "replaces": tips(heads + picked)}


def _around(summary: Any, entry: str) -> list[Item]:
    """Return the place or the thing that an entry belongs to: one or none."""
    lists = [summary[name] for name, _keys in LISTED.values()] if summary is not None else []
    things = [thing for found in lists for thing in found]
    return [t for t in things if any(item["entry"] == entry for item in t["heads"] + t["past"])]
