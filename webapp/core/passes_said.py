"""What was said of machine passes: fields with their usual values, and which of them say something else."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from webapp.core.passes_words import ERRORS
from webapp.core.reading import ReadingError, read_list
from webapp.core.setting import Setting
from webapp.core.tool import Values

ZERO = Fraction(0)
Blank = tuple[str, Fraction]


@dataclass(frozen=True)
class Said:
    """What was said, in inches; `names` are the fields that say something of their own, in declared order."""

    blanks: list[Blank]
    target: Fraction | None
    bite: Fraction
    last: Fraction | None
    scale: Fraction
    alternate: bool
    square: bool
    rough: list[Fraction]  # nothing, or what came off the jointed face and what cleans the other
    turn: Fraction | None
    names: list[str]

    @property
    def jointed(self) -> Fraction:
        """What came off the jointed face."""
        return self.rough[0] if self.rough else ZERO

    @property
    def unclean(self) -> Fraction:
        """What has to come off the rough face to clean it."""
        return self.rough[1] if self.rough else ZERO

    @property
    def thickest(self) -> Blank:
        """The first of the thickest blanks."""
        return max(self.blanks, key=lambda blank: blank[1])

    @property
    def thinnest(self) -> Blank:
        """The first of the thinnest blanks."""
        return min(self.blanks, key=lambda blank: blank[1])

    def last_of(self, names: list[str]) -> str:
        """Return the last of these fields, in declared order, that says something of its own; else the first."""
        found = [name for name in names if name in self.names]
        return found[-1] if found else names[0]


def said_of(values: Values, how: Setting) -> Said:
    """Return what was said for the planer."""
    return Said(
        values.get("blanks", []),
        values.get("target"),
        values["bite"],
        values.get("last"),
        values["setting"],
        values["faces"] == "alternate",
        values["square"] == "yes",
        values.get("rough", []),
        values.get("turn"),
        own_names(values, how),
    )


def own_names(values: Values, how: Setting) -> list[str]:
    """Return the fields that say something of their own: what a form sends by itself says nothing."""
    usual = usual_values(how)
    return [name for name, value in values.items() if value != usual.get(name) and value != []]


def usual_values(how: Setting) -> dict[str, Any]:
    """Return the values that stand for blank fields."""
    mm = how.factors["mm"]
    return {
        "machine": "planer",
        "bite": mm if how.metric else Fraction(1, 32),
        "setting": mm / 10 if how.metric else Fraction(1, 64),
        "faces": "alternate",
        "square": "no",
    }


def read_rough(text: str, how: Setting) -> list[Fraction]:
    """Read what came off the jointed face, and what cleans the other: `1/16; 1/16`."""
    found = read_list(text, how, "zero")
    if len(found) != 2:
        raise ReadingError(text, 0, ERRORS["rough-two"])
    return found
