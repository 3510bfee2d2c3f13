"""What the list before the glue says: what cannot be done after, each line with its tick and its undo."""

from typing import Any, TypeAlias

from webapp.core.piece_glue import GROUPS, Tick, glue_list
from webapp.core.piece_words import capital
from webapp.core.view_project import back_to

Summary: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]

NONE = "Nothing yet: the list is made from the parts of the piece and its numbered joints."


def glue_view(summary: Summary) -> View:
    """Give the list before the glue, group by group."""
    ticks = glue_list(summary)
    left = len([tick for tick in ticks if not tick.done])
    return {
        "title": "Before the glue",
        "project": back_to(summary),
        "words": _words(len(ticks), left),
        "groups": [group for group in [_group(key, title, ticks) for key, title, _words in GROUPS] if group["ticks"]],
    }


def _words(count: int, left: int) -> str:
    if count == 0:
        return NONE
    return f"{left} of {count} are open. None of them can be done after." if left else "All of it is done."


def _group(key: str, title: str, ticks: list[Tick]) -> View:
    return {"key": key, "title": title, "ticks": [_tick(tick) for tick in ticks if tick.group == key]}


def _tick(tick: Tick) -> View:
    return {"words": capital(tick.what), "step": tick.step, "undo": tick.done}
