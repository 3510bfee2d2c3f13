"""A project's state as a fold of its entries: the same in any order of arrival, however often they arrive."""

from typing import Any, TypeAlias

from webapp.core.fold_clusters import in_cluster, join, meet, touch
from webapp.core.fold_clusters import start as started
from webapp.core.fold_named import named
from webapp.core.fold_places import joined, listed
from webapp.core.fold_shape import belongs, fits, in_order
from webapp.core.fold_standing import standing

Entry: TypeAlias = dict[str, Any]
State: TypeAlias = dict[str, Any]
Summary: TypeAlias = dict[str, Any]


def start() -> State:
    """Return the state of a project of which no entry is known yet."""
    return started()


def add(state: State, entry: Entry) -> State:
    """Add an entry and return the state; one known by its id changes nothing, unless it now has its seq."""
    if not belongs(entry):
        return state
    held = state["entries"].get(entry["id"], None)
    if held is not None and not _sent_now(held, entry):
        return state
    state["entries"][entry["id"]] = entry
    meet(state, entry)
    if held is not None:
        touch(state, entry)
    elif fits(entry):
        join(state, entry)
    return state


def _sent_now(held: Entry, entry: Entry) -> bool:
    return "seq" in entry and "seq" not in held


def summary(state: State) -> Summary:
    """Return what a project's screens lean on; entries that cannot be read here are passed over.

    Only what is new since the last look is folded anew.
    """
    for root in list(state["dirty"]):
        own = in_cluster(state, root)
        state["parts"][root] = listed(own, standing(own), state["keys"])
    state["dirty"] = {}
    alone = [state["entries"][name] for name in state["alone"]]
    own = in_order([entry for entry in alone if entry["project"] == state["project"]])
    return {**named(state["project"], own), **joined(list(state["parts"].values()))}


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
