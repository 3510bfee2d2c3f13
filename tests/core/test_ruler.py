from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from tests.core.places import SETTINGS
from webapp.core.mark import length
from webapp.core.ruler import ruler

places = st.fractions(min_value=0, max_value=12000, max_denominator=5000)


@given(places, places, st.sampled_from(SETTINGS))
def test_a_ruler_gives_the_lengths_that_fractions_give(x, y, how):
    rule = ruler([x, y], how)
    assert rule.length(rule.top(x)) == length(x, how)
    assert rule.length(rule.top(x) + rule.top(y)) == length(x + y, how)


def test_a_ruler_is_no_finer_than_it_must_be():
    assert ruler([Fraction(1, 6), Fraction(1, 4), Fraction(2)], SETTINGS[0]).bottom == 12
