"""Numbers picked for a field: what is offered, and what the tool's form holds after a press."""

from typing import Any
from urllib.parse import parse_qsl, urlsplit

import pytest

from tests.core.linked import Bench, span_of
from tests.engine import Engine
from tests.trial import TOOL as TRIAL
from webapp.core.links import Link, read_links
from webapp.core.numbers import Number
from webapp.core.picks import AT, INTO, LINE, TAKE, offers, side_of, take_name
from webapp.core.picks_form import settled, settled_address
from webapp.core.tool import Field
from webapp.core.view import source
from webapp.core.working import work
from webapp.tools import TOOLS
from webapp.units import FACTORS


def number(inches: str, *, count: bool = False) -> Number:
    return Number("key", "A number", inches, inches, count)


def labels(rows: list[dict[str, Any]]) -> list[str]:
    return [row["label"] for row in rows]


def links_of(typed: dict[str, str]) -> list[tuple[str, str, str]]:
    return [(link.field, link.line, link.key) for link in read_links(typed.get("links", ""))]


def press(bench: Bench, tool: str, into: str, *names: str, **typed: str) -> dict[str, str]:
    return settled(bench.gathered(tool, into=into, **dict.fromkeys(names, "yes"), **typed))


def test_no_tool_has_a_field_that_picking_could_be_mistaken_for() -> None:
    names = {field.name for tool in [*TOOLS.values(), TRIAL] for field in tool.fields}
    assert not names & {INTO, LINE, AT, "links", "project", "replaces", "called"}
    assert not [name for name in names if name.startswith(TAKE)]


@pytest.mark.parametrize(
    ("kind", "sign", "inches", "count", "taken"),
    [
        ("length", "positive", "3", False, True),
        ("length", "positive", "3", True, False),
        ("length", "positive", "0", False, False),
        ("length", "zero", "0", False, True),
        ("length", "zero", "-1/2", False, False),
        ("length", "any", "-1/2", False, True),
        ("count", "positive", "3", True, True),
        ("count", "positive", "3", False, False),
        ("widths", "positive", "3", False, True),
        ("choice", "positive", "3", True, False),
    ],
)
def test_a_field_is_offered_what_it_can_take(kind: str, sign: str, inches: str, count: bool, taken: bool) -> None:
    assert offers(Field("f", "F", kind, sign=sign), number(inches, count=count)) is taken


def test_a_pick_puts_the_exact_value_and_says_where_it_is_from() -> None:
    bench = Bench()
    reading = bench.read("Lower rail, left", "17 11/16 strong")
    typed = press(bench, "spacing", "span", take_name(reading, "reading"), ends="gap", called="Rail")
    assert typed == {
        "span": "2265/128 in",
        "ends": "gap",
        "project": bench.history.id,
        "called": "Rail",
        "links": f"span {reading} reading 2265/128",
    }


def test_the_pick_before_it_goes_and_so_does_what_was_typed_over() -> None:
    bench = Bench()
    left, right = bench.read("left", "30"), bench.read("right", "31")
    first = press(bench, "spacing", "span", take_name(left, "reading"))
    second = press(bench, "spacing", "span", take_name(right, "reading"), **first)
    assert (second["span"], links_of(second)) == ("31 in", [("span", "", "reading")])
    assert right in second["links"]
    typed_over = press(bench, "spacing", "slat", take_name(left, "reading"), **{**second, "span": "31"})
    assert links_of(typed_over) == [("slat", "", "reading")]


def test_a_pick_of_what_was_replaced_takes_what_stands_now() -> None:
    bench = Bench()
    old = bench.read("left", "30")
    new = bench.read("left", "30 1/8")
    typed = press(bench, "spacing", "span", take_name(old, "reading"))
    assert (typed["span"], typed["links"]) == ("241/8 in", f"span {new} reading 241/8")


