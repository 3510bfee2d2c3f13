"""The lean at the end of a text: strong or scant, as a word or as a sign that touches."""

from fractions import Fraction

from webapp.core.mark import FINE, FINE_PER_MM, fine_scale
from webapp.core.reading_measure import INCH, METRIC
from webapp.core.reading_pieces import Token, UnreadError
from webapp.core.setting import Setting
from webapp.core.text import WHITE


def touching_sign(text: str) -> tuple[int, int]:
    """Find the sign that touches the end, 17 3/8+: where the sum ends, and the lean."""
    end = len(text) - 1
    if end == 0 or text[end] not in "+-" or text[end - 1] in WHITE:
        return end + 1, 0
    return end, 1 if text[end] == "+" else -1


def without_lean(pieces: list[Token]) -> list[Token]:
    """Take the lean's word off, and the comma before it."""
    lean = pieces[-1]
    rest = pieces[:-1]
    if len(rest) > 0 and rest[-1].kind == "comma":
        return rest[:-1]
    if len(rest) > 0 and rest[-1].end == lean.start:
        raise UnreadError(lean.start, f"Put a space before {lean.text}: 17 3/8 {lean.text}.")
    return rest


def leant(value: Fraction, lean: int, system: str, setting: Setting) -> Fraction:
    """Add a lean to a length's size: a quarter of the division that the system spoken is said on."""
    step = lean_division(abs(value), system, setting) / 4 * lean
    return value - step if value < 0 else value + step


def lean_division(size: Fraction, system: str, setting: Setting) -> Fraction:
    """Find the division a lean belongs to; what a graduation is too coarse for was said on the fine scale."""
    division, fine = setting.division, fine_scale(setting)
    if system == INCH and setting.metric:
        division, fine = Fraction(1, 32), FINE
    if system == METRIC and not setting.metric:
        division, fine = setting.factors["mm"] / 2, setting.factors["mm"] / FINE_PER_MM
    return fine if 0 < size <= division / 2 else division
