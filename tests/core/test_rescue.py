"""Laws of slats that are cut where the opening moved (rules 15 and 17)."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from webapp.core.rescue import TOOL
from webapp.core.working import work
from webapp.units import FACTORS

lengths = st.fractions(min_value=Fraction(1, 64), max_value=60, max_denominator=128)
tenons = st.fractions(min_value=Fraction(1, 64), max_value=4, max_denominator=128)
clearances = st.fractions(min_value=0, max_value=Fraction(1, 4), max_denominator=64)


def worked(**typed: object) -> dict:
    return work(TOOL, {name: f"{value} in" for name, value in typed.items()}, FACTORS)["sheet"]


def inches(found: dict) -> Fraction:
    return Fraction(found["inches"])


def figures(sheet: dict) -> dict:
    return {part["key"]: part["value"] for part in sheet["figures"]}


@given(lengths, tenons)
def test_tenons_and_the_opening_make_the_slat(wanted, tenon):
    sheet = worked(overall=wanted + 2 * tenon, wanted=wanted)
    assert (sheet["answer"]["key"], inches(sheet["answer"]["value"])) == ("tenon", tenon)


@given(lengths, tenons, tenons)
def test_what_is_cut_again_at_both_ends_brings_the_shoulders_to_the_opening(wanted, was, over):
    overall = wanted + over + 2 * was
    sheet = worked(overall=overall, shoulder=wanted + over, wanted=wanted)
    recut = inches(sheet["answer"]["value"])
    assert wanted + over - 2 * recut == wanted
    assert inches(figures(sheet)["stop"]) == recut
    assert inches(figures(sheet)["tenon"]) == was + recut
    again = worked(overall=overall, shoulder=wanted, wanted=wanted)
    assert inches(again["answer"]["value"]) == 0
    assert figures(again)["tenon"] == figures(sheet)["tenon"]


@given(lengths, tenons, tenons)
def test_slats_short_between_the_shoulders_are_never_cut_again(shoulder, tenon, lack):
    sheet = worked(overall=shoulder + 2 * tenon, shoulder=shoulder, wanted=shoulder + lack)
    assert sheet["answer"]["key"] == "new-slats"
    assert isinstance(sheet["answer"]["value"], str)
    assert inches(figures(sheet)["short"]) == lack
    assert inches(figures(sheet)["overall"]) == shoulder + lack + 2 * tenon
    assert "steps" not in sheet


@given(lengths, tenons)
def test_slats_no_longer_than_the_opening_leave_no_tenon(overall, lack):
    sheet = worked(overall=overall, wanted=overall + lack)
    assert sheet["answer"]["key"] == "new-slats"
    assert inches(figures(sheet)["short"]) == lack


@given(lengths, tenons, tenons, clearances)
def test_a_mortise_that_was_deepened_is_deep_enough(wanted, tenon, depth, clearance):
    said = {"overall": wanted + 2 * tenon, "wanted": wanted, "clearance": clearance}
    found = figures(worked(depth=depth, **said))
    assert inches(found["mortise"]) == tenon + clearance
    deepen = Fraction(0) if isinstance(found["deepen"], str) else inches(found["deepen"])
    assert max(depth, tenon + clearance) == depth + deepen
    assert isinstance(figures(worked(depth=depth + deepen, **said))["deepen"], str)


@given(lengths, tenons, st.fractions(min_value=-1, max_value=1, max_denominator=64))
def test_strips_are_filled_without_a_hole(wanted, tenon, over):
    shoulder = max(Fraction(1, 64), wanted + over)
    for drawn in worked(overall=shoulder + 2 * tenon, shoulder=shoulder, wanted=wanted)["strips"]:
        ends = [inches(part["to"]) for part in drawn["spans"]]
        assert [inches(part["from"]) for part in drawn["spans"]] == [0, *ends[:-1]]
        assert ends[-1] == inches(drawn["length"])
