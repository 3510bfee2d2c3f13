"""LENGTHs at many places along one strip: whole numbers over one denominator run faster than Fractions."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.digits import common_part, half_up, point_text
from webapp.core.mark import exact, mark_size
from webapp.core.setting import Setting
from webapp.core.sheet import Length


@dataclass(frozen=True)
class Ruler:
    """A denominator that every place along a strip shares; a place is its numerator, 0 or more."""

    bottom: int
    setting: Setting
    hundredth: Fraction  # of a millimetre, in inches

    def top(self, x: Fraction) -> int:
        """Return the numerator of a length whose denominator the ruler was made for."""
        return x.numerator * (self.bottom // x.denominator)

    def length(self, top: int) -> Length:
        """Return the LENGTH of a place, the same as `length` of its Fraction."""
        hundredth = self.hundredth
        hundredths = half_up(top * hundredth.denominator, self.bottom * hundredth.numerator)
        return {
            "inches": exact(Fraction(top, self.bottom)),
            "mark": mark_size(top, self.bottom, self.setting.division, self.setting),
            "mm": point_text(hundredths, 2, 100),
        }


def ruler(lengths: list[Fraction], how: Setting) -> Ruler:
    """Return the ruler on which all of these lengths, and their sums, are whole numbers."""
    bottom = 1
    for x in lengths:
        bottom = bottom // common_part(bottom, x.denominator) * x.denominator
    return Ruler(bottom, how, how.factors["mm"] / 100)
