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
