"""A round of dry fit: any order of measuring ends, and what is odd is asked exactly once more."""

from fractions import Fraction
from urllib.parse import parse_qs, urlparse

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.test_entries import Bench, checked, errors
from webapp.core.entries_round import round_of
from webapp.core.mark import mark
from webapp.core.rounds import after, at_now, places_of
from webapp.core.rounds_odd import OPENING, Reading, group_of, odd_by
from webapp.core.setting import setting
from webapp.core.view import round as round_view
from webapp.tools import TOOLS
from webapp.units import FACTORS

HOW = setting("in", "1/32", FACTORS)
METRIC = setting("mm", "0.5 mm", FACTORS)
PLACES = ("Upper rail, left", "Upper rail, right", "Lower rail, left", "Lower rail, right", "diagonal, rising")


class Fit(Bench):
    """A round that is measured place by place."""

    def __init__(self, *places: str, **typed: str) -> None:
        super().__init__()
        self.at = 0
        self.round = self.keep("round", places="\n".join(places), **typed)

    @property
    def places(self):
        return places_of(self.summary, round_of(self.summary, self.round), HOW)

    def now(self, at: int = 0, taken: int = 0, held: str = ""):
        return at_now(self.places, at, taken, held)

    def read(self, text: str, place: str = "") -> str:
        return self.keep("reading", place=place or self.now().name, reading=text, round=self.round)


def test_places_left_blank_are_made_from_the_rails_of_the_parts():
    bench = Bench()
    bench.keep("part", name="Upper rail", faces="lower", shoulder="58 3/8")
    bench.keep("part", name="Skirt", faces="upper", overall="24")
    bench.keep("part", name="Bottom rail", count="2")
    bench.keep("part", name="Left post")
    assert bench.draft("round")["body"] == {
        "called": "Dry fit 1",
        "places": [
            "Upper rail, left",
            "Upper rail, middle",
            "Upper rail, right",
            "Skirt, left",
            "Skirt, right",
            "Bottom rail 1, left",
            "Bottom rail 1, right",
            "Bottom rail 2, left",
            "Bottom rail 2, right",
            "diagonal, rising",
            "diagonal, falling",
            "side, along",
            "side, up",
            "shoulder line, Upper rail",
            "shoulder line, Skirt",
            "shoulder line, Bottom rail 1",
            "shoulder line, Bottom rail 2",
        ],
    }


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({}, "places"),
        ({"places": "a\nA "}, "places"),
        ({"places": "x" * 81}, "places"),
        ({"places": "\n".join(str(n) for n in range(201))}, "places"),
        ({"places": "a", "stick": "13 3/0"}, "stick"),
        ({"places": "a", "called": "x" * 81}, "called"),
    ],
)
def test_what_is_wrong_with_a_round_stands_at_its_field(typed, field):
    assert list(errors(Bench().draft("round", **typed))) == [field]


def test_a_round_like_another_has_its_places_and_its_stick():
    fit = Fit(*PLACES, stick="13 1/16", called="First")
    again = fit.draft("round", like=fit.round)["body"]
    assert again == {
        "called": "Dry fit 2",
        "places": list(PLACES),
        "like": fit.round,
        "stick": {"text": "13 1/16", "inches": "209/16", "unit": "in", "graduation": "1/32"},
    }
    assert "stick" not in fit.draft("round", like=fit.round, stick="None")["body"]


@pytest.mark.parametrize(
    ("text", "inches"),
    [("Fits", "209/16"), ("lacks 1/16 strong", "1663/128"), ("loose by 1/32", "419/32"), ("13", "13")],
)
def test_a_reading_against_the_stick_is_the_stick_and_what_is_said(text, inches):
    fit = Fit(*PLACES, stick="13 1/16")
    body = fit.draft("reading", place=PLACES[0], reading=text, round=fit.round)["body"]
    assert (body["inches"], body["round"], body.get("stick", "")) == (
        inches,
        fit.round,
        "" if text == "13" else "209/16",
    )
    name = fit.read(text)
    entry = next(entry for entry in fit.history.entries if entry["id"] == name)
    assert checked(entry) == ""
    assert "not" in checked({**entry, "body": {**entry["body"], "inches": "1"}})
    assert "said against" in checked({**entry, "body": {**entry["body"], "stick": "-1"}})
    assert "said against" in checked({**entry, "body": {**entry["body"], "text": "13", "stick": "13"}})
    assert "round" in checked({**entry, "body": {**entry["body"], "round": 7}})


