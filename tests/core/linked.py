"""A project whose sheets take their numbers from readings, parts and each other, for the tests of the screens."""

from typing import Any

from tests.core.histories import History
from webapp.core import entries, fold
from webapp.core.entries_sheet import sheet_of
from webapp.core.links import Link, links_text
from webapp.tools import TOOLS
from webapp.units import FACTORS

Typed = dict[str, str]


class Bench:
    """A project, kept step by step through the forms' own way; each step gives the entry it made."""

    def __init__(self, unit: str = "in", graduation: str = "1/32") -> None:
        self.history = History()
        self.history.project(unit=unit, graduation=graduation)

    @property
    def summary(self) -> dict[str, Any]:
        return fold.summary_of(self.history.entries)

    @property
    def worked(self) -> dict[str, Any]:
        kept = [entry for entry in self.history.entries if entry["kind"] == "sheet"]
        return {entry["id"]: sheet_of(entry["body"], TOOLS, FACTORS) for entry in kept}

    def keep(self, kind: str, **typed: str) -> str:
        drafted = entries.draft(kind, typed, self.summary, TOOLS, FACTORS, self.worked)
        assert "errors" not in drafted, drafted
        stamp = {"engine": "1", "digest": "0" * 64} if kind == "sheet" else {}
        made = self.history.add(drafted["kind"], {**drafted["body"], **stamp}, drafted["replaces"])
        assert entries.check(self.history.entries[-1], TOOLS, FACTORS) == ""
        return made

    def read(self, place: str, text: str, **more: str) -> str:
        return self.keep("reading", place=place, reading=text, **more)

    def space(self, called: str, *links: Link, **typed: str) -> str:
        """Keep a spacing of three slats; each link fills its field."""
        filled = {link.field: f"{link.inches} in" for link in links}
        said = {"slat": "2 3/4", "count": "3", **filled, "links": links_text(list(links)), **typed}
        return self.keep("sheet", tool="spacing", called=called, **said)

    def gathered(self, tool: str = "", **typed: str) -> dict[str, Any]:
        """What a screen is given; everything that was worked is at hand."""
        base = {"project": self.summary, "projects": [], "worked": self.worked, "tools": list(TOOLS.values())}
        asked = {"tool": TOOLS[tool], "typed": {"project": self.history.id, **typed}} if tool else {}
        return {**base, **asked, "factors": FACTORS}


def span_of(reading: str, inches: str) -> Link:
    return Link("span", "", reading, "reading", inches)
