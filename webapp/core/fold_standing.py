"""Which entries stand: the ones that nothing replaces, and what each of them shows."""

from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.entries_kinds import LISTED
from webapp.core.fold_again import Passed, passed_over

Entry: TypeAlias = dict[str, Any]

LINKED = {kind: True for kind in [*LISTED, "pick", "withdrawal"]}  # kinds whose replacements count


@dataclass(frozen=True)
class Standing:
    """How a project's entries stand to each other; all but the kinds by entry id."""

    kinds: dict[str, bool]  # the kinds that there are
    heads: dict[str, list[str]]  # what is shown: the entries, itself or picks, that show it
    withdrawals: dict[str, list[Entry]]  # what is withdrawn: the withdrawals that still hold
    notes: dict[str, list[dict[str, str]]]
    things: dict[str, str]  # each entry of a chain of replacements: one name for it; none where all are readings
    late: dict[str, bool]  # sheets that were worked again by themselves after theirs was cut: they never stand


def standing(own: list[Entry]) -> Standing:
    """Return how the entries stand; what is replaced and not here makes no difference."""
    kinds = {entry["kind"]: True for entry in own}
    linked = _linked(own, kinds)
    passed = passed_over(linked)
    live = [entry for entry in linked if not _is_passed(entry, passed)] if passed.late or passed.twins else linked
    replaced = _replaced(live, passed)
    last = [entry for entry in live if entry["id"] not in replaced]
    withdrawals = _withdrawals(last) if "withdrawal" in kinds else {}
    things = _things(linked) if len(kinds) > 1 or "reading" not in kinds else {}
    return Standing(kinds, _heads(last), withdrawals, _notes(own), things, passed.late)


def _linked(own: list[Entry], kinds: dict[str, bool]) -> list[Entry]:
    """Return the entries that change what stands; a pick of what is not here would leave its place empty."""
    linked = [entry for entry in own if entry["kind"] in LINKED]
    if "pick" not in kinds:
        return linked
    shown = {entry["id"]: True for entry in linked if entry["kind"] in LISTED}
    return [entry for entry in linked if entry["kind"] != "pick" or entry["body"]["entry"] in shown]


def _is_passed(entry: Entry, passed: Passed) -> bool:
    return entry["id"] in passed.late or entry["id"] in passed.twins


def _replaced(live: list[Entry], passed: Passed) -> dict[str, bool]:
    """Return what is replaced; what follows one of two twins follows the other too."""
    replaced: dict[str, bool] = {}
    for entry in live:
        for named in entry["replaces"]:
            name = passed.twins.get(named, named)
            if name != entry["id"] and not _spared(name, entry, passed):
                replaced[name] = True
    return replaced


def _spared(name: str, entry: Entry, passed: Passed) -> bool:
    """Say whether an entry was worked again by itself from one that is cut, which it cannot replace."""
    return name in passed.cut and entry["body"].get("again", False) is True


def _heads(last: list[Entry]) -> dict[str, list[str]]:
    heads: dict[str, list[str]] = {}
    for entry in last:
        if entry["kind"] != "withdrawal":
            shows = entry["body"]["entry"] if entry["kind"] == "pick" else entry["id"]
            heads.setdefault(shows, []).append(entry["id"])
    return heads


def _withdrawals(last: list[Entry]) -> dict[str, list[Entry]]:
    found: dict[str, list[Entry]] = {}
    for entry in last:
        if entry["kind"] == "withdrawal":
            found.setdefault(entry["body"]["entry"], []).append(entry)
    return found


def _notes(own: list[Entry]) -> dict[str, list[dict[str, str]]]:
    """Return the notes by what they are about; a reading may bring its own."""
    notes: dict[str, list[dict[str, str]]] = {}
    for entry in own:
        if entry["kind"] == "note":
            note = {"entry": entry["id"], "text": entry["body"]["text"]}
            notes.setdefault(entry["body"]["entry"], []).append(note)
        if entry["kind"] == "reading" and isinstance(entry["body"].get("note", None), str):
            notes.setdefault(entry["id"], []).append({"entry": entry["id"], "text": entry["body"]["note"]})
    return notes


def _things(linked: list[Entry]) -> dict[str, str]:
    """Return one name for all entries that replacements join; a ring is a chain like any other."""
    parent: dict[str, str] = {}
    for entry in linked:
        for name in [entry["id"]] + entry["replaces"] + _named(entry):
            parent[_root(parent, name)] = _root(parent, entry["id"])
    return {name: _root(parent, name) for name in parent}


def _named(entry: Entry) -> list[str]:
    return [entry["body"]["entry"]] if entry["kind"] not in LISTED else []


def _root(parent: dict[str, str], name: str) -> str:
    """Return the name that stands for a chain, and shorten the way to it."""
    at = name
    while parent.get(at, at) != at:
        parent[at] = parent.get(parent[at], parent[at])
        at = parent[at]
    return at
