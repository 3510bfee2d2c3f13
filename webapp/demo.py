"""A project to look at: the slatted headboard of a bed in ash, with what its maker measured and worked."""

from typing import Any

from webapp.core.entries import draft
from webapp.core.fold import summary_of
from webapp.store import Store
from webapp.tools import TOOLS
from webapp.units import FACTORS

ID = "019abc00-5a5b-7000-8000-{:012x}"
PROJECT = ID.format(1)
BY = "demo"

Step = tuple[str, dict[str, str]]

STEPS: tuple[Step, ...] = (
    ("project", {"name": "Ash headboard", "unit": "in", "graduation": "1/32"}),
    ("reading", {"place": "Upper rail, shoulder to shoulder", "reading": "58 7/16"}),
    ("reading", {"place": "Lower rail, shoulder to shoulder", "reading": "58 3/8"}),
    ("reading", {"place": "Left post, front to back", "reading": "3 7/16", "note": "as it finished"}),
    ("reading", {"place": "Right post, front to back", "reading": "3 7/16 strong"}),
    (
        "reading",
        {"place": "Upper rail, shoulder to shoulder", "reading": "58 3/8", "note": "shoulder trimmed, read again"},
    ),
    ("reading", {"place": "Slat stock, width", "reading": "2 3/4"}),
    (
        "sheet",
        {"tool": "spacing", "called": "Slats between the posts", "span": "58 3/8", "slat": "2 3/4", "count": "9"},
    ),
    (
        "sheet",
        {
            "tool": "spacing",
            "called": "Lower rail from its own end",
            "span": "58 3/8",
            "slat": "2 3/4",
            "count": "9",
            "shoulder": "3/8",
            "offset": "2 1/2",
        },
    ),
    ("part", {"name": "Post", "count": "2", "wood": "ash", "thickness": "3 1/2", "width": "3 1/2"}),
    (
        "part",
        {
            "name": "Upper rail",
            "wood": "ash",
            "thickness": "1 1/2",
            "width": "5 1/2",
            "shoulder": "58 3/8",
            "tenon": "2 1/2",
            "edge": "1/2",
            "mortise": "1",
        },
    ),
    (
        "part",
        {
            "name": "Lower rail",
            "wood": "ash",
            "width": "5 1/2",
            "shoulder": "58 3/8",
            "tenon": "2 1/2",
            "edge": "1/2",
            "mortise": "1",
        },
    ),
    ("part", {"name": "Slat", "count": "9", "spare": "1", "wood": "ash", "width": "2 3/4", "tenon": "15/16"}),
    ("joint", {"number": "1", "one": "Upper rail", "other": "Post", "tenon": "through", "pins": "pinned"}),
    ("joint", {"number": "2", "one": "Lower rail", "other": "Post", "tenon": "blind", "pins": ""}),
    ("joint", {"number": "3", "one": "Slat", "other": "Upper rail", "tenon": "floating", "pins": ""}),
    ("done", {"step": "stage stock"}),
    ("done", {"step": "stage rough-milling"}),
)


def entries(store: Store) -> list[dict[str, Any]]:
    """Make the demo's entries, as forms would: the same ids every time, so that they are kept once."""
    made: list[dict[str, Any]] = []
    for number, (kind, typed) in enumerate(STEPS, start=1):
        drafted = draft(kind, typed, summary_of(made) if made else None, TOOLS, FACTORS)
        minute = f"2026-11-02T09:{number * 4:02d}:00.000Z"
        made.append({"id": ID.format(number), "project": PROJECT, **store.signed(drafted), "made_at": minute, "by": BY})
    return made


def fill(store: Store) -> None:
    """Keep the demo's project, once."""
    store.add(entries(store))
