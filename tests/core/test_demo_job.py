"""The demo's headboard, from its trim to the slats: what is cut stays, and what follows from it is said in time."""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from tests.core.pieces import Shop
from webapp import demo
from webapp.core import view
from webapp.core.built import built_measures
from webapp.core.entries import draft
from webapp.core.entries_part import part_named
from webapp.core.follow import follow
from webapp.core.piece_next import next_thing
from webapp.core.piece_room import room_warnings
from webapp.core.working import work
from webapp.store import Store
from webapp.tools import TOOLS
from webapp.units import FACTORS

GAUGE, SPACING = "Gauge stick of dry fit 1", "Slats between the posts"
TRIM = "Joint the lower edge of the upper rail: two passes, then a light one"
CUT = Fraction(9, 128)
PLACES = ("left", "middle", "right")


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    made = Shop()
    with Store(tmp_path) as store:
        entries = demo.entries(store)
    made.history.entries = [{**entry, "seq": number + 1} for number, entry in enumerate(entries)]
    made.history.id = demo.PROJECT
    return made


def head(shop: Shop, called: str) -> dict[str, Any]:
    [found] = [h for t in shop.summary["sheets"] for h in t["heads"] if h["called"] == called]
    return dict(found)


def states(shop: Shop) -> dict[str, str]:
    held = follow(shop.summary, shop.worked, FACTORS).held.values()
    return {each.item["called"]: each.state for each in held}


def warnings(shop: Shop) -> str:
    return " ".join(room_warnings(shop.summary, shop.worked, FACTORS))


def trimmed(shop: Shop) -> None:
    shop.cut(head(shop, GAUGE)["entry"], "rail-1")


def measured_again(shop: Shop) -> str:
    """Measure the second round, after trimming; and keep its gauge sheet, linked to what was read."""
    first = shop.summary["rounds"][0]["heads"][0]["entry"]
    again = shop.keep("round", like=first)
    opened = {end: shop.read(f"Upper rail, {end}", "13 1/16 strong", round=again) for end in PLACES}
    openings = "\n".join(f"Upper rail, {end}: 1673/128 in" for end in PLACES)
    links = "\n".join(f"openings {entry} reading 1673/128 Upper rail, {end}" for end, entry in opened.items())
    return shop.keep("sheet", tool="gauge", called="Gauge stick of dry fit 2", openings=openings, links=links)


def test_the_trim_is_the_next_thing_and_the_tenon_that_bottoms_is_said_before_any_slat_is_cut(shop):
    assert next_thing(shop.piece()).words == TRIM
    assert "the tenon bottoms" in warnings(shop)
    trimmed(shop)
    assert next_thing(shop.piece()).words != TRIM
    assert "slats are cut" in next_thing(shop.piece()).words
    assert "the tenon bottoms" in warnings(shop)


def test_a_trim_that_was_made_takes_from_the_rail_all_that_follows_from_it(shop):
    trimmed(shop)
    rail = part_named(shop.summary, "upper rail")
    built = built_measures(shop.summary, rail, shop.worked)
    assert built == {
        "width": Fraction(11, 2) - CUT,
        "shoulder": Fraction(467, 8),
        "edge": Fraction(1, 2) - CUT,
        "mortise": 1 - CUT,
    }
    shop.read("Upper rail, width", "5 7/16 scant")  # read off the wood since: the trim is in it
    assert built_measures(shop.summary, rail, shop.worked)["width"] == Fraction(695, 128)


def test_slats_whose_tenon_was_shortened_in_time_have_room(shop):
    trimmed(shop)
    slat = part_named(shop.summary, "ash slat")["entry"]
    shop.keep("part", entry=slat, tenon="13/16")
    assert warnings(shop) == ""


def test_the_second_dry_fit_leaves_the_cut_sheet_alone_and_has_one_of_its_own(shop):
    trimmed(shop)
    cut = head(shop, GAUGE)
    measured_again(shop)
    assert states(shop)[GAUGE] == "stale"
    assert "errors" in draft("again", {}, shop.summary, TOOLS, FACTORS, shop.worked)
    assert head(shop, GAUGE) == cut
    second = shop.worked[head(shop, "Gauge stick of dry fit 2")["entry"]]["sheet"]
    assert {place["fits"] for place in second["places"]} == {True}
    assert next_thing(shop.piece()).words != TRIM


def test_a_rail_that_is_read_anew_makes_its_spacing_and_its_stick_stale_and_one_press_mends_both(shop):
    assert set(states(shop).values()) == {"holds"}
    shop.read("Upper rail, shoulder to shoulder", "58 1/4")
    assert {called for called, state in states(shop).items() if state == "stale"} == {SPACING, "Marks of the rails"}
    shop.keep("again")
    assert set(states(shop).values()) == {"holds"}
    fresh = work(TOOLS["spacing"], {"span": "58 1/4", "slat": "2 3/4", "count": "9"}, FACTORS)["sheet"]
    worked = shop.worked[head(shop, SPACING)["entry"]]["sheet"]
    assert [worked[name] for name in ("answer", "marks")] == [fresh[name] for name in ("answer", "marks")]
    stick = shop.worked[head(shop, "Marks of the rails")["entry"]]["sheet"]
    assert [mark["at"]["inches"] for mark in stick["marks"]] == [m["at"]["inches"] for m in fresh["marks"][:2]]


def test_slats_that_are_cut_are_told_at_their_length_where_the_opening_moves(shop):
    sheet = head(shop, GAUGE)["entry"]
    shop.cut(sheet, "overall")
    shop.read("Upper rail, left", "13 1/16 strong")
    base = {"project": shop.summary, "worked": shop.worked, "projects": [], "tools": list(TOOLS.values())}
    page = view.sheet({**base, "factors": FACTORS, "entry": sheet, "typed": {}})
    assert page["held"]["stale_cut"]["words"] == (
        "Gauge stick of dry fit 1 cut at 14 15/16 strong; Upper rail, left is now 13 1/16 strong"
    )
