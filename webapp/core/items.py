"""What gives numbers in a project, by entry, standing or not: readings, parts, sheets; and how it is named."""

from typing import Any, TypeAlias

from webapp.core.address import part_address, reading_address, sheet_address
from webapp.core.follow_ground import Ground
from webapp.core.gauge_against import against
from webapp.core.numbers import Number
from webapp.core.view_project import said

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Known: TypeAlias = tuple[str, Item]  # its kind, and what was kept

LISTS = (("reading", "places"), ("part", "parts"), ("sheet", "sheets"))


def items_of(summary: Summary) -> dict[str, Known]:
    """Return what gives numbers, by entry."""
    found: dict[str, Known] = {}
    for kind, name in LISTS:
        for thing in summary[name]:
            for item in thing["heads"] + thing["past"]:
                found[item["entry"]] = (kind, item)
    return found


def named(kind: str, item: Item) -> str:
    """Say what gives a number: the place that was read, the part, the sheet."""
    return str(item[{"reading": "place", "part": "name", "sheet": "called"}[kind]])


def number_at(here: Ground, kind: str, item: Item, key: str) -> Number | None:
    """Return one number of something, whether it stands or not; a reading as it was said, with its unit."""
    number = here.given(kind, item).get(key)
    return spoken_number(kind, item, number) if number is not None else None


def spoken_number(kind: str, item: Item, number: Number) -> Number:
    """Return a number with what says it, its unit too where a reading's text leaves that open."""
    if kind != "reading" or against(item["text"]):
        return number
    return Number(number.key, number.label, number.inches, said(item))


def full_name(kind: str, item: Item, number: Number) -> str:
    """Name a number where its sheet is not at hand."""
    return f"{named(kind, item)}, {number.label}" if kind == "sheet" else number.label


def page_of(summary: Summary, kind: str, entry: str) -> str:
    """Return the address of the page on which something stands."""
    if kind == "part":
        return part_address(summary["id"], entry)
    return reading_address(summary["id"], entry) if kind == "reading" else sheet_address(summary["id"], entry)
