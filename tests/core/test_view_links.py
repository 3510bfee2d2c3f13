"""What stands under a linked field: the number, where it is from, and what became of it since."""

from typing import Any

import pytest

from tests.core.linked import Bench, span_of
from tests.engine import Engine
from webapp.core.links import Link, links_text
from webapp.core.picks import take_name
from webapp.core.picks_form import settled
from webapp.core.view import sheet, tool


def under(bench: Bench, name: str, field: str, **typed: str) -> dict[str, Any]:
    found: dict[str, Any] = tool(bench.gathered(name, **typed))["linked"][field]
    return found


def spanned(bench: Bench, link: Link) -> dict[str, Any]:
    return under(bench, "spacing", "span", span=f"{link.inches} in", links=links_text([link]))


def test_a_linked_field_says_its_mark_and_leads_to_its_source() -> None:
    bench = Bench()
    reading = bench.read("Lower rail, left", "17 11/16 strong")
    assert spanned(bench, span_of(reading, "2265/128")) == {
        "text": "from Lower rail, left: 17 11/16 strong",
        "href": f"/projects/{bench.history.id}/readings/{reading}",
    }
    assert under(bench, "spacing", "slat", span="2265/128 in")["text"] == ""


def test_a_metric_reading_says_its_unit() -> None:
    bench = Bench("mm", "0.5 mm")
    reading = bench.read("left", "1482.5")
    assert spanned(bench, span_of(reading, "14825/254"))["text"] == "from left: 1482.5 mm"


def test_typed_over_it_is_linked_no_more() -> None:
    bench = Bench()
    link = span_of(bench.read("left", "30"), "30")
    for text in ("30", "30 in x", "61/2 in"):
        assert under(bench, "spacing", "span", span=text, links=links_text([link]))["text"] == ""


def test_what_changed_or_went_is_said() -> None:
    bench = Bench()
    reading = bench.read("left", "30")
    link = span_of(reading, "30")
    newer = bench.read("left", "30 1/8")
    assert spanned(bench, link)["text"] == "from left: 30; it is now 30 1/8"
    bench.keep("withdrawal", entry=newer)
    assert spanned(bench, link)["text"] == "from left: 30; its source was withdrawn"
    gone = span_of(bench.history.id, "61/2")
    assert spanned(bench, gone) == {
        "text": "from a number that is not here: 30 1/2; its source is not here yet",
        "href": "",
    }


def test_a_list_says_how_many_it_took_and_those_that_changed() -> None:
    bench = Bench()
    slats = bench.space("Slats", span="30")
    typed = settled(bench.gathered("stick", into="marks", length="60", **{take_name(slats, "all"): "yes"}))
    found = under(bench, "stick", "marks", **typed)
    assert found["text"] == "from Slats: Slat 1, left to Slat 3, right, 6 in all"
    assert found["href"] == f"/projects/{bench.history.id}/sheets/{slats}"
    bench.space("Slats", span="31", replaces=slats)
    words = under(bench, "stick", "marks", **typed)["text"].split("\n")
    assert words[1] == "from Slats, Slat 1, left: 5 7/16; it is now 5 11/16"
    assert (len(words), words[4]) == (5, "and 3 more that changed")
    mixed = settled(
        bench.gathered("stick", into="marks", **typed, **{take_name(bench.read("end", "40"), "reading"): "yes"})
    )
    assert under(bench, "stick", "marks", **mixed)["href"] == ""


def test_without_a_project_there_are_no_links() -> None:
    bench = Bench()
    link = span_of(bench.read("left", "30"), "30")
    g = {**bench.gathered("spacing", span="30 in", links=links_text([link])), "project": None}
    assert {each["text"] for each in tool(g)["linked"].values()} == {""}


def test_a_sheet_that_is_changed_keeps_its_links_and_its_numbers_can_be_opened() -> None:
    bench = Bench()
    reading = bench.read("left", "30")
    slats = bench.space("Slats", span_of(reading, "30"))
    view = sheet({**bench.gathered(), "entry": slats})
    assert [i["source"] for i in view["inputs"]] == ["from left: 30", "", ""]
    assert f"links=span%20{reading}%20reading%2030" in view["change"]
    root = f"/projects/{bench.history.id}/origin/{slats}"
    assert view["sheet"]["answer"]["href"] == f"{root}/gap"
    assert [mark["href"] for mark in view["sheet"]["marks"]][:2] == [f"{root}/slat-1-left", f"{root}/slat-1-right"]
    words = [figure for figure in view["sheet"]["figures"] if figure["mark"] is None]
    assert words
    assert not [figure for figure in words if "href" in figure]
    assert "href" not in tool(bench.gathered("spacing", span="30", slat="2", count="3"))["sheet"]["answer"]


@pytest.mark.browser
def test_it_is_the_same_on_the_phone(engine: Engine) -> None:
    bench = Bench()
    reading = bench.read("left", "17 11/16 strong")
    slats = bench.space("Slats", span_of(reading, "2265/128"))
    typed = settled(bench.gathered("stick", into="marks", length="60", **{take_name(slats, "all"): "yes"}))
    bench.read("left", "17")
    asked = [bench.gathered("stick", **typed), bench.gathered("spacing", **bench.history.entries[2]["body"]["inputs"])]
    engine.check([("view", "tool", (g,)) for g in asked])
