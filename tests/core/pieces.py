"""A piece made by forms, press by press: what a maker's phone would hold."""

from typing import Any

from tests.core.histories import History
from webapp.core import fold
from webapp.core.entries import draft
from webapp.core.entries_sheet import sheet_of
from webapp.core.piece import Piece, piece
from webapp.tools import TOOLS
from webapp.units import FACTORS

STEP = "stage "
RAIL = {"mortise": "1", "width": "5 1/2", "edge": "1/2"}


def worked(summary: dict[str, Any]) -> dict[str, Any]:
    items = [item for thing in summary["sheets"] for item in thing["heads"] + thing["past"]]
    return {item["entry"]: sheet_of(item, TOOLS, FACTORS) for item in items}


class Shop:
    """One project, to which forms add."""

    def __init__(self, **how: str) -> None:
        self.history = History()
        self.history.project(**how)

    @property
    def summary(self) -> dict[str, Any]:
        return fold.summary_of(self.history.entries)

    @property
    def worked(self) -> dict[str, Any]:
        return worked(self.summary)

    def keep(self, kind: str, **typed: str) -> str:
        """Keep what a form says, and return the first entry of it."""
        made = draft(kind, typed, self.summary, TOOLS, FACTORS, self.worked)
        assert "errors" not in made, made
        drafts = [made, *made.pop("also", [])]
        names = [self.history.add(each["kind"], signed(each), each["replaces"]) for each in drafts]
        return names[0]

    def refused(self, kind: str, **typed: str) -> dict[str, str]:
        found: dict[str, str] = draft(kind, typed, self.summary, TOOLS, FACTORS, self.worked)["errors"]
        return found

    def part(self, name: str, **typed: str) -> str:
        return self.keep("part", name=name, **typed)

    def joint(self, number: str, one: str, other: str, tenon: str = "", pins: str = "") -> str:
        return self.keep("joint", number=number, one=one, other=other, tenon=tenon, pins=pins)

    def read(self, place: str, reading: str, **more: str) -> str:
        return self.keep("reading", place=place, reading=reading, **more)

    def gauge(self, openings: str, **typed: str) -> str:
        return self.keep("sheet", tool="gauge", called="Dry fit, first", openings=openings, **typed)

    def cut(self, entry: str, key: str, measured: str = "") -> str:
        return self.keep("cut", entry=entry, key=key, measured=measured)

    def tick(self, *steps: str) -> None:
        for step in steps:
            self.keep("done", step=step)

    def round(self, called: str, *places: str) -> str:
        return self.history.add("round", {"called": called, "places": list(places)})

    def piece(self) -> Piece:
        return piece(self.summary, self.worked, FACTORS, list(TOOLS.values()))


def signed(drafted: dict[str, Any]) -> dict[str, Any]:
    """Return a draft's body with what an edge adds to a sheet."""
    body: dict[str, Any] = drafted["body"]
    return body | ({"engine": "1", "digest": "0" * 64} if drafted["kind"] == "sheet" else {})


def headboard() -> Shop:
    """Two posts, two rails with slat mortises 1 deep, slats with tenons of 15/16."""
    shop = Shop()
    shop.part("Post", count="2", wood="ash", thickness="3 1/2", width="3 1/2")
    shop.part("Upper rail", wood="ash", **RAIL, tenon="2 1/2")
    shop.part("Lower rail", wood="ash", **RAIL, tenon="2 1/2")
    shop.part("Slat", count="9", spare="1", wood="ash", tenon="15/16")
    return shop
