"""Entries in clusters: what speaks of each other is folded together, and nothing else has to be folded anew for it.

A cluster holds all entries that replacements, places, and what is said of something join. How an entry stands depends
on its own cluster alone, so that a new entry costs what its cluster holds, not what the project holds.
"""

from typing import Any, TypeAlias

from webapp.core.fold_shape import rank
from webapp.core.text import fold_name

Entry: TypeAlias = dict[str, Any]
State: TypeAlias = dict[str, Any]

ABOUT = ("pick", "withdrawal", "note", "cut")  # kinds that speak of another entry
ALONE = ("project", "settings")  # kinds that say how the project itself is


def start() -> State:
    """Return the state of a project of which no entry is known yet."""
    return {
        "entries": {},
        "alone": {},
        "parent": {},
        "members": {},
        "dirty": {},
        "parts": {},
        "keys": {},
        "places": {},
        "project": "",
        "first": -1,
    }


def join(state: State, entry: Entry) -> None:
    """Put a new entry that can be read into its cluster, and join the clusters that it speaks of."""
    if entry["kind"] in ALONE:
        state["alone"][entry["id"]] = True
        return
    root = find(state, entry["id"])
    for name in _names(state, entry):
        root = _united(state, root, find(state, name))
    state["members"].setdefault(root, []).append(entry)
    state["dirty"][root] = True


def _united(state: State, one: str, other: str) -> str:
    """Make one cluster of two, and return the name that stands for it: that of the one with more members."""
    if one == other:
        return one
    mine, theirs = state["members"].get(one, []), state["members"].get(other, [])
    less, more = (one, other) if len(mine) < len(theirs) else (other, one)
    state["parent"][less] = more
    if mine and theirs:
        state["members"][more].extend(state["members"].pop(less))
        state["parts"].pop(less, None)
        state["dirty"].pop(less, None)
    return more


def touch(state: State, entry: Entry) -> None:
    """Fold an entry's cluster anew at the next look: the entry has its seq now."""
    if entry["id"] not in state["alone"] and entry["id"] in state["parent"]:
        root = find(state, entry["id"])
        members = state["members"][root]
        state["members"][root] = [entry if each["id"] == entry["id"] else each for each in members]
        state["dirty"][root] = True


def _names(state: State, entry: Entry) -> list[str]:
    """Return what an entry speaks of; of its place, the entry that was the first there."""
    names = [*entry["replaces"]]
    if entry["kind"] in ABOUT:
        names.append(entry["body"]["entry"])
    if entry["kind"] == "reading":
        names.append(state["places"].setdefault(_key(state, entry["body"]["place"]), entry["id"]))
    return names


def _key(state: State, place: str) -> str:
    """Return what a place's spellings have in common; each spelling is folded once."""
    keys: dict[str, str] = state["keys"]
    if place not in keys:
        keys[place] = fold_name(place)
    return keys[place]


def find(state: State, name: str) -> str:
    """Return the name that stands for a cluster, and shorten the way to it."""
    parent: dict[str, str] = state["parent"]
    at = name
    above = parent.setdefault(at, at)
    top = parent[above]
    while top != above:
        parent[at] = top
        at, above = top, parent[top]
        top = parent[above]
    return above


def in_cluster(state: State, root: str) -> list[Entry]:
    """Return the entries of a cluster that belong to the project, in the fold's order."""
    return sorted([entry for entry in state["members"][root] if entry["project"] == state["project"]], key=rank)


def meet(state: State, entry: Entry) -> None:
    """Take notice of an entry's project: the one of the first entry is the one that is folded."""
    at = rank(entry)
    if state["first"] < 0 or at < state["first"]:
        state["first"] = at
        if entry["project"] != state["project"]:
            state["project"] = entry["project"]
            state["dirty"] = {root: True for root in state["members"]}
