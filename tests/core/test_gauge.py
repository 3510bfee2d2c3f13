from fractions import Fraction
from itertools import pairwise
from math import ceil
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.vectors.look import look
from webapp.core.gauge import TOOL
from webapp.core.working import work
from webapp.units import FACTORS

NAMES = [f"{rail}, {end}" for rail in ("back rail", "end rail", "wing") for end in ("left", "middle", "right")] + [
    "post"
]
SAID_IN = [("in", "1/8"), ("in", "1/64"), ("ft", "1/16"), ("mm", "1 mm"), ("mm", "0.5 mm")]
lengths = st.fractions(min_value=Fraction(1, 16), max_value=120, max_denominator=96)
nudges = st.fractions(min_value=Fraction(-1, 4), max_value=Fraction(1, 4), max_denominator=256)
small = st.fractions(min_value=Fraction(1, 256), max_value=Fraction(1, 4), max_denominator=256)


def lines(openings: dict[str, Fraction]) -> str:
    return "\n".join(f"{name}: {size} in" for name, size in openings.items())


@st.composite
def dry_fits(draw: Any) -> tuple[dict[str, Fraction], dict[str, str]]:
    """Openings about one length, and the other fields."""
    about = draw(lengths) + 1
    names = draw(st.lists(st.sampled_from(NAMES), min_size=1, unique=True))
    openings = {name: about + draw(nudges) for name in names}
    keep = draw(st.sampled_from(["largest", "smallest", f"{about + draw(nudges)} in"]))
    unit, graduation = draw(st.sampled_from(SAID_IN))
    fit = Fraction(0) if draw(st.booleans()) else draw(small)
    fields = {"keep": keep, "fit": f"{fit} in", "bite": f"{draw(small)} in", "tenon": f"{draw(lengths)} in"}
    return openings, {**fields, "unit": unit, "graduation": graduation}


def sheet_of(openings: dict[str, Fraction], fields: dict[str, str]) -> Any:
    return work(TOOL, {"openings": lines(openings), **fields}, FACTORS)["sheet"]


def inches(found: Any) -> Fraction:
    return Fraction(found["inches"])


def field(fields: dict[str, str], name: str) -> Fraction:
    return Fraction(fields[name].removesuffix(" in"))


def cuts(sheet: Any) -> dict[str, Fraction]:
    """What comes off at each place, by the rails alone."""
    found = {}
    for place in sheet["places"]:
        rail_name = place["place"].split(",")[0]
        (rail,) = [rail for rail in sheet["rails"] if rail["rail"] == rail_name]
        taper = [cut for cut in rail["taper"] if cut["place"] == place["place"]]
        found[place["place"]] = inches(rail["parallel"]) + sum((inches(cut["cut"]) for cut in taper), Fraction(0))
    return found


@given(dry_fits())
def test_the_gauge_is_what_was_kept_and_every_place_differs_by_what_it_does(fit):
    openings, fields = fit
    sheet = sheet_of(openings, fields)
    kept = {"largest": max(openings.values()), "smallest": min(openings.values())}
    gauge = inches(sheet["answer"]["value"])
    assert gauge == (kept[fields["keep"]] if fields["keep"] in kept else field(fields, "keep"))
    assert {place["place"]: gauge - inches(place["difference"]) for place in sheet["places"]} == openings
    assert inches(sheet["shoulder"]) == gauge
    assert inches(sheet["overall"]) == gauge + 2 * field(fields, "tenon")


@given(dry_fits())
def test_a_place_is_trimmed_to_the_gauge_and_no_further(fit):
    openings, fields = fit
    sheet = sheet_of(openings, fields)
    gauge, play, bite = inches(sheet["answer"]["value"]), field(fields, "fit"), field(fields, "bite")
    for place in sheet["places"]:
        lack, trim = gauge - openings[place["place"]], inches(place["trim"])
        assert place["fits"] == (-play <= lack <= play)
        assert trim == (lack if lack > play else 0)
        assert place["passes"] == ceil(trim / bite)


@given(dry_fits())
def test_rails_cut_as_said_fit_everywhere_but_where_no_trimming_mends_it(fit):
    openings, fields = fit
    sheet = sheet_of(openings, fields)
    gauge, play, off = inches(sheet["answer"]["value"]), field(fields, "fit"), cuts(sheet)
    for name, opening in openings.items():
        if opening > gauge + play:
            (place,) = [place for place in sheet["places"] if place["place"] == name]
            (words,) = [found["value"] for found in sheet["figures"] if found["label"].endswith(f". {name}")]
            assert (off[name], inches(place["trim"])) == (0, 0)
            assert words.endswith("no trimming mends it")
        else:
            assert -play <= gauge - opening - off[name] <= play


@given(dry_fits())
def test_parallel_and_taper_are_what_each_place_needs(fit):
    openings, fields = fit
    sheet = sheet_of(openings, fields)
    gauge, play, off = inches(sheet["answer"]["value"]), field(fields, "fit"), cuts(sheet)
    for rail in sheet["rails"]:
        lacks = {name: gauge - size for name, size in openings.items() if name.split(",")[0] == rail["rail"]}
        done = {name: off[name] for name in lacks}
        if max(lacks.values()) <= play:
            assert set(done.values()) == {0}
        elif rail["taper"]:
            assert done == {name: max(Fraction(0), lack) for name, lack in lacks.items()}
            assert [cut["place"] for cut in rail["taper"]] == list(lacks)
            assert min(inches(cut["cut"]) for cut in rail["taper"]) == 0
        else:
            assert set(done.values()) == {max(lacks.values())}
            assert max(lacks.values()) - min(lacks.values()) <= play
        assert inches(rail["cut"]) == max(done.values())


