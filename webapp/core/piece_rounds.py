"""How far a round of dry fit is: which of its places are still to be read."""

from typing import Any, TypeAlias

from webapp.core.rounds import places_of
from webapp.core.setting import Setting

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]


def left_in(summary: Summary, found: Item, how: Setting) -> list[str]:
    """Return the places of a round that are still to be measured, or once more."""
    return [place.name for place in places_of(summary, found, how) if place.wanted]
