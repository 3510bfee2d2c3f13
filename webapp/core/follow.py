"""Links followed to their sources: which sheets and parts still hold, which are stale, which have to wait, and why."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.follow_order import in_order
from webapp.core.links import Link, link_of
from webapp.core.numbers import Number, cuts_of, part_numbers, reading_numbers, sheet_numbers
from webapp.core.setting import Setting, setting

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Worked: TypeAlias = dict[str, Any]
Factors: TypeAlias = dict[str, Fraction]

WHY = {
    "missing": "its source is not here yet",
    "withdrawn": "its source was withdrawn",
    "rivals": "two stand for its source: say which one holds",
    "key": "its source no longer gives this number",
    "unworked": "its source is not worked yet",
    "ring": "it stands on itself",
}


@dataclass(frozen=True)
class Source:
    """What a link leads to now: a reason why it gives nothing, or the number and the entry that gives it."""

    link: Link
    why: str  # a key of WHY, or nothing
    entry: str = ""
    number: Number | None = None

    @property
    def changed(self) -> bool:
        """Whether the number is not the one that was worked with."""
        return self.number is not None and self.number.inches != self.link.inches


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


@dataclass(frozen=True)
class Ground:
    """Where links lead: what stands for each entry of a project, and the numbers that it gives."""

    summary: Summary
    worked: Worked
    how: Setting
    heads: dict[str, list[tuple[str, Item]]]  # by entry, standing or past: what stands for it now
    numbers: dict[str, dict[str, Number]]  # by standing entry and key, filled as it is asked for

    def source(self, link: Link) -> Source:
        """Follow one link."""
        heads = self.heads.get(link.entry)
        if heads is None:
            return Source(link, "missing")
        if len(heads) != 1:
            return Source(link, "rivals" if heads else "withdrawn")
        kind, item = heads[0]
        number = self.given(kind, item).get(link.key)
        if number is None:
            return Source(link, self.lack(kind, item), item["entry"])
        return Source(link, "", item["entry"], number)

    def lack(self, kind: str, item: Item) -> str:
        """Say why something gives no number of a key."""
        return "unworked" if kind == "sheet" and "sheet" not in self.worked.get(item["entry"], {}) else "key"

    def given(self, kind: str, item: Item) -> dict[str, Number]:
        """Return the numbers of something that stands, by key."""
        name = item["entry"]
        if name not in self.numbers:
            self.numbers[name] = {number.key: number for number in self.numbers_of(kind, item)}
        return self.numbers[name]

    def numbers_of(self, kind: str, item: Item) -> list[Number]:
        """Return the numbers of something that stands."""
        if kind == "reading":
            return reading_numbers(item)
        if kind == "part":
            return part_numbers(self.summary, item, self.worked, self.how)
        sheet = self.worked.get(item["entry"], {}).get("sheet")
        return sheet_numbers(sheet, cuts_of(self.summary, item["entry"]))


def ground(summary: Summary, worked: Worked, factors: Factors) -> Ground:
    """Return where a project's links lead; `worked` holds at least the sheets that `needed` names."""
    heads: dict[str, list[tuple[str, Item]]] = {}
    for kind, name in (("reading", "places"), ("part", "parts"), ("sheet", "sheets")):
        for thing in summary[name]:
            standing = [(kind, head) for head in thing["heads"]]
            for item in thing["heads"] + thing["past"]:
                heads[item["entry"]] = standing
    return Ground(summary, worked, setting(summary["unit"], summary["graduation"], factors), heads, {})


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
