"""A project to look at: the slatted headboard of a bed in ash, with what its maker measured and worked."""

from hashlib import sha256
from typing import Any

from webapp.core.entries import draft
from webapp.core.fold import summary_of
from webapp.core.sheet import to_json
from webapp.core.working import work
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


def entries() -> list[dict[str, Any]]:
    """Make the demo's entries, as forms would: the same ids every time, so that they are kept once."""
    made: list[dict[str, Any]] = []
    for number, (kind, typed) in enumerate(STEPS, start=1):
        drafted = draft(kind, typed, summary_of(made) if made else None, TOOLS, FACTORS)
        minute = f"2026-11-02T09:{number * 4:02d}:00.000Z"
        made.append({"id": ID.format(number), "project": PROJECT, **seen(drafted), "made_at": minute, "by": BY})
    return made


def seen(drafted: dict[str, Any]) -> dict[str, Any]:
    """Put the digest of what was seen on a kept sheet."""
    if drafted["kind"] != "sheet":
        return drafted
    body = drafted["body"]
    outcome = work(TOOLS[body["tool"]], body["inputs"] | {k: body[k] for k in ("unit", "graduation")}, FACTORS)
    digest = sha256(to_json(outcome["sheet"]).encode()).hexdigest()
    return {**drafted, "body": {**body, "engine": BY, "digest": digest}}


def fill(store: Store) -> None:
    """Keep the demo's project, once."""
    store.add(entries())
