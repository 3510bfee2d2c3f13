"""LENGTHs at many places along one strip: whole numbers over one denominator run faster than Fractions."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.digits import common_part
from webapp.core.mark import mark_size
from webapp.core.setting import Setting
from webapp.core.sheet import Length

HUNDREDTHS = [f"{tens}{ones}" for tens in range(10) for ones in range(10)]


@dataclass(frozen=True)
class Ruler:
    """A denominator that every place along a strip shares; a place is its numerator, 0 or more."""

    bottom: int
    setting: Setting
    up: int  # a place times `up`, over `down`, is its hundredths of a millimetre
    down: int

    def top(self, x: Fraction) -> int:
        """Return the numerator of a length whose denominator the ruler was made for."""
        return x.numerator * (self.bottom // x.denominator)

    def length(self, top: int) -> Length:
        """Return the LENGTH of a place, the same as `length` of its Fraction."""
        bottom, down = self.bottom, self.down
        whole, hundredth = divmod((2 * top * self.up + down) // (2 * down), 100)
        return {
            "inches": exact_text(top, bottom),
            "mark": mark_size(top, bottom, self.setting.division, self.setting),
            "mm": f"{whole}.{HUNDREDTHS[hundredth]}",
        }


def exact_text(top: int, bottom: int) -> str:
    """Write top/bottom in lowest terms, as a Fraction is written."""
    part = common_part(top, bottom)
    return str(top // part) if part == bottom else f"{top // part}/{bottom // part}"


def ruler(lengths: list[Fraction], how: Setting) -> Ruler:
    """Return the ruler on which all of these lengths, and their sums, are whole numbers."""
    bottom = 1
    for x in lengths:
        bottom = bottom // common_part(bottom, x.denominator) * x.denominator
    hundredth = how.factors["mm"] / 100
    return Ruler(bottom, how, hundredth.denominator, bottom * hundredth.numerator)
