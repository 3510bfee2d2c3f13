"""How a number came about: its sums, its sources, theirs; and that every way up comes to an end."""

from typing import Any

import pytest

from tests.core.linked import Bench, span_of
from tests.engine import Engine
from webapp.core.follow import needed
from webapp.core.links import Link, written_link
from webapp.core.origin import sheets_above
from webapp.core.picks import take_name
from webapp.core.picks_form import settled
from webapp.core.view import origin

View = dict[str, Any]


def opened(bench: Bench, entry: str, key: str) -> View:
    """Open a number with no more at hand than what is gathered for it."""
    above = [*sheets_above(bench.summary, entry), *needed(bench.summary)]
    return origin({**bench.gathered(), "worked": {n: bench.worked[n] for n in above}, "entry": entry, "key": key})


def stick_on(bench: Bench, slats: str) -> str:
    typed = settled(bench.gathered("stick", into="marks", length="60", **{take_name(slats, "all"): "yes"}))
    return bench.keep("sheet", tool="stick", **{**typed, "called": "Stick"})


def words(sources: list[View]) -> list[str]:
    return [source["words"] for source in sources]


def test_a_reading_says_how_when_by_whom_and_what_it_replaced() -> None:
    bench = Bench()
    bench.read("left", "30")
    reading = bench.read("left", "30 1/8", note="after the trim")
    view = opened(bench, reading, "reading")
    assert (view["title"], view["at"], view["mark"]["text"]) == ("left", "left", "30 1/8")
    assert view["exactly"] == "exactly 241/8 in, 765.18 mm"
    assert view["facts"] == ["30 1/8, said at 1/32, 2026-11-25, 10:17 UTC, by the a phone", "after the trim"]
    assert view["before"] == ["30, said at 1/32, 2026-11-25, 10:17 UTC, by the a phone"]
    assert (view["sources"], view["later"]) == ([], False)


def test_a_mark_is_opened_down_to_the_reading() -> None:
    bench = Bench()
    reading = bench.read("left", "17 11/16 strong")
    slats = bench.space("Slats", span_of(reading, "2265/128"))
    view = opened(bench, stick_on(bench, slats), "mark-3")
    assert (view["title"], view["at"]) == ("Slat 2, left", "Stick")
    assert words(view["sources"]) == ["Marks, Slat 2, left: 7 15/32 strong, from Slats"]
    spacing = view["sources"][0]
    assert spacing["given"][0]["href"].endswith(f"/origin/{slats}/slat-2-left")
    assert spacing["told"]["sums"][0] == "17 89/128 - 3 x 2 3/4 = 9 57/128"
    assert [typed["label"] for typed in spacing["told"]["typed"]] == ["Slat width", "How many slats"]
    assert words(spacing["sources"]) == ["Clear span: 17 11/16 strong, from left"]
    assert spacing["sources"][0]["told"]["facts"][0].startswith("17 11/16 strong, said at 1/32")


def test_what_stands_on_several_numbers_of_a_sheet_tells_it_once() -> None:
    bench = Bench()
    slats = bench.space("Slats", span="30")
    view = opened(bench, stick_on(bench, slats), "count")
    assert words(view["sources"]) == ["6 numbers, from Slats"]
    assert len(view["sources"][0]["given"]) == 6


def test_it_is_told_as_it_was_worked_and_what_changed_since_is_said() -> None:
    bench = Bench()
    reading = bench.read("left", "30")
    slats = bench.space("Slats", span_of(reading, "30"))
    bench.read("left", "31")
    source = opened(bench, slats, "gap")["sources"][0]
    assert source["words"] == "Clear span: 30, from left"
    assert source["given"][0]["since"] == "; it is now 31"
    newer = bench.space("Slats", span="31", replaces=slats)
    assert opened(bench, slats, "gap")["later"] is True
    assert opened(bench, newer, "gap")["sources"] == []


def test_a_part_in_the_wood_comes_from_what_was_read_and_trimmed() -> None:
    bench = Bench()
    part = bench.keep("part", name="Upper rail", width="3 1/2")
    bench.read("Upper rail, width", "3 7/16")
    openings = (
        "Upper rail, left: 17 5/8\nUpper rail, right: 17 5/8\nLower rail, left: 17 11/16\nLower rail, right: 17 11/16"
    )
    gauge = bench.keep("sheet", tool="gauge", called="Gauge", openings=openings, keep="smallest")
    rails = {rail["rail"]: f"rail-{n + 1}" for n, rail in enumerate(bench.worked[gauge]["sheet"]["rails"])}
    bench.keep("cut", entry=gauge, key=rails["Upper rail"], measured="1/16")
    view = opened(bench, part, "built-width")
    assert (view["title"], view["mark"]["text"]) == ("Upper rail, width, as built", "3 3/8")
    assert words(view["sources"]) == [
        "read off the wood: 3 7/16, from Upper rail, width",
        "trimmed: 1/16, from Gauge",
    ]
    assert opened(bench, part, "width")["sources"] == []


def test_a_ring_that_came_from_elsewhere_has_an_end() -> None:
    bench = Bench()
    one = bench.space("One", span="30", offset="87/16 in")
    two = bench.space("Two", span="30", offset="87/16 in")
    bodies = {entry["id"]: entry["body"] for entry in bench.history.entries}
    bodies[one]["links"] = [written_link(Link("offset", "", two, "gap", "87/16"))]
    bodies[two]["links"] = [written_link(Link("offset", "", one, "gap", "87/16"))]
    view = opened(bench, one, "gap")
    again = view["sources"][0]["sources"][0]
    assert (again["again"], again["told"], again["sources"]) == (True, None, [])


def test_a_long_chain_is_told_to_a_depth_and_can_be_opened_on() -> None:
    bench = Bench()
    last = bench.space("Sheet 0", span="900")
    for n in range(1, 12):
        gap = bench.worked[last]["sheet"]["answer"]["value"]["inches"]
        last = bench.space(f"Sheet {n}", Link("offset", "", last, "gap", gap), span="900")
    view, depth = opened(bench, last, "gap"), 0
    while view["sources"]:
        (view,), depth = view["sources"], depth + 1
    assert 5 <= depth < 11
    assert view["told"] is None
    assert view["given"][0]["href"]


def test_what_is_not_here_is_said() -> None:
    bench = Bench()
    reading = bench.read("left", "30")
    for entry, key in ((reading, "gap"), (bench.history.id, "reading"), ("x", "y")):
        assert "This number is not here" in opened(bench, entry, key)["missing"]
    assert "missing" in origin({**bench.gathered(), "project": None, "entry": reading, "key": "reading"})


@pytest.mark.browser
def test_it_is_the_same_on_the_phone(engine: Engine) -> None:
    bench = Bench()
    reading = bench.read("left", "17 11/16 strong")
    slats = bench.space("Slats", span_of(reading, "2265/128"))
    stick = stick_on(bench, slats)
    bench.read("left", "17")
    numbers = [(reading, "reading"), (slats, "gap"), (stick, "count"), (stick, "mark-2"), (stick, "nothing")]
    asked = [{**bench.gathered(), "entry": entry, "key": key} for entry, key in numbers]
    engine.check([("view", "origin", (g,)) for g in asked])
    engine.check([("origin", "sheets_above", (bench.summary, entry)) for entry, key in numbers])
