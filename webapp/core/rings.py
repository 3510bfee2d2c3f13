"""A ring of links, refused where it can be seen: a sheet that would stand on itself."""

from typing import Any

from webapp.core.follow_order import above
from webapp.core.links import Link

RING = "This number comes from what stands on this sheet itself; take it from somewhere else."


def ring_errors(summary: Any, links: list[Link], replaces: list[str]) -> dict[str, str]:
    """Return an error at each field whose link leads back to what is being replaced."""
    if summary is None or not links or not replaces:
        return {}
    thing_of = things_of(summary)
    own = [thing_of[name] for name in thing_of if name in replaces]
    on = stands_on(summary, thing_of)
    errors: dict[str, str] = {}
    for link in links:
        start = thing_of.get(link.entry, "")
        if start in own or any(name in above(start, on) for name in own):
            errors[link.field] = RING
    return errors


def things_of(summary: Any) -> dict[str, str]:
    """Return for each entry of a sheet or a part, and for the picks that show it, the thing that it belongs to."""
    found: dict[str, str] = {}
    for thing in summary["sheets"] + summary["parts"]:
        for item in thing["heads"] + thing["past"]:
            for name in [item["entry"], *item["tips"]]:
                found[name] = thing["thing"]
    return found


def stands_on(summary: Any, thing_of: dict[str, str]) -> dict[str, list[str]]:
    """Return for each thing those whose numbers the entries that stand for it take."""
    found: dict[str, list[str]] = {}
    for thing in summary["sheets"] + summary["parts"]:
        links = [link for head in thing["heads"] for link in head["links"]]
        found[thing["thing"]] = [thing_of[link["entry"]] for link in links if link["entry"] in thing_of]
    return found
