"""The slats: how long the newest gauge sheet has them cut, and whether they are said to be cut."""

from typing import Any, TypeAlias

from webapp.core.address import sheet_address
from webapp.core.built import RAIL, exact_of
from webapp.core.piece import Item, Piece
from webapp.core.piece_rails import gauge
from webapp.core.piece_words import the
from webapp.core.sums import counted, with_unit
from webapp.core.text import fold_name

Sheet: TypeAlias = dict[str, Any]

SLATS = ("overall", "shoulder")  # the figures of a gauge sheet that are the slats' lengths


def slats_key(sheet: Sheet) -> str:
    """Return which of a gauge sheet's figures the slats are cut by: over both tenons, where these are known."""
    return "overall" if "overall" in sheet else "shoulder"


def slats_part(here: Piece) -> Item | None:
    """Return the part that is the slats."""
    found = [part for part in here.parts if "slat" in fold_name(part["name"])]
    return found[0] if found else None


def slats_cut(here: Piece) -> Item | None:
    """Return what says that the slats are cut by the newest gauge sheet."""
    newest = gauge(here.summary, here.worked)
    found = [cut for cut in here.cuts if newest is not None and cut["of"] == newest[0]["entry"]]
    slats = [cut for cut in found if cut["key"] in SLATS]
    return slats[-1] if slats else None


def slats_words(sheet: Sheet) -> str:
    """Say how long slats are: "14 11/16 strong over all, 13 1/16 strong shoulder to shoulder"."""
    lengths = [("overall", "over all"), ("shoulder", "shoulder to shoulder")]
    return ", ".join([f"{_said(sheet, key)} {words}" for key, words in lengths if key in sheet])


def _said(sheet: Sheet, key: str) -> str:
    text = str(sheet[key]["mark"])
    return with_unit(text, "mm") if sheet["unit"] == "mm" else text


def slats_next(here: Piece) -> tuple[str, str, str]:
    """Say that the slats are to be cut, how many and how long; or, where they are, that their stage is to be ticked."""
    newest = gauge(here.summary, here.worked)
    if newest is None:
        return "Cut the slats", "", ""
    head, sheet = newest
    if slats_cut(here) is not None:
        return "Tick the slats: they are cut", slats_words(sheet), ""
    part = slats_part(here)
    name = the(part["name"]) if part is not None else "the slats"
    return f"Cut {name} to length", f"{_many(part)}{slats_words(sheet)}; from {head['called']}", _page(here, head)


def to_cut(here: Piece) -> tuple[str, str]:
    """Return the sheet and its line that the slats are cut by, while they are not."""
    newest = gauge(here.summary, here.worked)
    if newest is None or slats_cut(here) is not None:
        return "", ""
    return newest[0]["entry"], slats_key(newest[1])


def slats_known(here: Piece) -> list[str]:
    """Return how long the slats are cut, where they are."""
    newest = gauge(here.summary, here.worked)
    return [f"cut, {slats_words(newest[1])}"] if newest is not None and slats_cut(here) is not None else []


def _many(part: Item | None) -> str:
    """Say how many are cut: the spare ones too."""
    if part is None:
        return ""
    return f"{counted(part['count'], 'piece')}{' and ' + str(part['spare']) + ' spare' if part['spare'] else ''}: "


def _page(here: Piece, head: Item) -> str:
    return sheet_address(here.summary["id"], head["entry"])


def cuttable(sheet: Sheet) -> list[dict[str, Any]]:
    """Return the lines of a sheet that can be marked as cut: rails that something comes off, slats by their length."""
    idle = [f"{RAIL}{i + 1}" for i, rail in enumerate(_rails(sheet)) if exact_of(rail["cut"]["inches"]) == 0]
    slats = [each for each in sheet.get("figures", []) if sheet["tool"] == "gauge" and each["key"] == slats_key(sheet)]
    return [step for step in sheet.get("steps", []) if step["key"] not in idle] + slats


def _rails(sheet: Sheet) -> list[dict[str, Any]]:
    return list(sheet.get("rails", [])) if sheet["tool"] == "gauge" else []
