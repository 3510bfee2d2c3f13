from fractions import Fraction

import pytest

from webapp.core.setting import setting
from webapp.core.sums import amount, counted, decimal, exactly, fine, in_words, widths_text
from webapp.units import FACTORS

INCHES, METRIC = setting("in", "", FACTORS), setting("mm", "", FACTORS)
MM = FACTORS["mm"]


def test_numbers_are_words_to_twelve():
    assert [in_words(n) for n in (0, 1, 12, 13)] == ["no", "one", "twelve", "13"]


def test_one_of_a_thing_has_no_s():
    assert (counted(1, "gap"), counted(2, "gap")) == ("1 gap", "2 gaps")


@pytest.mark.parametrize(
    ("x", "how", "text"),
    [
        (Fraction(43, 24), INCHES, "1 25/32 strong"),
        (46 * MM, METRIC, "46.0 mm"),
        (Fraction(0), METRIC, "0.0"),
        (MM / 100, METRIC, "a hair"),
        (46 * MM - MM / 8, METRIC, "46.0 mm scant"),
    ],
)
def test_an_amount_has_its_unit_where_its_mark_has_none(x, how, text):
    assert amount(x, how) == text


@pytest.mark.parametrize(
    ("x", "how", "text"),
    [
        (Fraction(9, 128), INCHES, "0.070 in"),
        (Fraction(1, 16), INCHES, "0.063 in"),
        (Fraction(43, 24), INCHES, "1.792 in"),
        (Fraction(0), INCHES, "0.000 in"),
        (151 * MM / 100, METRIC, "1.51 mm"),
    ],
)
def test_a_caliper_says_thousandths_or_hundredths(x, how, text):
    assert fine(x, how) == text


@pytest.mark.parametrize(
    ("x", "text"),
    [
        (Fraction(46), "46"),
        (Fraction(91, 2), "45.5"),
        (Fraction(1, 8), "0.125"),
        (Fraction(-91, 2), "-45.5"),
        (Fraction(1005, 100), "10.05"),
        (Fraction(46, 3), "15 1/3"),
        (Fraction(1, 16), "1/16"),
    ],
)
def test_a_number_in_a_metric_sum_is_decimal_where_that_is_exact(x, text):
    assert decimal(x) == text
    assert exactly(x * MM, METRIC) == text


def test_a_number_in_an_inch_sum_is_a_fraction():
    assert exactly(Fraction(269, 80), INCHES) == "3 29/80"


def test_widths_are_listed():
    assert widths_text([Fraction(2), Fraction(11, 4)], INCHES) == "2, 2 3/4"