def test_a_pair_is_filled_side_by_side_or_at_the_side_that_was_said() -> None:
    bench = Bench()
    one, two = bench.read("bottom", "58"), bench.read("left", "36")
    typed = press(bench, "square", "sides", take_name(one, "reading"))
    typed = press(bench, "square", "sides", take_name(two, "reading"), **typed)
    assert (typed["sides"], links_of(typed)) == (
        "58 in x 36 in",
        [("sides", "1", "reading"), ("sides", "2", "reading")],
    )
    typed = press(bench, "square", "sides", take_name(one, "reading"), line="2", **typed)
    assert typed["sides"] == "58 in x 58 in"
    assert [side_of("58 in x 36 in", line) for line in ("", "3", "4", "x")] == ["1", "3", "1", "1"]


def test_a_list_takes_several_at_once_each_on_a_line_of_its_own_name() -> None:
    bench = Bench()
    names = [take_name(bench.read(place, text), "reading") for place, text in (("left: front", "17"), ("right", "18"))]
    typed = press(bench, "stick", "marks", *names, marks="datum: 1\n2 1/2")
    assert typed["marks"] == "datum: 1\n2: 2 1/2\nleft: front: 17 in\nright: 18 in"
    assert links_of(typed) == [("marks", "left: front", "reading"), ("marks", "right", "reading")]


def test_a_stick_takes_all_marks_of_two_sheets_apart_from_each_other() -> None:
    bench = Bench()
    upper, lower = bench.space("Upper", span="30"), bench.space("Lower", span="31")
    typed = press(bench, "stick", "marks", take_name(upper, "all"), take_name(lower, "all"), length="60")
    names = [line.split(":")[0] for line in typed["marks"].split("\n")]
    marks = [f"Slat {n}, {side}" for n in (1, 2, 3) for side in ("left", "right")]
    assert names == marks + [f"{mark}, Lower" for mark in marks]
    again = press(bench, "stick", "marks", take_name(upper, "all"), **typed)
    assert sorted(again["marks"].split("\n")) == sorted(typed["marks"].split("\n"))


def test_a_gauge_takes_all_readings_of_a_round() -> None:
    bench = Bench()
    places = ["Rail, left", "Rail, right"]
    first = bench.history.add("round", {"called": "Round 1", "places": places})
    for place, text in zip(places, ("58 3/8", "58 3/8 strong"), strict=True):
        bench.history.reading(place, text, round=first)
    bench.read("Elsewhere", "20")
    view = source(bench.gathered("gauge", into="openings"))
    assert [(r["label"], r["words"]) for r in view["rounds"]] == [("Round 1", "Take all 2 readings")]
    typed = press(bench, "gauge", "openings", view["rounds"][0]["name"])
    assert typed["openings"] == "Rail, left: 467/8 in\nRail, right: 7473/128 in"


def test_a_choice_alone_says_nothing() -> None:
    bench = Bench()
    assert settled(bench.gathered("spacing", ends="gap", unit="mm")) == {"unit": "mm", "project": bench.history.id}


def test_where_to_go_with_a_pick() -> None:
    bench = Bench()
    reading = bench.read("left", "30")
    taken = settled_address(bench.gathered("spacing", into="span", **{take_name(reading, "reading"): "yes"}))
    assert taken.startswith("/work/spacing?span=30%20in&")
    assert taken.endswith("#span-label")
    assert settled_address(bench.gathered("spacing", into="span", count="3")).startswith("/work/spacing?count=3&")
    bench.keep("withdrawal", entry=reading)
    gone = settled_address(bench.gathered("spacing", into="span", **{take_name(reading, "reading"): "yes"}))
    assert gone.startswith("/from/spacing?")
    assert "into=span" in gone
    assert settled_address(bench.gathered("spacing", into="ends")).startswith("/work/spacing?")


def test_the_screen_offers_what_stands_alone_the_latest_first() -> None:
    bench = Bench()
    bench.read("left", "30")
    right = bench.read("right", "31")
    bench.read("top", "20")
    one, two = bench.history.reading("twice"), bench.history.reading("twice")
    bench.keep("part", name="Rail", width="3 1/2")
    bench.space("Slats", span="30")
    bench.keep("withdrawal", entry=right)
    view = source(bench.gathered("spacing", into="span", span="20 in"))
    assert (view["title"], view["many"], view["now"]) == ("Clear span", False, "20 in")
    assert labels(view["readings"]) == ["top", "left"]
    assert labels(view["parts"]) == ["Rail, width"]
    assert [(s["title"], s["answer"]["label"], s["all"]) for s in view["sheets"]] == [
        ("Slats", "Gap, four of them", "")
    ]
    assert labels(view["doubtful"]) == ["twice"]
    assert one != two
    assert {"name": "into", "said": "span"} in view["held"]