@given(dry_fits())
def test_the_longest_that_goes_in_everywhere_does_and_nothing_longer(fit):
    openings, fields = fit
    sheet = sheet_of(openings, fields)
    longest = Fraction(look(sheet, "figures.longest.value.inches"))
    after = {place["place"]: openings[place["place"]] + inches(place["trim"]) for place in sheet["places"]}
    assert longest == min(after.values())
    assert all(longest <= size + cuts(sheet)[name] for name, size in openings.items())


@given(dry_fits())
def test_what_is_said_against_the_stick_is_what_is_read(fit):
    openings, fields = fit
    gauge = inches(sheet_of(openings, fields)["answer"]["value"])
    words = {name: against(size - gauge) for name, size in openings.items()}
    text = "\n".join(f"{name}: {said}" for name, said in words.items())
    read = sheet_of(openings, {**fields, "keep": f"{gauge} in"})
    said = work(TOOL, {**fields, "openings": text, "keep": f"{gauge} in"}, FACTORS)["sheet"]
    for part in ("answer", "places", "rails", "figures", "steps", "strips", "cautions", "notes"):
        assert said.get(part) == read.get(part)


def against(over: Fraction) -> str:
    if over == 0:
        return "Fits"
    return f"loose by {over} in" if over > 0 else f"lacks {-over} in"


@given(dry_fits(), st.randoms(use_true_random=False))
def test_the_order_in_which_places_are_said_changes_nothing_that_is_done(fit, shuffler):
    openings, fields = fit
    names = list(openings)
    shuffler.shuffle(names)
    one, other = sheet_of(openings, fields), sheet_of({name: openings[name] for name in names}, fields)
    assert one["answer"] == other["answer"]
    assert cuts(one) == cuts(other)
    assert look(one, "figures.longest.value") == look(other, "figures.longest.value")


@given(dry_fits())
def test_slats_that_stand_over_are_a_caution_by_name(fit):
    openings, fields = fit
    sheet = sheet_of(openings, fields)
    gauge, play = inches(sheet["answer"]["value"]), field(fields, "fit")
    over = [name for name, size in openings.items() if 0 < gauge - size <= play]
    cautions = [text for text in sheet.get("cautions", []) if ": slats stand " in text]
    assert sorted(text.split(":")[0] for text in cautions) == sorted(over)


@given(dry_fits())
def test_the_jointer_is_warned_of_where_it_is_used(fit):
    sheet = sheet_of(*fit)
    cautions = sheet.get("cautions", [])
    used = any(inches(rail["parallel"]) > 0 for rail in sheet["rails"])
    assert any("WAC 296-78-635" in text for text in cautions) == used
    assert any("no law sets one" in text.lower() for text in cautions) == used


@given(dry_fits())
def test_strips_show_each_difference_in_its_true_size(fit):
    openings, fields = fit
    sheet = sheet_of(openings, fields)
    misfits = [place for place in sheet["places"] if not place["fits"]]
    first, *others = sheet["strips"]
    (stick, _beyond) = first["spans"]
    ends = {inches(tick["at"]) - inches(stick["to"]) for tick in first["ticks"]}
    assert ends == {-inches(place["difference"]) for place in sheet["places"]}
    assert len(others) == len(misfits)
    for strip, place in zip(others, misfits, strict=True):
        wood, rest = strip["spans"]
        assert rest["kind"] == ("cut" if inches(place["difference"]) > 0 else "air")
        assert inches(rest["to"]) - inches(rest["from"]) == abs(inches(place["difference"]))
        assert (wood["kind"], wood["to"]) == ("wood", rest["from"])
        assert 0 <= inches(wood["from"]) <= inches(wood["to"]) <= inches(rest["to"]) <= inches(strip["length"])


def test_keys_are_each_of_one_thing():
    sheet = sheet_of(dict.fromkeys(NAMES, Fraction(13)), {"tenon": "1 in"})
    keys = [part["key"] for part in [sheet["answer"], *sheet["figures"], *sheet["steps"]]]
    assert len(set(keys)) == len(keys) == 1 + 4 + len(NAMES) + 4


@pytest.mark.parametrize(
    ("metres", "mm"),
    [("0.001", "1.40"), ("1", "1.40"), ("1.001", "1.80"), ("2", "1.80"), ("2.3", "2.20"), ("3", "2.20"), ("5", "3.00")],
)
def test_two_class_ii_tapes_may_differ_by_what_the_directive_allows_each(metres, mm):
    # Directive 2014/32/EU, annex MI-008: 0.3 + 0.2 for each metre begun + 0.2 for the hook, in mm; twice that for two.
    sheet = work(TOOL, {"openings": f"{metres} m"}, FACTORS)["sheet"]
    assert look(sheet, "figures.tapes.value.mm") == mm


def test_tapes_disagree_more_with_length_and_with_class():
    found = [look(sheet_of({"a": Fraction(n)}, {}), "figures.tapes.value.mm") for n in (30, 60, 90, 120, 400)]
    assert all(Fraction(one) < Fraction(other) for one, other in pairwise(found))


def test_two_hundred_places_are_worked_and_one_more_refused():
    many = {f"rail {i}, left": Fraction(13) + Fraction(i, 128) for i in range(200)}
    assert len(sheet_of(many, {})["places"]) == 200
    assert list(work(TOOL, {"openings": lines({**many, "more": Fraction(13)})}, FACTORS)["errors"]) == ["openings"]
