"""What there is to do at a stage, with its part."""

from collections.abc import Callable
from typing import TypeAlias

from webapp.core.address import form_address, glue_address, part_address, work_address
from webapp.core.built import drawn_words
from webapp.core.piece import Item, Piece
from webapp.core.piece_fit_next import fit_next, trim_next
from webapp.core.piece_glue import joint_words, open_ticks, tick_words
from webapp.core.piece_milling import unread
from webapp.core.piece_slats import slats_next
from webapp.core.piece_words import capital, the
from webapp.core.sums import counted
from webapp.core.text import fold_name

Said: TypeAlias = tuple[str, str, str]  # what to do, what there is to know beside it, where it is done


def stage_next(here: Piece, key: str) -> Said:
    """Return what there is to do at a stage."""
    return WORDS[key](here)


def _part(here: Piece, part: Item, words: str, more: str = "") -> Said:
    return f"{words} {the(part['name'])}", more, part_address(here.summary["id"], part["entry"])


def _stock(here: Piece) -> Said:
    if not here.parts:
        return "Name the parts of the piece, the posts first", "", form_address(here.summary["id"], "part")
    bare = [part for part in here.parts if not part["measures"]]
    if bare:
        return _part(here, bare[0], "Say the sizes of")
    pieces = sum(part["count"] + part["spare"] for part in here.parts)
    return f"Get out the stock for {the(here.parts[0]['name'])}", f"{counted(pieces, 'piece')} in all, spares too", ""


def _rough(here: Piece) -> Said:
    if not here.parts:
        return "Rough mill the stock", "", ""
    return _part(here, here.parts[0], "Rough mill", "all of one size in one go")


def _rest(here: Piece) -> Said:
    name = the(here.parts[0]["name"]) if here.parts else "the stock"
    return f"Let {name} and the rest of the stock lie, then read its moisture", "", ""


def _milling(here: Piece) -> Said:
    """Return the first part whose thickness or width is not read off the wood, with what it was drawn at."""
    for part, key in unread(here)[:1]:
        drawn = drawn_words(part, key, here.how)
        return _part(here, part, "Finish mill", f"to {drawn}, its {key}; then read it off the wood")
    return "Tick the finish milling: every size that was drawn is read off the wood", "", ""


def _layout(here: Piece) -> Said:
    posts = [part for part in here.parts if "post" in fold_name(part["name"])]
    found = posts + here.parts
    return _part(here, found[0], "Lay out") if found else ("Lay out the posts", "", "")


def _mortises(here: Piece) -> Said:
    """Return the first joint's mortised part: the one that has no tenon of its own, else the second that is named."""
    if not here.joints:
        return "Number the joints, then cut their mortises", "", form_address(here.summary["id"], "joint")
    names = here.joints[0]["parts"]
    parts = [part for part in here.parts if part["entry"] in names]
    bare = [part for part in parts if "tenon" not in part["measures"]] + list(reversed(parts))
    words = capital(joint_words(here.summary, here.joints[0]))
    return _part(here, bare[0], "Cut the mortises of", words) if bare else ("Cut the mortises", words, "")


def _tenons(here: Piece) -> Said:
    """Return the first part with a tenon that has no mortises for slats to wait for."""
    found = [part for part in here.parts if "tenon" in part["measures"]]
    if not found:
        return "Cut the tenons", "", ""
    return _part(here, found[0], "Cut the tenons of", f"{drawn_words(found[0], 'tenon', here.how)} long")


def _slat_mortises(here: Piece) -> Said:
    found = [part for part in here.parts if "mortise" in part["measures"]]
    if not found:
        return "Cut the slat mortises", "", ""
    deep = f"{drawn_words(found[0], 'mortise', here.how)} deep"
    if not here.of_stage("slat-mortises"):
        words = f"Space the slats along {the(found[0]['name'])}"
        then = f"then mark out its slat mortises, and cut them {deep}"
        return words, then, work_address("spacing", {"project": here.summary["id"]})
    return _part(here, found[0], "Cut the slat mortises of", deep)


def _ease(here: Piece) -> Said:
    left = [tick for tick in open_ticks(here.summary) if tick.group in ("ends", "eased", "sanded")]
    if not left:
        return "Ease the arrises, and sand the inside faces", "", ""
    return capital(tick_words(left[0])), _left(len(left)), glue_address(here.summary["id"])


def _left(count: int) -> str:
    return f"{counted(count, 'line')} of the list are open" if count > 1 else "the last line of the list that is open"


def _glue(here: Piece) -> Said:
    left = open_ticks(here.summary)
    if not left:
        return "Glue it up, a dry run first", "", ""
    return f"Before the glue: {tick_words(left[0])}", _left(len(left)), glue_address(here.summary["id"])


WORDS: dict[str, Callable[[Piece], Said]] = {
    "stock": _stock,
    "rough-milling": _rough,
    "rest": _rest,
    "finish-milling": _milling,
    "layout": _layout,
    "mortises": _mortises,
    "tenons": _tenons,
    "slat-mortises": _slat_mortises,
    "dry-fit": fit_next,
    "trim": trim_next,
    "slats": slats_next,
    "ease": _ease,
    "glue-up": _glue,
    "finish": lambda here: ("Put the finish on", "", ""),
}
