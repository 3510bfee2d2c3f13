"""A bench with a small tool, on which sheets stand on readings and on each other; and a plain model of what holds."""

from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from tests.core.histories import History
from webapp.core import fold
from webapp.core.entries import draft
from webapp.core.entries_sheet import sheet_of
from webapp.core.follow import Follow, follow
from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import figure
from webapp.core.tool import Field, Tool
from webapp.tools import TOOLS
from webapp.units import FACTORS

Entry = dict[str, Any]
Item = dict[str, Any]
MOST = Fraction(40)  # above it the tool gives no half any more: a key that vanishes


def add_up(values: dict[str, Any], how: Setting) -> dict[str, Any]:
    total = values["one"] + values.get("other", Fraction(0))
    halves = [figure("half", "Half", length(total / 2, how))] if total <= MOST else []
    return {"answer": figure("total", "Total", length(total, how)), "figures": halves}


SUM = Tool(
    "sum",
    "Sum",
    "Adds two lengths.",
    (Field("one", "One", "length", required=True, sign="any"), Field("other", "Other", "length", sign="any")),
    add_up,
)
ALL = {**TOOLS, "sum": SUM}
FIELDS = ("one", "other")


def worked(summary: dict[str, Any]) -> dict[str, Any]:
    items = [item for thing in summary["sheets"] for item in thing["heads"] + thing["past"]]
    return {item["entry"]: sheet_of(item, ALL, FACTORS) for item in items}


class Bench:
    """One project's history, and what is made from it as a maker's presses do."""

    def __init__(self) -> None:
        self.history = History()
        self.history.project()

    def summary(self, before: int | None = None) -> dict[str, Any]:
        """Return the state; or as a phone saw it that knows the first entries alone."""
        return fold.summary_of(self.history.entries[:before])

    def drafts(self, kind: str, summary: dict[str, Any], **typed: str) -> list[dict[str, Any]]:
        """Return what one press makes; nothing where it is refused."""
        made = draft(kind, typed, summary, ALL, FACTORS, worked(summary))
        return [] if "errors" in made else [made, *made.pop("also", [])]

    def put(self, drafts: Iterable[dict[str, Any]]) -> list[str]:
        return [self.history.add(each["kind"], _signed(each), each["replaces"]) for each in drafts]

    def keep(self, kind: str, **typed: str) -> str:
        return self.put(self.drafts(kind, self.summary(), **typed))[0]

    def follow(self) -> Follow:
        summary = self.summary()
        return follow(summary, worked(summary), FACTORS)

    def sheet(self, called: str, links: list[tuple[str, str]], replaces: str = "") -> str:
        """Keep a sum of the numbers that these (entry, key) give now; nothing linked is 1."""
        return self.keep("sheet", **self.typed_sheet(called, links), replaces=replaces)

    def typed_sheet(self, called: str, links: list[tuple[str, str]]) -> dict[str, str]:
        typed = {"tool": "sum", "called": called, "one": "1"}
        lines = []
        for name, (entry, key) in zip(FIELDS, links, strict=False):
            inches = Model(self.summary()).now(entry, key)
            typed[name] = f"{inches} in"
            lines.append(f"{name} {entry} {key} {inches}")
        return {**typed, "links": "\n".join(lines)}


def _signed(drafted: dict[str, Any]) -> dict[str, Any]:
    return drafted["body"] | ({"engine": "1", "digest": "0" * 64} if drafted["kind"] == "sheet" else {})


class Model:
    """What holds, by plain recursion over what stands: the other reading of contracts.md, 5."""

    def __init__(self, summary: dict[str, Any]) -> None:
        self.heads: dict[str, list[Item]] = {}
        for thing in summary["places"] + summary["sheets"]:
            for item in thing["heads"] + thing["past"]:
                self.heads[item["entry"]] = thing["heads"]
        cuts = [head for thing in summary["cuts"] for head in thing["heads"]]
        self.cuts = sorted(cuts, key=lambda cut: -cut["rank"])  # the last word first

    def is_cut(self, item: Item) -> bool:
        return any(cut["of"] == item["entry"] for cut in self.cuts)

    def value(self, item: Item, key: str) -> str | None:
        """Return a number of something that stands, as it is: measured where it was cut and measured."""
        if "tool" not in item:
            return str(item["inches"]) if key == "reading" else None
        for cut in self.cuts:
            if cut["of"] == item["entry"] and (cut["key"] or "total") == key and "measured" in cut:
                return str(cut["measured"]["inches"])
        total = sum((Fraction(text.removesuffix(" in")) for text in item["inputs"].values()), Fraction(0))
        if key == "half":
            return str(total / 2) if total <= MOST else None
        return str(total) if key == "total" else None

    def now(self, entry: str, key: str) -> str | None:
        """Return what a source gives now, or None where it has to be waited for."""
        heads = self.heads.get(entry, [])
        return self.value(heads[0], key) if len(heads) == 1 else None

    def state(self, item: Item, way: tuple[str, ...] = ()) -> str:
        """Return holds, stale or waits; what stands in a ring waits."""
        if item["entry"] in way:
            return "waits"
        states = []
        for link in item.get("links", []):
            now = self.now(link["entry"], link["key"])
            if now is None:
                return "waits"
            source = self.heads[link["entry"]][0]
            below = "holds" if self.is_cut(source) else self.state(source, (*way, item["entry"]))
            if self.in_ring(item):
                below = "waits"
            states.append("stale" if below == "holds" and now != link["inches"] else below)
        return next((state for state in ("waits", "stale") if state in states), "holds")

    def in_ring(self, item: Item) -> bool:
        """Say whether the ways from something lead back to it."""
        seen: set[str] = set()
        ways = [item]
        while ways:
            for link in ways.pop().get("links", []):
                for source in self.heads.get(link["entry"], [])[:2]:
                    if len(self.heads[link["entry"]]) == 1:
                        if source["entry"] == item["entry"]:
                            return True
                        if source["entry"] not in seen:
                            seen.add(source["entry"])
                            ways.append(source)
        return False
