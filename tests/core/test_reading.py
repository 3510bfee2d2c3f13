from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.places import SETTINGS, setting_of
from tests.vectors import cases, name_of
from webapp.core.mark import exact
from webapp.core.reading import ReadingError, read, read_count, read_list
from webapp.core.reading_lines import read_lines
from webapp.core.reading_pairs import read_pair, read_run

INCHES = SETTINGS[2]
READERS = {
    "length": lambda case: exact(read(case["text"], setting_of(case), case.get("sign", "any"))),
    "widths": lambda case: [exact(x) for x in read_list(case["text"], setting_of(case))],
    "count": lambda case: read_count(case["text"]),
    "pair": lambda case: [exact(x) for x in read_pair(case["text"], setting_of(case))],
    "run": lambda case: read_run(case["text"], setting_of(case)),
    "lines": lambda case: [[line.name, line.text, line.start] for line in read_lines(case["text"])],
}
GOOD = [case for case in cases("readings") if "at" not in case]
BAD = [case for case in cases("readings") if "at" in case]


def wanted(case):
    if case.get("read") == "run":
        return Fraction(case["inches"]), case["count"]
    return case.get("lines", case.get("inches", case.get("count")))


@pytest.mark.parametrize("case", GOOD, ids=name_of)
def test_readings(case):
    assert READERS[case.get("read", "length")](case) == wanted(case)


@pytest.mark.parametrize("case", BAD, ids=name_of)
def test_what_cannot_be_read_says_what_is_wrong_and_where(case):
    with pytest.raises(ReadingError) as caught:
        READERS[case.get("read", "length")](case)
    error = caught.value
    assert error.text == case["text"]
    assert error.position == case["at"]
    assert case["says"] in error.reason
    assert str(error).startswith(error.reason)


def test_an_error_names_the_place_as_people_count():
    with pytest.raises(ReadingError, match=r"5 - 3/16\. \(At character 2\.\)$"):
        read("5-3", INCHES)
    with pytest.raises(ReadingError, match=r"\(At the end\.\)$"):
        read("5 x", INCHES)
    with pytest.raises(ReadingError, match=r"a length like 17 3/8\.$"):
        read("", INCHES)


@pytest.mark.parametrize("text", ["1" * 121, " " * 121, "(" * 100_000, "🙂" * 1_000_000])
def test_a_long_text_is_refused_before_anything_looks_into_it(text, monkeypatch):
    monkeypatch.setattr("webapp.core.reading.trim", None)
    monkeypatch.setattr("webapp.core.reading.tokens", None)
    monkeypatch.setattr("webapp.core.reading.read_trimmed", None)
    for reader in (lambda: read(text, INCHES), lambda: read_count(text), lambda: read_pair(text, INCHES)):
        with pytest.raises(ReadingError, match="at most 120 characters") as caught:
            reader()
        assert caught.value.position == 120


def test_120_characters_are_read():
    assert read("1 + " + "0" * 115 + "1", INCHES) == 2


def test_a_long_list_is_refused_and_a_long_item_in_it():
    with pytest.raises(ReadingError, match="at most 1000 characters"):
        read_list("2; " * 334, INCHES)
    with pytest.raises(ReadingError, match="at most 120 characters") as caught:
        read_list("2; " + "0" * 121, INCHES)
    assert caught.value.position == 122


def test_a_field_has_at_most_200_lines():
    assert len(read_lines("5\n" * 200)) == 200
    with pytest.raises(ReadingError, match="at most 200 lines") as caught:
        read_lines("5\n" * 201)
    assert caught.value.position == 400
    with pytest.raises(ReadingError, match="at most 40000 characters"):
        read_lines("\n" * 40001)


@pytest.mark.parametrize("text", ["\ud800", "5\udc00", "𝟓", "½½", "5 \x00", "5\u200b"])
def test_odd_characters_are_errors_like_others(text):
    with pytest.raises(ReadingError):
        read(text, INCHES)


@given(st.sampled_from(SETTINGS), st.fractions(min_value=0, max_value=1000, max_denominator=9999))
def test_an_exact_inch_text_reads_as_itself_in_every_project(how, x):
    assert read(f"{exact(x)} in", how) == x


@given(st.sampled_from(SETTINGS), st.fractions(min_value=0, max_value=1000, max_denominator=9999))
def test_what_is_read_is_a_fraction(how, x):
    assert type(read(f"{x.numerator}/{x.denominator} in + 1 mm strong", how)) is Fraction


@given(st.sampled_from(SETTINGS), st.text(max_size=130))
def test_nothing_but_its_own_error_is_raised(how, text):
    for reader in (lambda: read(text, how), lambda: read_list(text, how), lambda: read_count(text)):
        error = fault(reader)
        if error is not None:
            assert 0 <= error.position <= len(text)
            assert error.reason.endswith(".")


def fault(reader):
    try:
        reader()
    except ReadingError as error:
        return error
    return None


@pytest.mark.parametrize("name", ["readings", "marks"])
def test_every_vector_is_of_its_shape(name):
    """A rule for each group; a good case has its value, a bad one place and words; lengths are exact and lowest."""
    known = {"rule", "source", "unit", "graduation", "division", "shown", "read", "sign", "text", "at", "says"}
    for case in cases(name):
        assert case["rule"], case
        assert set(case) <= known | {"inches", "count", "lines", "mark", "mm", "spoken", "parts"}, case
        assert ("at" in case) is ("says" in case), case
        assert ("at" in case) is not any(key in case for key in ("inches", "count", "lines")), case
        lengths = case.get("inches", [])
        for text in [lengths] if isinstance(lengths, str) else lengths:
            assert str(Fraction(text)) == text, case
    written = [str(case) for case in cases(name)]
    assert len(written) == len(set(written)) > 60
