"""A project's state as a fold of its entries: the same in any order of arrival, however often they arrive."""

from typing import Any, TypeAlias

from webapp.core.fold_named import named
from webapp.core.fold_places import listed
from webapp.core.fold_shape import fits, in_order
from webapp.core.fold_standing import standing

Entry: TypeAlias = dict[str, Any]
State: TypeAlias = dict[str, Any]
Summary: TypeAlias = dict[str, Any]


def start() -> State:
    """Return the state of a project of which no entry is known yet."""
    return {"entries": {}}


def add(state: State, entry: Entry) -> State:
    """Add an entry and return the state; one known by its id changes nothing, unless it now has its seq."""
    entries = state["entries"]
    name = entry.get("id", "")
    if isinstance(name, str) and (name not in entries or _sent_now(entries[name], entry)):
        entries[name] = entry
    return state


def _sent_now(held: Entry, entry: Entry) -> bool:
    return "seq" in entry and "seq" not in held


def summary(state: State) -> Summary:
    """Return what a project's screens lean on; entries that cannot be read here are passed over."""
    ordered = in_order(list(state["entries"].values()))
    project = ordered[0]["project"] if ordered else ""
    own = [entry for entry in ordered if entry["project"] == project and fits(entry)]
    how = standing(own)
    return {**named(project, own), **listed(own, how)}


def summary_of(entries: list[Entry]) -> Summary:
    """Return the summary of one project's entries."""
    state = start()
    for entry in entries:
        add(state, entry)
    return summary(state)


def summaries(entries: list[Entry]) -> list[Summary]:
    """Return a summary for each project that the entries belong to, by each one's first entry."""
    states: dict[str, State] = {}
    for entry in in_order(entries):
        add(states.setdefault(entry["project"], start()), entry)
    return [summary(state) for state in states.values()]
