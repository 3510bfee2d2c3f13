"""Sheets that the press "work again" made, and that do not stand after all: wood that is cut is a fact."""

from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.sheet import to_json

Entry: TypeAlias = dict[str, Any]

SAME = (
    "tool",
    "called",
    "inputs",
    "unit",
    "graduation",
    "name",
    "measures",
)


@dataclass(frozen=True)
class Passed:
    """What is passed over, by entry id."""

    late: dict[str, bool]  # worked again, on another phone, from what is cut
    twins: dict[str, str]  # worked again twice with the same outcome: the one that stands for both
    cut: dict[str, bool]  # what is cut, and the picks that show it: nothing that was worked again replaces it


NOTHING = Passed({}, {}, {})


def passed_over(linked: list[Entry]) -> Passed:
    """Return what the press "work again" made and what does not stand, the same in whatever order it came.

    Nothing that is cut is ever replaced by what was worked again by itself; a maker's own change is a rival of it.
    """
    again = [entry for entry in linked if entry["body"].get("again", False) is True]
    if not again:
        return NOTHING
    cut = _cut(linked)
    late = _late([entry for entry in again if entry["id"] not in cut], cut)
    left = [entry for entry in again if entry["id"] not in late]
    return Passed(late, _twins(left, cut), cut)


def _cut(linked: list[Entry]) -> dict[str, bool]:
    """Return the entries that are cut, and the picks that show them."""
    replaced = {name: True for entry in linked for name in entry["replaces"] if name != entry["id"]}
    cuts = [entry for entry in linked if entry["kind"] == "cut" and entry["id"] not in replaced]
    targets = {entry["body"]["entry"]: True for entry in cuts}
    picks = [entry for entry in linked if entry["kind"] == "pick" and entry["body"]["entry"] in targets]
    return {**targets, **{entry["id"]: True for entry in picks}}


def _late(again: list[Entry], cut: dict[str, bool]) -> dict[str, bool]:
    """Return what replaces a cut sheet, and what was worked again from that; until nothing more is found."""
    late: dict[str, bool] = {}
    more = _following(again, cut)
    while more:
        late.update(more)
        more = {name: True for name in _following(again, late) if name not in late}
    return late


def _following(again: list[Entry], names: dict[str, bool]) -> dict[str, bool]:
    return {entry["id"]: True for entry in again if any(name in names for name in entry["replaces"])}


def _twins(again: list[Entry], cut: dict[str, bool]) -> dict[str, str]:
    """Return which stand for which: a cut one for all that say the same, else the first; two that are cut are two."""
    first: dict[str, str] = {}
    for entry in sorted(again, key=lambda entry: 0 if entry["id"] in cut else 1):
        first.setdefault(_says(entry), entry["id"])
    stands = {entry["id"]: first[_says(entry)] for entry in again if entry["id"] not in cut}
    return {name: stand for name, stand in stands.items() if stand != name}


def _says(entry: Entry) -> str:
    """Return what an entry says and what it replaces, as one text to compare."""
    said = {key: entry["body"][key] for key in SAME if key in entry["body"]}
    return to_json([sorted(entry["replaces"]), said])
