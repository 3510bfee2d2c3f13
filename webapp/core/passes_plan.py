"""The passes at the planer (rule 5): bites in whole divisions of its scale, and the setting of each pass."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.passes_said import Blank, Said

FIRST = ("first", "second")
ROUGH = ("rough", "jointed")


@dataclass(frozen=True)
class Pass:
    """One setting of the planer: every blank thicker than it is run, one face down or both by turns."""

    before: Fraction  # the setting that it comes down from
    setting: Fraction
    face: str
    kind: str  # clean, plain or last


@dataclass(frozen=True)
class Plan:
    """All passes to a target; `divisions` of the scale come off, `sized` are the blanks as the planer gets them."""

    target: Fraction
    divisions: int
    clean: list[int]
    plain: list[int]
    last: list[int]
    passes: list[Pass]
    sized: list[Blank]


def target_of(said: Said) -> Fraction:
    """Return the target, or the highest mark of the scale that cleans the thinnest blank; it may be none at all."""
    if said.target is not None:
        return said.target
    clean = said.jointed + said.unclean if said.rough else 2 * said.scale
    return (said.thinnest[1] - clean) // said.scale * said.scale


def bite_divisions(said: Said) -> int:
    """Return the most divisions of the scale that a pass may take."""
    return said.bite // said.scale


def depth(said: Said, target: Fraction) -> tuple[int, int]:
    """Return the divisions that clean the rough face of every blank, and those that are left then."""
    thickest = said.thickest[1] - said.jointed
    whole = -((target - thickest) // said.scale)
    if not said.rough:
        return 0, whole
    left = (said.thinnest[1] - said.jointed - said.unclean - target) // said.scale
    return whole - left, left


def fewest(divisions: int, bite: int, alternate: bool) -> int:
    """Return the fewest passes that take so many divisions; an even number with both faces by turns, if it can be."""
    n = -(-divisions // bite)
    return min(n + 1 if alternate and n % 2 == 1 else n, divisions)


def shared(divisions: int, bite: int, alternate: bool) -> list[int]:
    """Share divisions between the fewest passes, the heavier first."""
    n = fewest(divisions, bite, alternate)
    if n == 0:
        return []
    q, m = divmod(divisions, n)
    return [q + 1 if i < m else q for i in range(n)]


def last_bites(said: Said, divisions: int) -> list[int]:
    """Return the lighter last passes, one a face; none where under one division would remain for the others."""
    if said.last is None:
        return []
    light = max(1, said.last // said.scale)
    bites = [light, light] if said.alternate else [light]
    return bites if divisions - sum(bites) >= 1 else []


def count(said: Said, target: Fraction) -> int:
    """Return how many passes it comes to, without making them."""
    bite = bite_divisions(said)
    cleaning, left = depth(said, target)
    last = last_bites(said, left)
    return fewest(cleaning, bite, False) + fewest(left - sum(last), bite, said.alternate) + len(last)


def plan(said: Said, target: Fraction) -> Plan:
    """Return the passes from what was said to a target."""
    bite = bite_divisions(said)
    cleaning, left = depth(said, target)
    last = last_bites(said, left)
    clean, plain = shared(cleaning, bite, False), shared(left - sum(last), bite, said.alternate)
    kinds = [*["clean" for n in clean], *["plain" for n in plain], *["last" for n in last]]
    passes = passes_of(said, target, [*clean, *plain, *last], kinds)
    sized = [(name, size - said.jointed) for name, size in said.blanks]
    return Plan(target, cleaning + left, clean, plain, last, passes, sized)


def passes_of(said: Said, target: Fraction, bites: list[int], kinds: list[str]) -> list[Pass]:
    """Return each pass with its setting and its face."""
    above = sum(bites)
    turn = 0
    found = []
    for bite, kind in zip(bites, kinds, strict=True):
        before, above = target + above * said.scale, above - bite
        found.append(Pass(before, target + above * said.scale, face_of(said, kind, turn), kind))
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


@dataclass(frozen=True)
class Given:
    """What a blank gives up: at each pass, and by its two faces."""

    bites: list[Fraction]
    faces: dict[str, Fraction]


def given(said: Said, made: Plan, thickness: Fraction) -> Given:
    """Return what a blank gives up as the planer's settings come down on it; `thickness` is as the planer gets it."""
    first, second = faces_of(said)
    faces = {first: Fraction(0), second: said.jointed}
    bites = []
    now = thickness
    for step in made.passes:
        bite = now - step.setting if now > step.setting else Fraction(0)
        faces[step.face] += bite
        now -= bite
        bites.append(bite)
    return Given(bites, faces)
