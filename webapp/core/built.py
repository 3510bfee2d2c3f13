"""A part as it is in the wood: what was read off it, less what was trimmed since."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.mark import mark
from webapp.core.measures import LABELS, measure_place
from webapp.core.setting import Setting
from webapp.core.text import fold_name

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Worked: TypeAlias = dict[str, Any]

ZERO = Fraction(0)
TRIMMED = ("width", "edge", "mortise")  # what a trim of a rail's edge takes from (rule 8)
RAIL = "rail-"  # the keys of a gauge sheet's steps


@dataclass(frozen=True)
class Trim:
    """What came off a rail's edge: the cut that says so, how much, and when by the fold's order."""

    cut: str
    amount: Fraction
    rank: int


def trims(summary: Summary, name: str, worked: Worked) -> list[Trim]:
    """Return what came off the edge of the part of this name, by the gauge sheets' rails that are cut."""
    found = []
    for thing in summary["cuts"]:
        for cut in thing["heads"]:
            amount = _came_off(cut, name, worked.get(cut["of"], {}).get("sheet", {}))
            if amount > 0:
                found.append(Trim(cut["entry"], amount, cut["rank"]))
    return found


def _came_off(cut: Item, name: str, sheet: dict[str, Any]) -> Fraction:
    """Return what one cut took off a part: what was measured of it, else what the sheet says."""
    if sheet.get("tool", "") != "gauge":
        return ZERO
    for i, rail in enumerate(sheet.get("rails", [])):
        if cut["key"] in ("", f"{RAIL}{i + 1}") and fold_name(rail["rail"]) == fold_name(name):
            if cut["key"] and "measured" in cut:
                return exact_of(cut["measured"]["inches"])
            return exact_of(rail["cut"]["inches"])
    return ZERO


def exact_of(text: str) -> Fraction:
    """Return the value of an exact text that was looked at before it was kept."""
    value = from_exact(text)
    return ZERO if value is None else value


def drawn_words(part: Item, key: str, how: Setting) -> str:
    """Say a part's measure as it was typed; one that was taken from a sheet as its mark."""
    said = part["measures"][key]
    linked = any(link["field"] == key for link in part["links"])
    return mark(exact_of(said["inches"]), how) if linked else str(said["text"])


def built_measures(summary: Summary, part: Item, worked: Worked) -> dict[str, Fraction]:
    """Return a part's measures in the wood, by key: those that were read, or that a trim took from."""
    found: dict[str, Fraction] = {}
    off = trims(summary, part["name"], worked)
    for key in LABELS:
        read = reading_of(summary, part["name"], key)
        value, since = start_of(part, key, read)
        taken = [trim.amount for trim in off if key in TRIMMED and trim.rank > since]
        if value is not None and (read is not None or taken):
            found[key] = value - sum(taken, ZERO)
    return found


def reading_of(summary: Summary, name: str, key: str) -> Item | None:
    """Return the reading of a part's measure, where exactly one stands."""
    place = fold_name(measure_place(name, key))
    heads = [head for found in summary["places"] if found["key"] == place for head in found["heads"]]
    return heads[0] if len(heads) == 1 else None


def start_of(part: Item, key: str, read: Item | None) -> tuple[Fraction | None, int]:
    """Return what trims are taken from, and since when: what was read, else what was drawn."""
    if read is not None:
        return exact_of(read["inches"]), read["rank"]
    drawn = part["measures"].get(key)
    return (exact_of(drawn["inches"]) if drawn is not None else None), -1
