"""Links followed to their sources: which sheets and parts still hold, which are stale, which have to wait, and why."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.follow_ground import Ground, Source, ground
from webapp.core.follow_order import in_order
from webapp.core.links import link_of
from webapp.core.numbers import cuts_of

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Worked: TypeAlias = dict[str, Any]
Factors: TypeAlias = dict[str, Fraction]


@dataclass(frozen=True)
class Held:
    """How a sheet or a part stands that takes numbers from others."""

    item: Item
    kind: str  # sheet or part
    state: str  # holds, stale, waits
    sources: list[Source]
    behind: list[str]  # the entries among its sources that are stale or wait themselves
    cuts: list[Item]  # what of it is cut: it is never worked again by itself, and what stands on it stands on a fact


@dataclass(frozen=True)
class Follow:
    """A project's links followed: by entry, sources before what stands on them."""

    held: dict[str, Held]

    def of(self, state: str) -> list[Held]:
        """Return what stands so, in the order in which it is to be worked."""
        return [held for held in self.held.values() if held.state == state]


def linked(summary: Summary) -> list[tuple[str, Item]]:
    """Return the sheets and parts that stand and take numbers from others."""
    things = [("part", thing) for thing in summary["parts"]] + [("sheet", thing) for thing in summary["sheets"]]
    return [(kind, head) for kind, thing in things for head in thing["heads"] if head["links"]]


def needed(summary: Summary) -> list[str]:
    """Return the kept sheets whose working is needed: to follow a project's links, and to know what is trimmed."""
    links = [link for _kind, item in linked(summary) for link in item["links"]]
    cut = [cut["of"] for thing in summary["cuts"] for cut in thing["heads"]]
    trimming = [head["entry"] for thing in summary["sheets"] for head in thing["heads"] if head["tool"] == "gauge"]
    return sheets_behind(summary, [link["entry"] for link in links]) + cut + trimming


def sheets_behind(summary: Summary, entries: list[str]) -> list[str]:
    """Return the kept sheets that stand now for these entries."""
    heads = {item["entry"]: thing["heads"] for thing in summary["sheets"] for item in thing["heads"] + thing["past"]}
    names: dict[str, bool] = {}
    for entry in entries:
        for head in heads.get(entry, []):
            names[head["entry"]] = True
    return list(names)


def follow(summary: Summary, worked: Worked, factors: Factors) -> Follow:
    """Follow all links of a project."""
    here = ground(summary, worked, factors)
    items = {item["entry"]: (kind, item) for kind, item in linked(summary)}
    sources = {name: [here.source(link_of(link)) for link in item["links"]] for name, (kind, item) in items.items()}
    order, rings = in_order({name: [source.entry for source in found] for name, found in sources.items()})
    held: dict[str, Held] = {}
    for name in order:
        kind, item = items[name]
        found = [_ringed(source) if source.entry in rings else source for source in sources[name]]
        held[name] = held_as(here, kind, item, found if name in rings else sources[name], held)
    return Follow(held)


def _ringed(source: Source) -> Source:
    return Source(source.link, "ring", source.entry, source.number)


def held_as(here: Ground, kind: str, item: Item, sources: list[Source], before: dict[str, Held]) -> Held:
    """Return how something stands, from its sources, and from how these stand themselves."""
    behind: dict[str, bool] = {}
    for source in sources:
        if _unsettled(source.entry, before):
            behind[source.entry] = True
    state = "holds"
    if any(source.changed for source in sources) or behind:
        state = "stale"
    if any(source.why for source in sources) or any(before[name].state == "waits" for name in behind):
        state = "waits"
    cuts = cuts_of(here.summary, item["entry"]) if kind == "sheet" else []
    return Held(item, kind, state, sources, list(behind), cuts)


def _unsettled(entry: str, before: dict[str, Held]) -> bool:
    """Say whether a source may still change: one that is cut is a fact, however it stands itself."""
    held = before.get(entry)
    return held is not None and held.state != "holds" and not held.cuts
