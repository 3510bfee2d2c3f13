"""How far a round of dry fit is: which of its places are still to be read."""

from typing import Any, TypeAlias

from webapp.core.text import fold_name

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]


def left_in(summary: Summary, found: Item) -> list[str]:
    """Return the places of a round that have not been read in it, or since it was begun."""
    read = {place["key"]: True for place in summary["places"] if any(_counts(item, found) for item in place["heads"])}
    return [place for place in found["places"] if fold_name(place) not in read]


def _counts(reading: Item, found: Item) -> bool:
    return bool(reading.get("round", "") == found["entry"] or reading["rank"] > found["rank"])
