"""The authority on units: the one place where pint is used, and the factors the core works with."""

from fractions import Fraction

from pint import UnitRegistry
from pint.errors import PintError

UNITS = ("in", "ft", "mm", "cm", "m")
DEFINITIONS = (
    "inch = [length] = in",
    "foot = 12 * inch = ft",
    "millimeter = 5/127 * inch = mm",  # 1 in = 25.4 mm exactly, 127/5
    "centimeter = 10 * millimeter = cm",
    "meter = 1000 * millimeter = m",
)


def registry() -> UnitRegistry[Fraction]:
    """Return an exact registry of the units in use: the stock one has floats and is slow to load."""
    made: UnitRegistry[Fraction] = UnitRegistry(None, non_int_type=Fraction)
    for definition in DEFINITIONS:
        made.define(definition)
    return made


class UnitError(ValueError):
    """A unit that the registry does not know."""


def inches(unit: str, using: UnitRegistry[Fraction]) -> Fraction:
    """Return how many inches one `unit` is; raise UnitError for a unit that is not known."""
    try:
        return Fraction(using.Quantity(Fraction(1), unit).to("in").magnitude)
    except PintError as e:
        raise UnitError(f"{unit} is no unit of length here") from e


FACTORS: dict[str, Fraction] = {unit: inches(unit, using) for using in [registry()] for unit in UNITS}
