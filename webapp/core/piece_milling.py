"""The sizes that milling gives the parts, and which of them are not read off the wood yet."""

from typing import TypeAlias

from webapp.core.measures import measure_place
from webapp.core.piece import Item, Piece
from webapp.core.text import fold_name

Size: TypeAlias = tuple[Item, str]  # a part, and the key of its measure


def sizes(here: Piece) -> list[Size]:
    """Return the sizes that were drawn: the thickness and the width of each part."""
    return [(part, key) for part in here.parts for key in ("thickness", "width") if key in part["measures"]]


def unread(here: Piece) -> list[Size]:
    """Return the sizes at whose place no reading stands."""
    read = {place["key"]: True for place in here.summary["places"] if place["heads"]}
    return [(part, key) for part, key in sizes(here) if fold_name(measure_place(part["name"], key)) not in read]


def places(found: list[Size]) -> list[str]:
    """Return the places at which sizes are read off the wood."""
    return [measure_place(part["name"], key) for part, key in found]
