from decimal import Decimal, getcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.core.root import PARTS, root, whole_root
from webapp.core.square import TOOL
from webapp.core.working import work
from webapp.units import FACTORS

lengths = st.fractions(min_value=Fraction(1, 4), max_value=400, max_denominator=128)


def worked(**typed: object) -> dict:
    return work(TOOL, {name: f"{text}" for name, text in typed.items()}, FACTORS)


def inches(found: dict) -> Fraction:
    return Fraction(found["inches"])


@given(st.integers(0, 10**40))
def test_a_whole_root_is_the_largest_whose_square_goes_in(n):
    assert whole_root(n) ** 2 <= n < (whole_root(n) + 1) ** 2


@given(st.fractions(min_value=0, max_value=10**6, max_denominator=10**6))
def test_a_root_is_within_half_a_millionth(square):
    getcontext().prec = 60
    exact = (Decimal(square.numerator) / Decimal(square.denominator)).sqrt()
    found = root(square)
    assert abs(Decimal(found.numerator) / Decimal(found.denominator) - exact) <= Decimal(1) / (2 * PARTS)


@given(lengths, lengths, st.fractions(min_value=Fraction(-1, 8), max_value=Fraction(1, 8), max_denominator=64))
def test_a_frame_pushed_over_is_found_to_lean_by_that_much(a, b, x):
    """Push a true rectangle over by x: its diagonals squared are (a + x)² + b² and (a - x)² + b²."""
    rising, falling = root((a + x) ** 2 + b**2), root((a - x) ** 2 + b**2)
    outcome = worked(sides=f"{a} in x {b} in", rising=f"{rising} in", falling=f"{falling} in")
    sheet = outcome["sheet"]
    assert abs(inches(sheet["out"]) - x) <= (rising + falling) / (2 * a) / PARTS
    assert abs(inches(sheet["goal"]) ** 2 - (a**2 + b**2 + x**2)) <= 3 * (a + b) / PARTS
    assert sheet["clamp"] == ("none" if rising == falling else "rising" if x > 0 else "falling")


@given(lengths, lengths)
def test_turning_the_frame_over_turns_the_lean_over(a, b):
    d1, d2 = root(a * a + b * b), root(a * a + b * b) - Fraction(1, 64)
    one = worked(sides=f"{a} in x {b} in", rising=f"{d1} in", falling=f"{d2} in")["sheet"]
    other = worked(sides=f"{a} in x {b} in", rising=f"{d2} in", falling=f"{d1} in")["sheet"]
    assert inches(one["out"]) == -inches(other["out"])
    assert one["goal"] == other["goal"]


def test_four_sides_are_taken_in_order_round_from_the_bottom():
    two = worked(sides="54 x 36", rising="65", falling="64 7/8")["sheet"]
    four = worked(sides="54 x 36 x 54 x 36", rising="65", falling="64 7/8")["sheet"]
    assert (two["out"], two["goal"]) == (four["out"], four["goal"])


@pytest.mark.parametrize("sides", ["54", "54 x", "54 x 36 x 54 x -1", "x x x x", "54 x 36 x 54 x 0"])
def test_sides_that_cannot_be_read_are_an_error_at_their_field(sides):
    assert list(worked(sides=sides, rising="65", falling="64 7/8")["errors"]) == ["sides"]
