"""A part's page: as drawn and as built, what was trimmed, and what is said of one rail alone."""

from typing import Any

import pytest

from tests.core.pieces import Shop, headboard
from webapp.core import view
from webapp.core.follow_ground import ground
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


def clear_of(shop: Shop, **typed: str) -> str:
    """Work the rails from what is over all: 65 3/8 less two posts of 3 1/2 is 58 3/8."""
    return shop.keep("sheet", tool="overall", called="Rails", overall="65 3/8", post="3 1/2", **typed)


def test_a_measure_that_is_taken_from_a_sheet_is_said_as_a_mark_wherever_it_is_said() -> None:
    shop = headboard()
    sheet = clear_of(shop, other_post="3 7/16 strong")
    rail = shown_part(shop, "Upper rail")
    shop.keep("part", entry=rail, measure="shoulder", number=f"{sheet} clear 7479/128")
    page = shown(shop, "Upper rail")
    assert rows(page)["shoulder to shoulder"] == ("58 7/16 scant", "", "")
    assert page["stands"]["part-shoulder"] == "58 7/16 scant"
    numbers = ground(shop.summary, shop.worked, FACTORS).given("part", shop.piece().parts[1])
    assert (numbers["shoulder"].said, numbers["shoulder"].inches) == ("58 7/16 scant", "7479/128")
    assert (numbers["width"].said, numbers["count"].said) == ("5 1/2", "1")


def shown_part(shop: Shop, name: str) -> str:
    (entry,) = [part["entry"] for part in shop.piece().parts if part["name"] == name]
    return str(entry)


def test_a_sheet_that_stands_on_the_part_says_why_it_gives_it_nothing() -> None:
    shop = headboard()
    rail = shown_part(shop, "Upper rail")
    clear_of(shop, tenon="5/2 in", links=f"tenon {rail} tenon 5/2")
    sources = shown(shop, "Upper rail")["sources"]
    assert sources["sheets"] == []
    assert sources["own"] == [
        "Rails takes a number from this part, so it gives none back to it: type that number there, then it can."
    ]
    assert [sheet["title"] for sheet in shown(shop, "Lower rail")["sources"]["sheets"]] == ["Rails"]


def test_a_number_is_not_taken_before_it_is_said_for_which_measure() -> None:
    shop = headboard()
    sheet = clear_of(shop)
    asked = shop.refused("part", entry=shown_part(shop, "Upper rail"), measure="", number=f"{sheet} clear 467/8")
    assert asked == {"measure": "Say which measure of the part takes this number, then press again."}
