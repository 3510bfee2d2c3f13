"""Where links lead: what stands for each entry of a project, and the numbers that it gives."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.links import Link
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
            return reading_numbers(item, self.how)
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