@pytest.mark.parametrize("text", ["fits well", "lacks", "loose by", "lacks 1/0", "lacks 14"])
def test_what_cannot_be_said_against_the_stick(text):
    fit = Fit(*PLACES, stick="13 1/16")
    assert list(errors(fit.draft("reading", place="a", reading=text, round=fit.round))) == ["reading"]


def test_without_a_stick_nothing_is_said_against_it():
    fit = Fit(*PLACES)
    assert "stick" in errors(fit.draft("reading", place="a", reading="fits", round=fit.round))["reading"]
    assert "stick" in errors(fit.draft("reading", place="a", reading="fits"))["reading"]


# Which are asked again


def odd(own: str, *others: str, group: str = OPENING, how=HOW) -> str:
    """Return by how much a reading that came last is odd among others, as a mark."""
    readings = [Reading(group, Fraction(text), n) for n, text in enumerate(others)]
    found = odd_by(Reading(group, Fraction(own), 99), readings, how)
    return "" if found is None else mark(found, how)


@pytest.mark.parametrize(
    ("own", "others", "by"),
    [
        ("13", [], ""),
        ("13", ["13"], ""),
        ("53/4", ["13"], ""),  # a quarter is not over a quarter
        ("851/64", ["13"], "9/32 strong"),
        ("14", ["13", "13", "13"], "1"),
        ("105/8", ["13", "13", "13"], "1/8"),
        ("1681/128", ["13", "13"], "1/8 strong"),  # within half a division of an eighth
        ("839/64", ["13", "13"], "3/32 strong"),  # the least that is
        ("1677/128", ["13", "13"], ""),
        ("419/32", ["13", "13"], ""),
        ("13", ["14", "13"], ""),  # beside one that is misread and one that is not
        ("14", ["13", "13", "14", "14"], ""),
        ("27/2", ["13", "14"], "1/2"),  # as far from both: the lower counts
        ("25/2", ["13", "13"], "-1/2"),
    ],
)
def test_a_reading_is_odd_over_a_quarter_or_at_just_an_eighth(own, others, by):
    assert odd(own, *others) == by


@pytest.mark.parametrize(
    ("out", "by"), [("5", "5"), ("6", ""), ("6.5", "6.5"), ("10", "10"), ("4.5", ""), ("4.8", "5.0 scant")]
)
def test_metric_readings_are_odd_over_six_or_at_just_five_millimetres(out, by):
    mm = FACTORS["mm"]
    found = odd_by(Reading(OPENING, (300 + Fraction(out)) * mm, 9), [Reading(OPENING, 300 * mm, 1)] * 2, METRIC)
    assert ("" if found is None else mark(found, METRIC)) in (by, f"{by}.0")


def test_of_two_the_later_is_asked_and_sides_have_no_fellows():
    early, late = Reading(OPENING, Fraction(13), 1), Reading(OPENING, Fraction(14), 2)
    assert odd_by(early, [late], HOW) is None
    assert odd_by(late, [early], HOW) == 1
    assert odd("58", "36", group="side") == ""
    assert [group_of(name) for name in ("Diagonals, rising", "shoulder  line, x", "side, up", "a, left")] == [
        "diagonal",
        "shoulder line",
        "side",
        "opening",
    ]


# From place to place


def test_a_misread_inch_is_asked_again_and_stands_when_it_is_said_again():
    fit = Fit(*PLACES)
    fit.read("13 1/16")
    fit.read("14 1/16")
    assert (fit.now().name, fit.now().odd) == (PLACES[1], 1)
    fit.read("14 1/16")
    assert fit.now().name == PLACES[2]
    assert fit.places[1].odd is None


def test_a_place_that_is_skipped_comes_again_at_the_end():
    fit = Fit(*PLACES)
    assert after(fit.places, fit.now()).name == PLACES[1]
    for place in (*PLACES[1:], PLACES[0]):
        assert fit.now(at=2).name == place
        fit.read("13", place)
    assert fit.now(at=2) is None


def test_a_place_is_measured_again_where_it_is_asked_for_and_the_newer_stands():
    fit = Fit(*PLACES[:2])
    first = fit.read("13")
    assert fit.now(at=1, taken=1).name == PLACES[0]
    second = fit.read("13 1/32", PLACES[0])
    assert fit.now(at=1, taken=1).name == PLACES[1]
    assert [item["entry"] for item in fit.places[0].taken] == [first, second]
    assert fit.heads() == [second]


def test_what_is_half_typed_holds_its_place():
    fit = Fit(*PLACES)
    fit.read("13", PLACES[0])
    assert fit.now(held="upper rail,  LEFT").name == PLACES[0]


