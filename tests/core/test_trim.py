"""Laws of a rail after a trim (rule 8), and of the room that others ask for."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.core.setting import setting
from webapp.core.trim import TOOL
from webapp.core.trim_room import room, room_words
from webapp.core.working import work
from webapp.units import FACTORS

HOW = setting("in", "1/32", FACTORS)
lengths = st.fractions(min_value=Fraction(1, 128), max_value=8, max_denominator=128)
clearances = st.fractions(min_value=0, max_value=Fraction(1, 4), max_denominator=64)


def worked(**typed: object) -> dict:
    return work(TOOL, {name: f"{value} in" for name, value in typed.items()}, FACTORS)["sheet"]


def inches(found: dict) -> Fraction:
    return Fraction(found["inches"])


def figures(sheet: dict) -> dict:
    return {part["key"]: part["value"] for part in sheet["figures"]}


@given(lengths, lengths, clearances, lengths)
def test_cut_room_and_clearance_make_the_depth_that_was(cut, longest, clearance, tenon):
    sheet = worked(depth=cut + longest + clearance, cut=cut, clearance=clearance, tenon=tenon)
    assert inches(sheet["answer"]["value"]) == longest
    assert inches(sheet["left"]) + tenon == longest + clearance
    assert inches(figures(sheet)["depth"]) == longest + clearance
    assert ("over" in figures(sheet)) == (tenon > longest + clearance)
    assert ("deepen" in figures(sheet)) == (tenon > longest)


@given(lengths, lengths, clearances, lengths)
def test_what_deepens_a_mortise_makes_its_tenon_the_longest(cut, depth, clearance, tenon):
    found = room(depth, cut, tenon, clearance)
    mended = room(depth + found.deepen, cut, tenon, clearance)
    assert mended.deepen == 0
    assert mended.longest >= tenon
    assert mended.longest == tenon or found.deepen == 0
    assert mended.standing in ("fits", "gone")


@given(lengths, lengths, clearances, lengths)
def test_two_cuts_are_one_cut_of_both(cut, depth, clearance, tenon):
    once = room(depth, cut + cut / 3, tenon, clearance)
    twice = room(room(depth, cut, tenon, clearance).depth, cut / 3, tenon, clearance)
    assert once == twice


@given(lengths, lengths, clearances, st.one_of(st.none(), lengths))
def test_the_words_say_that_a_tenon_bottoms_exactly_where_it_does(cut, depth, clearance, tenon):
    found = room(depth, cut, tenon, clearance)
    words = room_words(found, HOW)
    assert words.startswith("the tenon bottoms: ") == (found.depth > 0 and tenon is not None and tenon > depth - cut)


@pytest.mark.parametrize(
    ("depth", "tenon", "words"),
    [
        ("1/16", "1/2", "nothing is left of the mortise"),
        ("1", None, "no slat's tenon longer than 7/8"),
        ("1/8", None, "no slat's tenon longer than 0"),
        ("1", "1", "the tenon bottoms: 1/16 (0.063 in) longer than the mortise is deep now"),
        ("1", "15/16", "the tenon stands on the bottom of the mortise: nothing to spare, and 1/16 is wanted"),
        ("1", "7/8", "the tenon goes in with 1/16 to spare"),
    ],
)
def test_the_words_for_each_way_a_tenon_can_stand(depth, tenon, words):
    length = None if tenon is None else Fraction(tenon)
    assert room_words(room(Fraction(depth), Fraction(1, 16), length, Fraction(1, 16)), HOW) == words


@given(lengths, lengths, clearances, lengths)
def test_strips_are_filled_without_a_hole(cut, longest, clearance, tenon):
    for drawn in worked(depth=cut + longest + clearance, cut=cut, clearance=clearance, tenon=tenon)["strips"]:
        ends = [inches(part["to"]) for part in drawn["spans"]]
        assert [inches(part["from"]) for part in drawn["spans"]] == [0, *ends[:-1]]
        assert ends == sorted(set(ends))
        assert ends[-1] <= inches(drawn["length"])


@given(lengths, lengths, st.fractions(min_value=0, max_value=1, max_denominator=64))
def test_an_edge_shoulder_under_an_eighth_is_said(cut, depth, edge):
    sheet = worked(depth=cut + depth + 1, cut=cut, edge=edge)
    said = [text for text in sheet["cautions"] if "take it off the slats" in text]
    assert bool(said) == (edge - cut < Fraction(1, 8))
    assert isinstance(figures(sheet)["edge"], dict) == (edge >= cut)
