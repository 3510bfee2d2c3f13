"""The marks of a story stick, in order from its datum."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.stick_words import ERRORS
from webapp.core.sums import amount
from webapp.core.tool import InputErrors


@dataclass(frozen=True)
class Marked:
    """One mark: its number in the order it was said, its name, and its place in inches from the datum."""

    number: int
    name: str
    at: Fraction


def in_order(said: list[tuple[str, Fraction]]) -> list[Marked]:
    """Return the marks from the datum on."""
    marks = [Marked(i + 1, name, at) for i, (name, at) in enumerate(said)]
    return sorted(marks, key=lambda mark: mark.at)


def neighbours(marks: list[Marked]) -> list[tuple[Marked, Marked]]:
    """Return each mark with the one after it."""
    return [(marks[i], marks[i + 1]) for i in range(len(marks) - 1)]


def check(marks: list[Marked], whole: Fraction, how: Setting) -> None:
    """Refuse marks on each other, and marks off the stick, by name."""
    if not marks:
        raise InputErrors({"marks": ERRORS["none"]})
    for one, other in neighbours(marks):
        if one.at == other.at:
            names = f"{one.name} and {other.name}"
            raise InputErrors({"marks": sentence(ERRORS["same"], {"names": names, "place": amount(one.at, how)})})
    off = [f"{mark.name} at {amount(mark.at, how)}" for mark in marks if mark.at > whole]
    if off:
        said = {"marks": ", ".join(off), "length": amount(whole, how)}
        raise InputErrors({"length": sentence(ERRORS["off"], said)})
