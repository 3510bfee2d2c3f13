"""Laws of parts from over-all sizes (rules 9 and 16)."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from webapp.core.overall import TOOL
from webapp.core.working import work
from webapp.units import FACTORS

lengths = st.fractions(min_value=Fraction(1, 64), max_value=200, max_denominator=128)
small = st.fractions(min_value=0, max_value=6, max_denominator=128)


def worked(**typed: object) -> dict:
    return work(TOOL, {name: f"{value} in" for name, value in typed.items()}, FACTORS)["sheet"]


def inches(found: dict) -> Fraction:
    return Fraction(found["inches"])


def figures(sheet: dict) -> dict:
    return {part["key"]: part["value"] for part in sheet["figures"]}


@given(lengths, lengths, lengths, lengths)
def test_posts_and_what_is_clear_make_the_whole(clear, one, other, tenon):
    sheet = worked(overall=one + clear + other, post=one, other_post=other, tenon=tenon)
    assert inches(sheet["answer"]["value"]) == clear
    assert inches(figures(sheet)["rail"]) == clear + 2 * tenon
    assert inches(figures(sheet)["half"]) * 2 == clear


@given(lengths, lengths, lengths, small)
def test_through_tenons_make_the_rail_the_whole_and_what_stands_proud(clear, one, other, proud):
    whole = one + clear + other
    assert inches(figures(worked(overall=whole, post=one, other_post=other, proud=proud))["rail"]) == whole + 2 * proud


@given(lengths, lengths, lengths, lengths)
def test_strips_are_filled_without_a_hole_and_the_shoulders_are_the_clear_apart(clear, one, other, tenon):
    sheet = worked(overall=one + clear + other, post=one, other_post=other, tenon=tenon)
    for drawn in sheet["strips"]:
        ends = [inches(part["to"]) for part in drawn["spans"]]
        assert [inches(part["from"]) for part in drawn["spans"]] == [0, *ends[:-1]]
        assert ends[-1] == inches(drawn["length"])
        near, far = [inches(part["at"]) for part in drawn["ticks"]]
        assert far - near == clear
    near, far = [inches(part["at"]) for part in sheet["marks"]]
    assert (near, far - near) == (tenon, clear)


@given(lengths, lengths, lengths)
def test_a_post_left_out_is_like_the_first(clear, post, tenon):
    left_out = worked(overall=clear + 2 * post, post=post, tenon=tenon)
    said = worked(overall=clear + 2 * post, post=post, other_post=post, tenon=tenon)
    assert (left_out["answer"], left_out["figures"]) == (said["answer"], said["figures"])


@given(lengths, lengths, small)
def test_posts_that_leave_nothing_are_refused(one, other, missing):
    typed = {"overall": f"{max(Fraction(1, 128), one + other - missing)} in", "post": f"{one} in"}
    outcome = work(TOOL, {**typed, "other_post": f"{other} in"}, FACTORS)
    assert list(outcome["errors"]) == ["other_post"]
