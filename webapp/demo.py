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
        {
            "tool": "spacing",
            "called": "Slats between the posts",
            "span": "467/8 in",
            "slat": "2 3/4",
            "count": "9",
            "links": f"span {ID.format(6)} reading 467/8",
        },
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
    ("part", {"name": "Head post", "count": "2", "wood": "ash", "thickness": "3 1/2", "width": "3 1/2"}),
    (
        "part",
        {
            "name": "Upper rail",
            "wood": "ash",
            "faces": "lower",
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
    ("part", {"name": "Ash slat", "count": "9", "spare": "1", "wood": "ash", "width": "2 3/4", "tenon": "15/16"}),
    ("joint", {"number": "1", "one": "Upper rail", "other": "Head post", "tenon": "through", "pins": "pinned"}),
    ("joint", {"number": "2", "one": "Lower rail", "other": "Head post", "tenon": "blind", "pins": ""}),
    ("joint", {"number": "3", "one": "Ash slat", "other": "Upper rail", "tenon": "floating", "pins": ""}),
    ("done", {"step": "stage stock"}),
    ("done", {"step": "stage rough-milling"}),
    ("round", {"called": "Dry fit 1", "places": "Upper rail, left\nUpper rail, middle\nUpper rail, right"}),
    ("reading", {"place": "Upper rail, left", "reading": "13", "round": ID.format(19)}),
    ("reading", {"place": "Upper rail, middle", "reading": "13", "round": ID.format(19)}),
    ("reading", {"place": "Upper rail, right", "reading": "13", "round": ID.format(19)}),
    (
        "sheet",
        {
            "tool": "gauge",
            "called": "Gauge stick of dry fit 1",
            "openings": "Upper rail, left: 13 in\nUpper rail, middle: 13 in\nUpper rail, right: 13 in",
            "keep": "13 1/16 strong",
            "tenon": "15/16",
            "links": f"openings {ID.format(20)} reading 13 Upper rail, left\n"
            f"openings {ID.format(21)} reading 13 Upper rail, middle\n"
            f"openings {ID.format(22)} reading 13 Upper rail, right",
        },
    ),
    (
        "sheet",
        {
            "tool": "stick",
            "called": "Marks of the rails",
            "marks": "Slat 1, left: 269/80 in\nSlat 1, right: 489/80 in",
            "length": "58 3/8",
            "links": f"marks {ID.format(8)} slat-1-left 269/80 Slat 1, left\n"
            f"marks {ID.format(8)} slat-1-right 489/80 Slat 1, right",
        },
    ),
)


def entries(store: Store) -> list[dict[str, Any]]:
    """Make the demo's entries, as forms would: the same ids every time, so that they are kept once."""
    made: list[dict[str, Any]] = []
    for number, (kind, typed) in enumerate(STEPS, start=1):
        drafted = draft(kind, typed, summary_of(made) if made else None, TOOLS, FACTORS)
        hour, minute = divmod(9 * 60 + number * 4, 60)
        at = f"2026-11-02T{hour:02d}:{minute:02d}:00.000Z"
        made.append({"id": ID.format(number), "project": PROJECT, **store.signed(drafted), "made_at": at, "by": BY})
    return made


def fill(store: Store) -> None:
    """Keep the demo's project, once."""
    refused = store.add(entries(store))["refused"]
    if refused:
        raise ValueError(f"The demo is not as the store takes it: {refused[0]['why']}")
