"""How far two tapes of a class may disagree (directive 2014/32/EU, annex MI-008)."""

from fractions import Fraction

from webapp.core.setting import Setting

# Tenths of a millimetre: at the start, for each metre begun, and for the hook at one end.
CLASSES = {"I": (1, 1, 1), "II": (3, 2, 2), "III": (6, 4, 3)}
USUAL = "II"


def disagreement(x: Fraction, name: str, how: Setting) -> Fraction:
    """Return the most by which two tapes of a class, read from the hook, may disagree at a length."""
    start, each, hook = CLASSES[name]
    metres = -(-x // how.factors["m"])
    return 2 * (start + metres * each + hook) * how.factors["mm"] / 10
