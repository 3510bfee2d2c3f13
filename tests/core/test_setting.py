from fractions import Fraction

import pytest

from webapp.core.setting import GRADUATIONS, UNITS, SettingError, setting
from webapp.units import FACTORS


@pytest.mark.parametrize(
    ("unit", "graduation", "division"),
    [
        ("in", "1/8", Fraction(1, 8)),
        ("in", "1/16", Fraction(1, 16)),
        ("in", "1/32", Fraction(1, 32)),
        ("ft", "1/64", Fraction(1, 64)),
        ("mm", "1 mm", Fraction(5, 127)),
        ("mm", "0.5 mm", Fraction(5, 254)),
    ],
)
def test_a_division_is_in_inches(unit, graduation, division):
    made = setting(unit, graduation, FACTORS)
    assert (made.unit, made.graduation, made.division) == (unit, graduation, division)
    assert made.metric is (unit == "mm")


@pytest.mark.parametrize(
    ("typed", "unit", "graduation"),
    [("", "in", "1/32"), (" ", "in", "1/32"), ("ft", "ft", "1/32"), (" mm ", "mm", "0.5 mm")],
)
def test_what_is_blank_is_usual(typed, unit, graduation):
    made = setting(typed, " ", FACTORS)
    assert (made.unit, made.graduation) == (unit, graduation)


def test_every_graduation_on_offer_is_one():
    assert [setting(unit, each, FACTORS).graduation for unit in UNITS for each in GRADUATIONS[unit]] == [
        "1/8", "1/16", "1/32", "1/64", "1/8", "1/16", "1/32", "1/64", "1 mm", "0.5 mm",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("unit", "graduation", "field", "says"),
    [
        ("yd", "", "unit", "The unit is in, ft or mm."),
        ("IN", "", "unit", "The unit is in, ft or mm."),
        ("in", "1/10", "graduation", "With in the graduation is 1/8, 1/16, 1/32 or 1/64."),
        ("in", "1 mm", "graduation", "With in the graduation is 1/8, 1/16, 1/32 or 1/64."),
        ("mm", "1/32", "graduation", "With mm the graduation is 1 mm or 0.5 mm."),
    ],
)
def test_what_is_not_on_offer_is_refused_at_its_field(unit, graduation, field, says):
    with pytest.raises(SettingError) as caught:
        setting(unit, graduation, FACTORS)
    assert (caught.value.field, caught.value.reason, str(caught.value)) == (field, says, says)
