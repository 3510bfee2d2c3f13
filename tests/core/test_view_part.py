"""A part's page: as drawn and as built, what was trimmed, and what is said of one rail alone."""

from typing import Any

import pytest

from tests.core.pieces import Shop, headboard
from webapp.core import view
from webapp.tools import TOOLS
from webapp.units import FACTORS

LACKS = "upper rail: lacks 9/128\nlower rail: lacks 1/8"


def shown(shop: Shop, name: str) -> dict[str, Any]:
    """Give the page of the part of a name."""
    heads = [head for thing in shop.summary["parts"] for head in thing["heads"]]
    (entry,) = [head["entry"] for head in heads if head["name"] == name]
    base = {"tools": list(TOOLS.values()), "factors": FACTORS, "projects": []}
    return view.part({**base, "project": shop.summary, "worked": shop.worked, "entry": entry})


def rows(page: dict[str, Any]) -> dict[str, tuple[str, str, str]]:
    found = {}
    for row in page["rows"]:
        sides = [row[side]["text"] if row[side] else "" for side in ("drawn", "built")]
        found[row["label"]] = (*sides, row["difference"])
    return found


def test_drawn_and_built_stand_side_by_side() -> None:
    shop = headboard()
    shop.read("Upper rail, width", "5 1/2")
    shop.read("upper  rail, thickness", "1 1/2 scant")
    shop.read("Upper rail, tenon length", "2 9/16")
    sheet = shop.gauge(LACKS, keep="13 1/16", fit="0")
    shop.cut(sheet, "rail-1")
    assert rows(shown(shop, "Upper rail")) == {
        "thickness": ("", "1 1/2 scant", ""),
        "width": ("5 1/2", "5 7/16 scant", "1/16 strong (0.070 in) under"),
        "tenon length": ("2 1/2", "2 9/16", "1/16 (0.063 in) over"),
        "edge shoulder": ("1/2", "7/16 scant", "1/16 strong (0.070 in) under"),
        "mortise depth": ("1", "15/16 scant", "1/16 strong (0.070 in) under"),
    }
    assert rows(shown(shop, "Lower rail"))["width"] == ("5 1/2", "", "")


def test_what_was_trimmed_is_told_with_its_sheet_and_what_measured_less_counts() -> None:
    shop = headboard()
    sheet = shop.gauge(LACKS, keep="13 1/16", fit="0")
    shop.cut(sheet, "rail-1", "1/16")
    page = shown(shop, "Upper rail")
    assert [(trim["words"], trim["title"]) for trim in page["trims"]] == [("1/16 off its edge", "Dry fit, first")]
    assert rows(page)["width"] == ("5 1/2", "5 7/16", "1/16 (0.063 in) under")


@pytest.mark.parametrize(("name", "count"), [("Upper rail", 1), ("Lower rail", 1), ("Slat", 0)])
def test_what_is_said_of_a_rail_stands_on_its_own_page_alone(name: str, count: int) -> None:
    shop = headboard()
    shop.joint("1", "Slat", "Upper rail")
    shop.joint("2", "Slat", "Lower rail")
    shop.gauge(LACKS, keep="13 1/16", fit="0")
    said = shown(shop, name)["warnings"]
    assert [words.startswith(f"The {name.lower()}: once ") for words in said] == [True] * count


def test_rivals_are_shown_to_be_picked_and_what_was_replaced_behind_them() -> None:
    shop = headboard()
    first = shop.history.entries[1]
    for count in (3, 4):
        shop.history.add("part", {**first["body"], "count": count}, [first["id"]])
    page = shown_entry(shop, first["id"])
    assert [rival["words"].split(";")[0] for rival in page["rivals"]] == ["3 pieces, ash", "4 pieces, ash"]
    shop.keep("pick", entry=page["rivals"][1]["entry"])
    page = shown_entry(shop, first["id"])
    assert (page["rivals"], page["words"]) == ([], "4 pieces, ash")
    assert len(page["past"]) == 2


def shown_entry(shop: Shop, entry: str) -> dict[str, Any]:
    base = {"tools": list(TOOLS.values()), "factors": FACTORS, "projects": []}
    return view.part({**base, "project": shop.summary, "worked": shop.worked, "entry": entry})
