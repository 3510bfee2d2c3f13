from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.places import FACTORS, SETTINGS, setting_of
from tests.vectors import cases, name_of
from webapp.core.mark import exact, fine_scale, length, mark, mark_parts, millimetres, mixed, nearest, spoken
from webapp.core.reading import read
from webapp.core.setting import setting

LENGTHS = st.fractions(min_value=-12000, max_value=12000, max_denominator=10**6)
SMALL = st.fractions(min_value=-1, max_value=1, max_denominator=10**9)
ANY_LENGTH = st.one_of(LENGTHS, SMALL)
PARTS = ("minus", "feet", "whole", "top", "bottom", "lean", "hair")


def division_of(case):
    return Fraction(case["division"]) if "division" in case else None


@pytest.mark.parametrize("case", cases("marks"), ids=name_of)
def test_marks(case):
    how, x = setting_of(case), Fraction(case["inches"])
    assert mark(x, how, division_of(case)) == case["mark"]
    assert millimetres(x, how) == case.get("mm", millimetres(x, how))


@pytest.mark.parametrize("case", [c for c in cases("marks") if "spoken" in c], ids=name_of)
def test_spoken_marks(case):
    assert spoken(case["mark"]) == case["spoken"]


@pytest.mark.parametrize("case", [c for c in cases("marks") if "parts" in c], ids=name_of)
def test_parts_of_marks(case):
    assert mark_parts(case["mark"]) == {part: case["parts"].get(part, "") for part in PARTS}


@pytest.mark.parametrize("case", cases("marks"), ids=name_of)
def test_a_length_names_its_scale_where_it_is_another(case):
    made = length(Fraction(case["inches"]), setting_of(case), division_of(case))
    assert list(made) == ["inches", "mark", "mm"] + (["graduation"] if case.get("shown") else [])
    assert made["mark"] == case["mark"]
    assert made.get("graduation", "") == case.get("shown", "")


def test_a_scale_may_bring_its_own_name():
    how = setting("mm", "", FACTORS)
    made = length(Fraction(1), how, Fraction(1, 64), "1/64 in")
    assert made == {"inches": "1", "mark": "25.400", "mm": "25.40", "graduation": "1/64 in"}


def test_exact_and_mixed_texts():
    assert [exact(Fraction(x)) for x in ("43/24", "2", "-9/128", "0")] == ["43/24", "2", "-9/128", "0"]
    assert [mixed(Fraction(x)) for x in ("269/80", "2", "-269/80", "-1/2", "0")] == [
        "3 29/80", "2", "-3 29/80", "-1/2", "0",
    ]  # fmt: skip


def test_a_half_goes_down_and_an_eighth_parts_the_leans():
    assert [nearest(n, 16) for n in (16, 17, 18, 24, 25, 30, 31, 32)] == [
        (1, ""), (1, ""), (1, " strong"), (1, " strong"), (2, " scant"), (2, " scant"), (2, ""), (2, ""),
    ]  # fmt: skip


@given(st.sampled_from(SETTINGS), ANY_LENGTH)
def test_no_mark_is_off_by_more_than_half_a_graduation(how, x):
    """The number of a mark, its lean left aside, is within half a division of the length."""
    text = mark(x, how)
    if text.endswith("a hair"):
        assert 0 < abs(x) <= fine_scale(how) / 2
        assert text.startswith("-") is (x < 0)
        return
    number = read(text.removesuffix(" strong").removesuffix(" scant"), on_paper(how))
    size = abs(number)
    assert abs(x - number) <= how.division / 2
    assert size > 0 or x == 0
    if text.endswith(" strong"):
        assert abs(x) > size
    if text.endswith(" scant"):
        assert abs(x) < size


def on_paper(how):
    """A mark of feet has its inch sign, so it reads alike in a project of inches."""
    return setting("in", how.graduation, FACTORS) if how.unit == "ft" else how


@given(st.sampled_from(SETTINGS), ANY_LENGTH)
def test_a_lean_is_said_from_an_eighth_of_a_division_on(how, x):
    text = mark(x, how)
    if text.endswith("a hair"):
        return
    fine = abs(x) <= how.division / 2
    division = fine_scale(how) if fine and x else how.division
    over = abs(x) / division - round_half_down(abs(x) / division)
    wanted = " strong" if over >= Fraction(1, 8) else " scant" if over <= Fraction(-1, 8) else ""
    lean = " strong" if text.endswith(" strong") else " scant" if text.endswith(" scant") else ""
    assert lean == wanted


def round_half_down(x):
    return -((-x + Fraction(1, 2)) // 1)


@given(st.sampled_from(SETTINGS), ANY_LENGTH)
def test_a_mark_reads_back_as_itself(how, x):
    text = mark(x, how)
    assert mark(read(text, how), how) == text


@given(st.sampled_from(SETTINGS), ANY_LENGTH)
def test_a_spoken_mark_reads_back_as_the_mark(how, x):
    text = mark(x, how)
    assert mark(read(spoken(text), how), how) == text
    assert spoken(text) == spoken(text).strip()


@given(st.sampled_from(SETTINGS), st.integers(0, 9600), st.sampled_from(["", " strong", " scant"]))
def test_every_mark_that_can_be_said_is_the_mark_of_what_is_read(how, steps, lean):
    number = mark(steps * how.division, how)
    text = number + (lean if steps else "")
    assert mark(read(text, how), how) == text


@given(st.sampled_from(SETTINGS), ANY_LENGTH)
def test_parts_put_together_again_are_the_mark(how, x):
    text = mark(x, how)
    parts = mark_parts(text)
    feet = parts["feet"] + "'" if parts["feet"] else ""
    fraction = f"{parts['top']}/{parts['bottom']}" if parts["top"] else ""
    number = " ".join(part for part in (feet, parts["whole"], fraction, parts["hair"]) if part)
    assert parts["minus"] + number + (" " + parts["lean"] if parts["lean"] else "") == text.replace('"', "")


@given(LENGTHS)
def test_a_length_in_json_comes_back_exactly(x):
    how = SETTINGS[0]
    made = length(x, how)
    assert Fraction(made["inches"]) == x
    assert read(made["inches"] + " in", how) == x
    assert abs(Fraction(made["mm"]) - x * Fraction(254, 10)) <= Fraction(1, 200)
