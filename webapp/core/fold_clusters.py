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
PLACE = "place "  # before a place's name: no id begins so
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
        "project": "",
        "first": -1,
    }


def join(state: State, entry: Entry) -> None:
    """Put a new entry that can be read into its cluster, and join the clusters that it speaks of."""
    if entry["kind"] in ALONE:
        state["alone"][entry["id"]] = True
        return
    names = _names(entry)
    roots = list({find(state, name): True for name in names})
    largest = max(roots, key=lambda root: len(state["members"].get(root, [])))
    members = state["members"].setdefault(largest, [])
    for root in roots:
        if root != largest:
            state["parent"][root] = largest
            members.extend(state["members"].pop(root, []))
            state["parts"].pop(root, None)
            state["dirty"].pop(root, None)
    members.append(entry["id"])
    state["dirty"][largest] = True


def touch(state: State, entry: Entry) -> None:
    """Fold an entry's cluster anew at the next look: the entry has its seq now."""
    if entry["id"] not in state["alone"] and entry["id"] in state["parent"]:
        state["dirty"][find(state, entry["id"])] = True


def _names(entry: Entry) -> list[str]:
    names = [entry["id"], *entry["replaces"]]
    if entry["kind"] in ABOUT:
        names.append(entry["body"]["entry"])
    if entry["kind"] == "reading":
        names.append(PLACE + fold_name(entry["body"]["place"]))
    return names


def find(state: State, name: str) -> str:
    """Return the name that stands for a cluster, and shorten the way to it."""
    parent = state["parent"]
    at = name
    if at not in parent:
        parent[at] = at
    while parent[at] != at:
        parent[at] = parent[parent[at]]
        at = parent[at]
    return at


def in_cluster(state: State, root: str) -> list[Entry]:
    """Return the entries of a cluster that belong to the project, in the fold's order."""
    entries = [state["entries"][name] for name in state["members"][root]]
    return sorted([entry for entry in entries if entry["project"] == state["project"]], key=rank)


def meet(state: State, entry: Entry) -> None:
    """Take notice of an entry's project: the one of the first entry is the one that is folded."""
    at = rank(entry)
    if state["first"] < 0 or at < state["first"]:
        state["first"] = at
        if entry["project"] != state["project"]:
            state["project"] = entry["project"]
            state["dirty"] = {root: True for root in state["members"]}
