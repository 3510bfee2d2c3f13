"""The passes at the planer (rule 5): bites in whole divisions of its scale, and the setting of each pass."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.passes_divisions import bite_divisions, depth, last_bites, shared
from webapp.core.passes_said import ZERO, Blank, Said

FIRST = ("first", "second")
ROUGH = ("rough", "jointed")


@dataclass(frozen=True)
class Pass:
    """One setting of the planer: every blank thicker than it is run, one face down or both by turns."""

    setting: Fraction
    drop: Fraction  # from the setting before it
    face: str
    kind: str  # clean, plain or last


@dataclass(frozen=True)
class Given:
    """What a blank gives up: at each pass, and by its two faces."""

    bites: list[Fraction]
    faces: dict[str, Fraction]


@dataclass(frozen=True)
class Plan:
    """All passes to a target; `divisions` of the scale come off, `sized` are the blanks as the planer gets them.

    `gives` is what each blank gives up, `thickest` what the thickest does.
    """

    target: Fraction
    divisions: int
    clean: list[int]
    plain: list[int]
    last: list[int]
    passes: list[Pass]
    sized: list[Blank]
    gives: list[Given]
    thickest: Given


def plan(said: Said, target: Fraction) -> Plan:
    """Return the passes from what was said to a target."""
    bite = bite_divisions(said)
    cleaning, left = depth(said, target)
    last = last_bites(said, left)
    clean, plain = shared(cleaning, bite, False), shared(left - sum(last), bite, said.alternate)
    kinds = [*["clean" for n in clean], *["plain" for n in plain], *["last" for n in last]]
    passes = passes_of(said, target, [*clean, *plain, *last], kinds)
    sized = [(name, size - said.jointed) for name, size in said.blanks]
    gives = [given(said, passes, size) for name, size in sized]
    thickest = given(said, passes, said.thickest[1] - said.jointed)
    return Plan(target, cleaning + left, clean, plain, last, passes, sized, gives, thickest)


def passes_of(said: Said, target: Fraction, bites: list[int], kinds: list[str]) -> list[Pass]:
    """Return each pass with its setting and its face."""
    above = sum(bites)
    turn = 0
    found = []
    for bite, kind in zip(bites, kinds, strict=True):
        above -= bite
        found.append(Pass(target + above * said.scale, bite * said.scale, face_of(said, kind, turn), kind))
        turn += 0 if kind == "clean" else 1
    return found


def face_of(said: Said, kind: str, turn: int) -> str:
    """Return the face that a pass takes from; after cleaning the jointed one comes first."""
    if not said.rough:
        return FIRST[turn % 2 if said.alternate else 0]
    return ROUGH[1 if kind != "clean" and said.alternate and turn % 2 == 0 else 0]


def faces_of(said: Said) -> tuple[str, str]:
    """Return what the two faces of a blank are called."""
    return ROUGH if said.rough else FIRST


def given(said: Said, passes: list[Pass], thickness: Fraction) -> Given:
    """Return what a blank gives up as the settings come down on it; `thickness` is as the planer gets it."""
    first, second = faces_of(said)
    faces = {first: ZERO, second: said.jointed}
    bites = []
    touched = False
    for step in passes:
        # From the first pass that touches it on, each takes all that the setting drops by.
        bite = step.drop
        if not touched:
            touched = thickness > step.setting
            bite = thickness - step.setting if touched else ZERO
        if touched:
            faces[step.face] += bite
        bites.append(bite)
    return Given(bites, faces)
