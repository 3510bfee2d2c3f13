"""The numbers of a project that a field can take its value from: readings, measures of parts, figures of sheets."""

from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.built import built_measures, drawn_words, exact_of
from webapp.core.gauge_against import against
from webapp.core.mark import mark
from webapp.core.measures import LABELS
from webapp.core.setting import Setting

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Worked: TypeAlias = dict[str, Any]  # {"sheet", …} by the entry of a kept sheet

READING = "reading"  # the one key of a reading
COUNT = "count"  # the key of how many pieces a part has
BUILT = "built-"  # before the key of a part's measure: as it is in the wood


@dataclass(frozen=True)
class Number:
    """One number: the key that a link names it by, what it is, its exact value, and how it is said."""

    key: str
    label: str
    inches: str
    said: str
    count: bool = False  # how many of something, no length


def reading_numbers(reading: Item, how: Setting) -> list[Number]:
    """Return a reading's one number, as it was said; what was said against a stick ("fits") as the length it means."""
    text = mark(exact_of(reading["inches"]), how) if against(reading["text"]) else reading["text"]
    return [Number(READING, reading["place"], reading["inches"], text)]


def part_numbers(summary: Summary, part: Item, worked: Worked, how: Setting) -> list[Number]:
    """Return a part's measures as they were drawn, and as they are in the wood; and how many pieces it has."""
    drawn = [
        Number(key, f"{part['name']}, {LABELS.get(key, key)}", said["inches"], drawn_words(part, key, how))
        for key, said in part["measures"].items()
    ]
    many = Number(COUNT, f"{part['name']}, how many", str(part["count"]), str(part["count"]), True)
    return [*drawn, many] + [
        Number(f"{BUILT}{key}", f"{part['name']}, {LABELS.get(key, key)}, as built", str(x), mark(x, how))
        for key, x in built_measures(summary, part, worked).items()
    ]


def sheet_numbers(sheet: dict[str, Any] | None, cuts: list[Item]) -> list[Number]:
    """Return a sheet's lengths and counts by key; what was cut is what it measured, not what was worked."""
    if sheet is None:
        return []
    parts = [sheet["answer"], *sheet.get("figures", []), *sheet.get("marks", []), *sheet.get("steps", [])]
    found = [_number(part) for part in parts]
    measured = {cut["key"] or sheet["answer"]["key"]: cut["measured"] for cut in cuts if "measured" in cut}
    return [_cut(number, measured) for number in found if number is not None]


def _number(part: dict[str, Any]) -> Number | None:
    value = part.get("at", part.get("value", ""))
    if isinstance(value, dict):
        return Number(part["key"], part["label"], value["inches"], value["mark"])
    if isinstance(value, int) and not isinstance(value, bool):
        return Number(part["key"], part["label"], str(value), str(value), True)
    return None


def _cut(number: Number, measured: dict[str, dict[str, str]]) -> Number:
    said = measured.get(number.key)
    return number if said is None else Number(number.key, f"{number.label}, as cut", said["inches"], said["text"])


def cuts_of(summary: Summary, entry: str) -> list[Item]:
    """Return what says of a sheet, or of a line of it, that it is cut, the last word behind the others."""
    heads = [head for thing in summary["cuts"] for head in thing["heads"] if head["of"] == entry]
    return sorted(heads, key=lambda cut: cut["rank"])
