"""What is known at each stage, and what is missing, each as a few words."""

from collections.abc import Callable

from webapp.core.built import drawn_words
from webapp.core.piece import Piece
from webapp.core.piece_glue import glue_list
from webapp.core.piece_milling import places, sizes, unread
from webapp.core.piece_rails import rails
from webapp.core.piece_rounds import left_in
from webapp.core.piece_slats import slats_known
from webapp.core.piece_words import the
from webapp.core.sums import counted


def known(here: Piece, key: str) -> list[str]:
    """Return what is known at a stage: its sheets, and what its own words say."""
    sheets = len(here.of_stage(key))
    counts = [counted(sheets, "sheet")] if sheets else []
    return (KNOWN[key](here) if key in KNOWN else []) + counts


def missing(here: Piece, key: str) -> list[str]:
    """Return what is missing at a stage."""
    return MISSING[key](here) if key in MISSING else []


def stale(here: Piece, key: str) -> list[str]:
    """Return what of a stage's sheets no longer holds, and what waits."""
    held = [here.followed.held[s["entry"]] for s in here.of_stage(key) if s["entry"] in here.followed.held]
    again = [each.item["called"] for each in held if each.state == "stale" and not each.cuts]
    cut = [each.item["called"] for each in held if each.state == "stale" and each.cuts]
    waits = [each.item["called"] for each in held if each.state == "waits"]
    return (
        _named(again, "no longer holds", "no longer hold")
        + _named(cut, "is cut, and its numbers have changed", "are cut, and their numbers have changed")
        + _named(waits, "waits", "wait")
    )


def _named(names: list[str], one: str, several: str) -> list[str]:
    """Return one sheet by its name, several by how many they are."""
    if len(names) < 2:
        return [f"{name} {one}" for name in names]
    return [f"{len(names)} sheets {several}"]


def _stock(here: Piece) -> list[str]:
    if not here.parts:
        return []
    pieces, spare = sum(part["count"] for part in here.parts), sum(part["spare"] for part in here.parts)
    more = [f"{spare} spare"] if spare else []
    return [f"{counted(len(here.parts), 'part')}, {counted(pieces, 'piece')}", *more]


def _no_stock(here: Piece) -> list[str]:
    if not here.parts:
        return ["no parts named"] if not here.sheets else []
    return [f"no sizes of {the(part['name'])}" for part in here.parts if not part["measures"]][:1]


def _rest(here: Piece) -> list[str]:
    heads = [head for thing in here.summary["conditions"] for head in thing["heads"]]
    found = [head for head in heads if head["quantity"] == "moisture"]
    return [f"{found[-1]['text']} {found[-1]['unit']}, {found[-1]['place']}"] if found else []


def _milled(here: Piece) -> list[str]:
    count = len(sizes(here)) - len(unread(here))
    return [f"{count} of {counted(len(sizes(here)), 'size')} read off the wood"] if count else []


def _unmilled(here: Piece) -> list[str]:
    left = places(unread(here))
    return [f"{left[0]} not read" + (f", and {len(left) - 1} more" if len(left) > 1 else "")] if left else []


def _joints(here: Piece) -> list[str]:
    return [f"{counted(len(here.joints), 'joint')} numbered"] if here.joints else []


def _no_joints(here: Piece) -> list[str]:
    return ["no joints numbered"] if len(here.parts) > 1 and not here.joints else []


def _tenons(here: Piece) -> list[str]:
    found = [part for part in here.parts if "tenon" in part["measures"]]
    return [f"{the(part['name'])} {drawn_words(part, 'tenon', here.how)}" for part in found][:2]


def _mortised(here: Piece) -> list[str]:
    found = [part for part in here.parts if "mortise" in part["measures"]]
    return [f"{the(part['name'])} {drawn_words(part, 'mortise', here.how)} deep" for part in found][:2]


def _rounds(here: Piece) -> list[str]:
    found = []
    for each in here.rounds[-1:]:
        left = len(left_in(here.summary, each, here.how))
        found.append(f"{each['called'] or 'a round'}: {len(each['places']) - left} of {len(each['places'])} read")
    return found


def _places_left(here: Piece) -> list[str]:
    left = [place for each in here.rounds[-1:] for place in left_in(here.summary, each, here.how)]
    return [f"{left[0]} not read"] if left else []


def _trimmed(here: Piece) -> list[str]:
    return [f"{the(rail.name)} cut, {rail.said} off" for rail in rails(here.summary, here.worked) if rail.cut]


def _to_trim(here: Piece) -> list[str]:
    return [f"{the(rail.name)} to cut" for rail in rails(here.summary, here.worked) if not rail.cut]


def _open(here: Piece) -> list[str]:
    ticks = glue_list(here.summary)
    left = len([tick for tick in ticks if not tick.done])
    return [f"{left} of {len(ticks)} open before the glue"] if left else []


def _ticked(here: Piece) -> list[str]:
    ticks = glue_list(here.summary)
    return ["all done that cannot be done after"] if ticks and all(tick.done for tick in ticks) else []


KNOWN: dict[str, Callable[[Piece], list[str]]] = {
    "stock": _stock,
    "rest": _rest,
    "finish-milling": _milled,
    "mortises": _joints,
    "tenons": _tenons,
    "slat-mortises": _mortised,
    "dry-fit": _rounds,
    "trim": _trimmed,
    "slats": slats_known,
    "glue-up": _ticked,
}
MISSING: dict[str, Callable[[Piece], list[str]]] = {
    "stock": _no_stock,
    "finish-milling": _unmilled,
    "mortises": _no_joints,
    "dry-fit": _places_left,
    "trim": _to_trim,
    "glue-up": _open,
}