def test_a_withdrawn_reading_leaves_its_place_open_and_its_fellows_in_peace():
    fit = Fit(*PLACES)
    fit.read("13")
    wrong = fit.read("20", PLACES[1])
    fit.keep("withdrawal", entry=wrong)
    assert fit.now().name == PLACES[1]
    assert [item["text"] for item in fit.places[1].gone] == ["20"]
    fit.read("13 1/8")
    assert (fit.now().name, len(fit.places[1].taken)) == (
        PLACES[1],
        1,
    )  # asked again: what was withdrawn does not count
    fit.read("13 1/8")
    assert fit.now().name == PLACES[2]


def test_a_reading_of_another_round_is_none_of_this_one():
    fit = Fit(*PLACES)
    fit.keep("reading", place=PLACES[0], reading="13")
    assert fit.now().name == PLACES[0]


def test_two_phones_at_one_place_are_rivals():
    fit = Fit(*PLACES)
    for text in ("13", "13 1/32"):
        body = {"place": PLACES[0], "text": text, "inches": "13", "unit": "in", "graduation": "1/32"}
        fit.history.add("reading", {**body, "round": fit.round}, [])
    assert fit.places[0].rivals


SIZES = st.sampled_from(["13", "13 1/16", "13 1/8", "13 1/16 strong", "12", "14 1/16", "20"])


@given(st.lists(st.tuples(SIZES, SIZES, st.integers(0, 6), st.booleans()), min_size=40, max_size=40))
def test_any_order_of_measuring_ends_and_what_is_odd_is_asked_exactly_once_more(steps):
    fit = Fit(*PLACES)
    times = dict.fromkeys(PLACES, 0)
    for text, _other, at, skips in steps:
        now = fit.now(at=at)
        if now is None:
            break
        if skips and after(fit.places, now) is not None:
            now = after(fit.places, now)
        was_odd = now.odd is not None
        assert times[now.name] == (1 if was_odd else 0)
        fit.read(text, now.name)
        times[now.name] += 1
        found = fit.places[now.number - 1]
        assert not (was_odd and found.wanted)
    assert fit.now() is None
    assert all(count in (1, 2) for count in times.values())


def test_a_round_whose_like_is_itself_is_shown():
    fit = Fit(*PLACES)
    fit.history.entries[-1]["body"]["like"] = fit.round
    fit.read("13")
    g = {"project": fit.summary, "entry": fit.round, "typed": {}, "tools": list(TOOLS.values()), "factors": FACTORS}
    assert round_view(g)["rows"][0]["difference"] == "as before"


def test_an_address_with_no_number_asks_for_the_first():
    fit = Fit(*PLACES)
    g = {"project": fit.summary, "entry": fit.round, "factors": FACTORS, "typed": {"at": "x", "taken": "99999"}}
    assert round_view(g)["now"]["place"] == PLACES[0]
    assert "missing" in round_view({**g, "entry": "nothing"})


@pytest.mark.parametrize(
    ("rails", "opened"),
    [
        (("Upper rail", "Lower rail"), ["Upper rail"]),
        (("Back top rail", "back  bottom rail", "Side bottom rail"), ["Back top rail", "Side bottom rail"]),
        (("Lower rail",), ["Lower rail"]),
    ],
)
def test_the_opening_between_two_rails_is_read_once_or_both_would_be_trimmed_by_all_of_it(rails, opened):
    bench = Bench()
    for rail in rails:
        bench.keep("part", name=rail)
    places = bench.draft("round")["body"]["places"]
    assert [place for place in places if place.endswith(", left")] == [f"{rail}, left" for rail in opened]
    assert [place for place in places if place.startswith("shoulder line")] == [f"shoulder line, {r}" for r in rails]


def test_the_stick_is_tried_in_openings_alone():
    fit = Fit("Upper rail, left", "diagonal, rising", stick="13 1/16")
    g = {"project": fit.summary, "entry": fit.round, "factors": FACTORS, "typed": {}, "tools": list(TOOLS.values())}
    assert round_view(g)["tried"] is True
    fit.read("fits")
    assert round_view({**g, "project": fit.summary})["tried"] is False


def test_the_gauge_sheet_of_a_round_takes_the_slats_tenon_with_its_link():
    fit = Fit("Upper rail, left")
    slat = fit.keep("part", name="Ash slat", tenon="15/16")
    fit.read("13")
    g = {"project": fit.summary, "entry": fit.round, "factors": FACTORS, "typed": {}, "tools": list(TOOLS.values())}
    [way] = round_view(g)["ways"]
    asked = parse_qs(urlparse(way["href"]).query)
    assert asked["tenon"] == ["15/16 in"]
    assert asked["links"][0].split("\n")[-1].strip() == f"tenon {slat} tenon 15/16"
