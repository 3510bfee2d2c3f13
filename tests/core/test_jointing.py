from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.core.jointing import jointing

sizes = st.fractions(min_value=0, max_value=4, max_denominator=640)
BITES = st.sampled_from([Fraction(1, 32), Fraction(1, 64), Fraction(1, 16), Fraction(5, 127)])


@pytest.mark.parametrize(
    ("take", "full", "rest", "words"),
    [
        ("5/64", 2, "1/64", "two passes, then a light one"),  # rules of calculation, 6
        ("1/16", 2, "0", "two passes"),  # rules of calculation, 6
        ("9/128", 2, "1/128", "two passes, then a light one"),  # trade.md 3, common practice: 1/16 strong at 1/32
        ("1/32", 1, "0", "one pass"),
        ("1/24", 1, "1/96", "one pass, then a light one"),
        ("1/64", 0, "1/64", "one light pass"),
        ("13/32", 13, "0", "13 passes"),
        ("0", 0, "0", ""),
    ],
)
def test_a_depth_set_once(take, full, rest, words):
    found = jointing(Fraction(take), Fraction(1, 32))
    assert (found.full, found.rest, found.words) == (full, Fraction(rest), words)


@given(sizes, BITES)
def test_the_passes_come_to_what_is_taken_and_the_last_is_light(take, bite):
    found = jointing(take, bite)
    assert found.full * bite + found.rest == take
    assert 0 <= found.rest < bite
    assert found.passes == -(-take // bite)
    assert ("light" in found.words) == (found.rest > 0)
