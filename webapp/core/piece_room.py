"""Whether the slats' tenons still go into the mortises of a rail that was trimmed, or will be (rule 8)."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.built import built_measures, exact_of, trims
from webapp.core.entries_part import part_of
from webapp.core.gauge_notes import CLEARANCE
from webapp.core.piece_rails import gauge, planned
from webapp.core.piece_words import capital, the
from webapp.core.sentence import sentence
from webapp.core.setting import Setting, setting
from webapp.core.sums import amount
from webapp.core.text import fold_name
from webapp.core.trim_room import ZERO, Room, room, room_words

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Worked: TypeAlias = dict[str, Any]
Factors: TypeAlias = dict[str, Fraction]

SHORT = ("gone", "bottoms", "touches", "tight")
WARNING = {
    "planned": "{rail}: once {cut} is off, its slat mortises are {depth} deep. With {tenon} on {other}, {words}. {way}",
    "cut": "{rail}: {cut} is off, its slat mortises are {depth} deep. With {tenon} on {other}, {words}. {way}",
    "gone": "{rail}: {cut} off its edge leaves nothing of its slat mortises. {way}",
}
WAY = "Before the slats are cut: {deepen} deeper, or off each tenon's end."


@dataclass(frozen=True)
class RailRoom:
    """A rail with something off its edge, or to come off, and the room that stays for another part's tenon."""

    rail: Item  # the part
    other: str
    off: Fraction
    planned: bool
    room: Room


def rail_rooms(summary: Summary, worked: Worked) -> list[RailRoom]:
    """Return the rooms of all rails that are trimmed, for the tenon of each part that is joined to them."""
    coming = {fold_name(rail.name): rail.amount for rail in planned(summary, worked)}
    found = []
    for part in [head for thing in summary["parts"] for head in thing["heads"]]:
        came = sum([trim.amount for trim in trims(summary, part["name"], worked)], ZERO)
        comes = coming.get(fold_name(part["name"]), ZERO)
        depth = measure(summary, part, "mortise", worked)
        if depth is not None and came + comes > 0:
            for other, tenon in tenons_in(summary, part, worked):
                left = room(depth, comes, tenon, CLEARANCE)
                found.append(RailRoom(part, other, came + comes, comes > 0, left))
    return found


def measure(summary: Summary, part: Item, key: str, worked: Worked) -> Fraction | None:
    """Return a measure of a part as it is in the wood, else as it was drawn."""
    drawn = part["measures"].get(key)
    built = built_measures(summary, part, worked)
    return built.get(key, exact_of(drawn["inches"]) if drawn is not None else None)


def tenons_in(summary: Summary, rail: Item, worked: Worked) -> list[tuple[str, Fraction]]:
    """Return the tenons that go into a rail: of the parts that joints name, else what the gauge sheet says."""
    found: dict[str, Fraction] = {}
    for joint in [head for thing in summary["joints"] for head in thing["heads"]]:
        parts = [part_of(summary, entry) for entry in joint["parts"]]
        names = [part["entry"] for part in parts if part is not None]
        for other in [part for part in parts if part is not None]:
            tenon = measure(summary, other, "tenon", worked)
            if rail["entry"] in names and other["entry"] != rail["entry"] and tenon is not None:
                found[the(other["name"])] = tenon
    return list(found.items()) or _said(summary, worked)


def _said(summary: Summary, worked: Worked) -> list[tuple[str, Fraction]]:
    """Return the slats' tenon as the newest gauge sheet has it."""
    newest = gauge(summary, worked)
    if newest is None or "overall" not in newest[1]:
        return []
    sheet = newest[1]
    return [("the slats", (exact_of(sheet["overall"]["inches"]) - exact_of(sheet["shoulder"]["inches"])) / 2)]


def room_warnings(summary: Summary, worked: Worked, factors: Factors, only: str = "") -> list[str]:
    """Return what a maker is told before the slats are cut: which tenon bottoms in which rail, or nearly.

    `only` is the entry of one part: what is said of that rail alone.
    """
    how = setting(summary["unit"], summary["graduation"], factors)
    short = [found for found in rail_rooms(summary, worked) if found.room.standing in SHORT]
    return [warning(found, how) for found in short if only in ("", found.rail["entry"])]


def warning(found: RailRoom, how: Setting) -> str:
    """Say in two sentences how a tenon stands in a trimmed rail's mortise, and what can be done."""
    tenon = ZERO if found.room.tenon is None else found.room.tenon
    parts = {
        "rail": capital(the(found.rail["name"])),
        "cut": amount(found.off, how),
        "depth": amount(found.room.depth, how),
        "other": found.other,
        "tenon": amount(tenon, how),
        "words": room_words(found.room, how),
        "way": sentence(WAY, {"deepen": amount(found.room.deepen, how)}),
    }
    if found.room.standing == "gone":
        return sentence(WARNING["gone"], parts)
    return sentence(WARNING["planned" if found.planned else "cut"], parts)
