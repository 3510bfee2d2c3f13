from fractions import Fraction

import pytest

from webapp.units import FACTORS, UnitError, inches, registry


def test_an_inch_is_exactly_25_4_millimetres():
    # 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
    assert 1 / FACTORS["mm"] == Fraction(254, 10)
    assert Fraction(1, 64) / FACTORS["mm"] == Fraction(127, 320)


def test_factors_are_fractions_and_hang_together():
    assert all(type(factor) is Fraction for factor in FACTORS.values())
    assert {
        "in": 1,
        "ft": 12,
        "mm": Fraction(5, 127),
        "cm": Fraction(50, 127),
        "m": Fraction(5000, 127),
    } == FACTORS


def test_an_unknown_unit_is_this_modules_own_error():
    with pytest.raises(UnitError, match="furlong is no unit of length here"):
        inches("furlong", registry())
