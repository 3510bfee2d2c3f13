"""The rails that the gauge stick has trimmed: what is still to come off which edge, as it is said in a shop."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.built import RAIL, exact_of
from webapp.core.entries_part import part_named
from webapp.core.gauge_words import EDGE
from webapp.core.piece_words import capital, the
from webapp.core.sums import with_unit
from webapp.core.text import fold_name

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Worked: TypeAlias = dict[str, Any]

FACING = {
    "upper": "lower",
    "top": "lower",
    "lower": "upper",
    "bottom": "upper",
}  # a word of a rail's name, and its edge


@dataclass(frozen=True)
class Rail:
    """A rail of a gauge stick's sheet that has something to come off."""

    entry: str  # the sheet
    called: str
    key: str  # of its step
    name: str
    amount: Fraction
    said: str  # how much, as the sheet marks it
    words: str  # what is done, in one sentence
    cut: str  # the entry that says it is cut, or nothing


def gauge(summary: Summary, worked: Worked) -> tuple[Item, dict[str, Any]] | None:
    """Return the newest gauge sheet that stands and is worked, with its sheet."""
    heads = [head for thing in summary["sheets"] for head in thing["heads"] if head["tool"] == "gauge"]
    found = [head for head in heads if "sheet" in worked.get(head["entry"], {})]
    if not found:
        return None
    newest = sorted(found, key=lambda head: head["rank"])[-1]
    return newest, worked[newest["entry"]]["sheet"]


def rails(summary: Summary, worked: Worked) -> list[Rail]:
    """Return the rails of the newest gauge sheet that have something to come off, cut or not."""
    newest = gauge(summary, worked)
    if newest is None:
        return []
    head, sheet = newest
    cuts = {
        cut["key"]: cut["entry"] for thing in summary["cuts"] for cut in thing["heads"] if cut["of"] == head["entry"]
    }
    steps = {step["key"]: step["value"] for step in sheet["steps"]}
    found = []
    for i, rail in enumerate(sheet["rails"]):
        key, off = f"{RAIL}{i + 1}", exact_of(rail["cut"]["inches"])
        if off > 0:
            said = words(steps[key], rail, edge(summary, rail["rail"]), sheet["unit"])
            amount = _said(rail["cut"], sheet["unit"])
            cut = cuts.get(key, cuts.get("", ""))
            found.append(Rail(head["entry"], head["called"], key, rail["rail"], off, amount, said, cut))
    return found


def planned(summary: Summary, worked: Worked) -> list[Rail]:
    """Return the rails that are still to be cut."""
    return [rail for rail in rails(summary, worked) if not rail.cut]


def edge(summary: Summary, rail: str) -> str:
    """Return which edge of a rail comes down: "the lower edge of the upper rail"."""
    part = part_named(summary, rail)
    faces = part["faces"] if part is not None else ""
    named = [FACING[word] for word in fold_name(rail).replace(",", " ").split(" ") if word in FACING]
    if not faces and not named:
        return f"the edge of {the(rail)} that faces the opening"
    return f"the {faces or named[0]} edge of {the(rail)}"


def words(step: str, rail: dict[str, Any], which: str, unit: str) -> str:
    """Return a step of a gauge sheet as one sentence that names the edge; how much stands beside it."""
    much = f"{EDGE}, {_said(rail['parallel'], unit)}:"
    return capital(step.replace(much, f"{which}:").replace(EDGE, which))


def _said(size: dict[str, str], unit: str) -> str:
    return with_unit(size["mark"], "mm") if unit == "mm" else size["mark"]
