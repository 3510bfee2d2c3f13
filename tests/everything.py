"""A project in which everything stands that a screen can show, made by the core's own drafts; and one with nothing.

`everything()` gives the entries and the names under which tests/states.py asks for their ids.
"""

from typing import Any

from tests.core.histories import uid
from webapp import __version__
from webapp.core.entries import draft
from webapp.core.entries_sheet import sheet_of
from webapp.core.fold import summary_of
from webapp.store.works import Works
from webapp.tools import TOOLS
from webapp.units import FACTORS

Entry = dict[str, Any]

WORKS = Works(TOOLS, FACTORS, __version__)
LONG = "Schulter “links”, ab dem <b>Anriß</b>, DonaudampfschifffahrtsgesellschaftRail"


class Made:
    """One project's entries, each made as a phone makes it that knows those before."""

    def __init__(self, number: int, name: str, **how: str) -> None:
        self.entries: list[Entry] = []
        self.number, self.project = number, uid(number)
        self.keep("project", name=name, **{"unit": "in", "graduation": "1/32", **how})

    def keep(self, kind: str, *, knowing: int | None = None, **typed: str) -> str:
        """Keep what was typed, `knowing` so many entries alone, and return its id."""
        summary = summary_of(self.entries[:knowing]) if self.entries else None
        worked = {each["entry"]: sheet_of(each, TOOLS, FACTORS) for each in sheets(summary)}
        drafted = draft(kind, typed, summary, TOOLS, FACTORS, worked)
        if "errors" in drafted:
            raise ValueError(f"{kind} {typed}: {drafted['errors']}")
        at = len(self.entries)
        frame = {"id": uid(self.number + at), "project": self.project, "by": "a phone"}
        minute = f"2026-11-{2 + at // 60:02}T09:{at % 60:02}:00.000Z"
        self.entries.append({**frame, "made_at": minute, **WORKS.signed(drafted)})
        return str(frame["id"])

    def spacing(self, called: str, span: str, link: str = "", **more: Any) -> str:
        """Keep slats between, with their span taken from a reading where `link` names one."""
        taken = {"links": f"span {link} reading {span}", "span": f"{span} in"} if link else {"span": span}
        return self.keep(
            "sheet", **{"tool": "spacing", "called": called, "slat": "2 3/4", "count": "9", **taken, **more}
        )

    def change(self, called: str, replaces: str, **more: Any) -> str:
        return self.spacing(called, "58 3/8", replaces=replaces, **more)


def sheets(summary: Any) -> list[Any]:
    things = summary["sheets"] if summary else []
    return [item for thing in things for item in thing["heads"] + thing["past"]]


def everything() -> tuple[list[Entry], dict[str, str]]:
    """Return the entries of all projects, and the ids of what stands in them, by name."""
    full, blank = Made(0x1000, "One of everything"), Made(0x2000, "Nothing yet", unit="mm", graduation="0.5 mm")
    away = Made(0x3000, "Put away long ago")
    away.keep("settings", archived="yes")
    ids = {"project": full.project, "blank": blank.project, "away": away.project, "nothing": "nothing"}
    for put in (readings, kept_sheets, parts, rounds):
        ids |= put(full)
    return [*full.entries, *blank.entries, *away.entries], ids


def readings(full: Made) -> dict[str, str]:
    """A reading that stands over another, two rivals, one withdrawn, one with a long name and a note."""
    old = full.keep("reading", place="Span", reading="58 7/16", note="in the morning")
    before = len(full.entries)
    one = full.keep("reading", place="Left post", reading="3 7/16 strong")
    full.keep("reading", knowing=before, place="Left post", reading="3 1/2 scant")
    gone = full.keep("reading", place="Right post", reading="3")
    full.keep("withdrawal", entry=gone, why="read off the wrong face")
    long = full.keep("reading", place=LONG, reading="24' 11 31/32\" strong", note=LONG)
    full.keep("note", entry=long, text="A second note, after the first")
    return {"span": old, "rivals": one, "gone": gone, "long": long}


def kept_sheets(full: Made) -> dict[str, str]:
    """Sheets that hold, are stale, wait, are rivals, are cut and are withdrawn."""
    span = full.entries[1]["id"]
    stale = full.spacing("Stale, over the old span", "935/16", span)
    cut = full.spacing("Cut, over the old span", "935/16", span)
    full.keep("cut", entry=cut, key="", measured="3 1/4 strong")
    full.keep("cut", entry=cut, key="slat-2-left")
    held = full.keep("reading", place="Span", reading="58 3/8")
    holds = full.spacing("Holds", "467/8", held)
    waits = waiting(full)
    one, other = rivals(full)
    gone = full.spacing("Withdrawn", "58 3/8")
    full.keep("withdrawal", entry=gone)
    return {
        "held": held,
        "sheet-stale": stale,
        "sheet-cut": cut,
        "sheet-holds": holds,
        "sheet-waits": waits,
        "sheet-rival": one,
        "sheet-other": other,
        "sheet-gone": gone,
    }


def waiting(full: Made) -> str:
    """Keep a sheet over a reading of which there are two by then."""
    source = full.keep("reading", place="Opening", reading="30")
    found = full.spacing("Waits for the opening", "30", source, count="5")
    before = len(full.entries)
    full.keep("reading", place="Opening", reading="30 1/8")
    full.keep("reading", knowing=before, place="Opening", reading="29 7/8")
    return found


def rivals(full: Made) -> tuple[str, str]:
    """Keep two sheets that know nothing of each other, both in the place of one."""
    first = full.spacing("Between the posts", "58 3/8")
    before = len(full.entries)
    one = full.change("Between the posts", first, count="10")
    return one, full.change("Between the posts, wider", first, count="8", knowing=before)


def parts(full: Made) -> dict[str, str]:
    """Parts of the piece, one of them changed on two phones; joints; a step and a stage that are done."""
    post = full.keep("part", name="Post", count="2", wood="ash", width="3 1/2")
    rail = full.keep("part", name="Upper rail", width="5 1/2", shoulder="58 3/8", tenon="2 1/2", faces="lower")
    before = len(full.entries)
    one = full.keep("part", entry=rail, width="5 3/8")
    full.keep("part", knowing=before, entry=rail, width="5 1/4")
    gone = full.keep("part", name="Slat", count="9", spare="1", width="2 3/4")
    full.keep("joint", number="1", one="Post", other="Slat", tenon="blind", pins="pinned")
    full.keep("withdrawal", entry=gone)
    full.keep("done", step="stage stock")
    return {"part": post, "part-rival": one, "part-gone": gone}


def rounds(full: Made) -> dict[str, str]:
    """A round that is half measured, one that is through with a place in doubt, one not begun; a condition."""
    places = ("Rail, left", "Rail, right", "Long, " + LONG[:60])
    through = full.keep("round", places="\n".join(places), stick="13 1/16", called="First fit")
    for place, text in zip(places, ("fits", "14 1/16", "lacks 1/32"), strict=True):
        full.keep("reading", place=place, reading=text, round=through)
    before = len(full.entries)
    full.keep("reading", place=places[1], reading="14 1/8", round=through)
    full.keep("reading", knowing=before, place=places[1], reading="14 3/32", round=through)
    half = full.keep("round", like=through, called="After trimming")
    full.keep("reading", place=places[0], reading="13 1/16", round=half)
    full.keep("condition", place="Shop", quantity="moisture", text="8.5")
    return {"round": through, "round-half": half, "round-begun": full.keep("round", places="one", stick="none")}
