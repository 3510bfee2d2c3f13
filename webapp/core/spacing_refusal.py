"""How a spacing is refused: an error of the table, at a field, with the room in words."""

from typing import NoReturn

from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.spacing_said import Said
from webapp.core.spacing_words import ERRORS, ROOMS
from webapp.core.sums import amount
from webapp.core.tool import InputErrors


def refuse(field: str, key: str, parts: dict[str, str]) -> NoReturn:
    """Raise the error of the table at a field."""
    raise InputErrors({field: sentence(ERRORS[key], parts)})


def last_of(said: Said, field: str) -> str:
    """Return the last field concerned: a margin that was said takes of the room too."""
    return field if said.margin is None else "margin"


def room_said(said: Said, how: Setting) -> str:
    """Return the room in words."""
    kind = "span" if said.margin is None else "margins"
    return sentence(ROOMS[kind], {"room": amount(said.room, how)})