def test_a_count_is_offered_counts() -> None:
    bench = Bench()
    bench.read("left", "30")
    bench.space("Slats", span="30")
    stick = bench.keep("sheet", tool="stick", called="Stick", marks="a: 1\nb: 2", length="9")
    view = source(bench.gathered("spacing", into="count"))
    assert (view["readings"], [s["title"] for s in view["sheets"]]) == ([], ["Stick"])
    inside = source(bench.gathered("spacing", into="count", at=stick))["whole"]
    assert [labels(section["rows"]) for section in inside["sections"]] == [["Marks on the stick"]]
    typed = press(bench, "spacing", "count", take_name(stick, "count"))
    assert (typed["count"], typed["links"]) == ("2", f"count {stick} count 2")


def test_how_many_pieces_a_part_has_is_a_count_to_take() -> None:
    bench = Bench()
    slat = bench.keep("part", name="Slat", count="9", width="2 3/4")
    assert labels(source(bench.gathered("spacing", into="count"))["parts"]) == ["Slat, how many"]
    assert "Slat, how many" not in labels(source(bench.gathered("spacing", into="slat"))["parts"])
    typed = press(bench, "spacing", "count", take_name(slat, "count"))
    assert (typed["count"], typed["links"]) == ("9", f"count {slat} count 9")


def test_what_was_said_against_a_stick_is_offered_as_the_length_it_means() -> None:
    bench = Bench()
    within = bench.keep("round", places="Upper rail, left", stick="13 1/16 strong")
    bench.read("Upper rail, left", "lacks 1/32", round=within)
    [offered] = source(bench.gathered("spacing", into="span"))["readings"]
    assert offered["mark"]["text"] == "13 1/32 strong"


def test_a_sheet_that_is_changed_is_not_offered_what_stands_on_it() -> None:
    bench = Bench()
    first = bench.space("First", span="30")
    gap = bench.worked[first]["sheet"]["answer"]["value"]["inches"]
    bench.space("Second", Link("margin", "", first, "gap", gap), span="40", ends="margin", slat="2")
    bench.space("Third", span="50")
    view = source(bench.gathered("spacing", into="span", replaces=first))
    assert [sheet["title"] for sheet in view["sheets"]] == ["Third"]


def test_what_cannot_be_picked_for_is_said() -> None:
    bench = Bench()
    assert "no field" in source(bench.gathered("spacing", into="ends"))["missing"]
    assert "This project" in source({**bench.gathered("spacing", into="span"), "project": None})["missing"]
    assert source(bench.gathered("spacing", into="span"))["nothing"] is True


def test_two_hundred_marks_fit_an_address() -> None:
    bench = Bench()
    many = bench.space("Slats", span="500", count="50", slat="2", shoulder="1/4")
    typed = press(bench, "stick", "marks", take_name(many, "all"), length="500")
    assert len(typed["marks"].split("\n")) == 200
    address = settled_address(bench.gathered("stick", into="marks", **typed))
    assert 15_000 < len(address) < 60_000
    back = dict(parse_qsl(urlsplit(address).query))
    assert back == typed
    assert len(read_links(back["links"])) == 200
    assert "sheet" in work(TOOLS["stick"], back, FACTORS)


@pytest.mark.browser
def test_picking_is_the_same_on_the_phone(engine: Engine) -> None:
    bench = Bench()
    reading = bench.read("left", "17 11/16 strong")
    bench.keep("part", name="Rail", width="3 1/2")
    slats = bench.space("Slats", span_of(reading, "2265/128"))
    picked = {take_name(slats, "all"): "yes", take_name(reading, "reading"): "yes"}
    asked = [
        bench.gathered(name, into=field.name, **more)
        for name, tool in TOOLS.items()
        for field in tool.fields
        for more in ({}, picked, {"at": slats, "replaces": slats})
    ]
    engine.check([("view", "source", (g,)) for g in asked] + [("picks_form", "settled_address", (g,)) for g in asked])
