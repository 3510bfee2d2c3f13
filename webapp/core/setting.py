"""What a project reads and marks by: its unit and the graduation of its tape."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.text import trim

UNITS = ["in", "ft", "mm"]
INCH_GRADUATIONS = ["1/8", "1/16", "1/32", "1/64"]
GRADUATIONS = {"in": INCH_GRADUATIONS, "ft": INCH_GRADUATIONS, "mm": ["1 mm", "0.5 mm"]}
USUAL = {"in": "1/32", "ft": "1/32", "mm": "0.5 mm"}
PARTS = {"1/8": 8, "1/16": 16, "1/32": 32, "1/64": 64, "1 mm": 1, "0.5 mm": 2}


class SettingError(ValueError):
    """A unit or a graduation that the program does not have; `field` names which."""

    def __init__(self, field: str, reason: str) -> None:
        super().__init__(reason)
        self.field = field
        self.reason = reason


@dataclass(frozen=True)
class Setting:
    """A unit, a graduation, what one division of it is in inches, and inches to each unit."""

    unit: str
    graduation: str
    division: Fraction
    factors: dict[str, Fraction]

    @property
    def metric(self) -> bool:
        """Tell whether lengths are said in millimetres."""
        return self.unit == "mm"


def setting(unit: str, graduation: str, factors: dict[str, Fraction]) -> Setting:
    """Make a setting from two texts; a blank one is inches, or the unit's usual graduation."""
    name = trim(unit) or "in"
    if name not in UNITS:
        raise SettingError("unit", "The unit is in, ft or mm.")
    parts = trim(graduation) or USUAL[name]
    if parts not in GRADUATIONS[name]:
        raise SettingError("graduation", f"With {name} the graduation is {one_of(GRADUATIONS[name])}.")
    whole = factors["mm"] if name == "mm" else factors["in"]
    return Setting(name, parts, whole / PARTS[parts], factors)


def one_of(choices: list[str]) -> str:
    """List choices in words: a, b or c."""
    return f"{', '.join(choices[:-1])} or {choices[-1]}"
