"""The steps at the planer: each setting on the machine's own scale, the face, the bite, the blanks it touches."""

from fractions import Fraction

from webapp.core.mark import length, mark
from webapp.core.passes_check import listed
from webapp.core.passes_plan import Pass, Plan
from webapp.core.passes_said import Said
from webapp.core.setting import Setting
from webapp.core.sheet import Part
from webapp.core.sums import fine, in_words, with_unit

DIGITS = "0123456789"
TURN_PARTS = 16  # of a turn, as marks are parts of an inch


def steps(said: Said, made: Plan, how: Setting) -> list[Part]:
    """Return the steps in order; the thickest blank's bites are the bites."""
    return [step(said, made, i, how) for i in range(len(made.passes))]


def step(said: Said, made: Plan, i: int, how: Setting) -> Part:
    """Return one setting of the planer."""
    at = made.passes[i]
    bite, names = made.thickest.bites[i], [name for name, size in made.sized if size > at.setting]
    words = [touched(names, len(made.sized)), face_words(at, said.square), f"{scaled(bite, said, how)} off"]
    turn = "" if said.turn is None else turns(at.drop / said.turn, how)
    by = [f"the wheel on by {turn}"] if turn else []
    setting = length(at.setting, how, said.scale)
    made_of = {
        "key": f"pass-{i + 1}",
        "label": f"Pass {i + 1} at {fine(at.setting, how)}: {', '.join([*words, *by])}",
        "value": setting,
        "setting": setting,
        "fine": fine(at.setting, how),
        "bite": length(bite, how, said.scale),
        "face": at.face,
        "blanks": names,
    }
    return {**made_of, "turns": turn} if turn else made_of


def face_words(at: Pass, square: bool) -> str:
    """Return which face comes down to the knives, and whether the edge follows."""
    edge = " then edge" if square else ""
    kinds = {"clean": " to clean it", "last": ", the light last pass"}
    return f"{at.face} face{edge}{kinds.get(at.kind, '')}"


def touched(names: list[str], all_of_them: int) -> str:
    """Return which blanks a setting touches: all four, or some by name."""
    if len(names) < all_of_them:
        return listed([called(name) for name in names])
    words = {1: "the blank", 2: "both"}
    return words.get(len(names), f"all {in_words(len(names))}")


def called(name: str) -> str:
    """Return a blank's name as it stands in a sentence: a number alone would be taken for a length."""
    return f"blank {name}" if all(letter in DIGITS for letter in list(name)) else name


def scaled(x: Fraction, said: Said, how: Setting) -> str:
    """Return a length in words on the machine's own scale."""
    text = mark(x, how, said.scale)
    return with_unit(text, "mm") if how.metric else text


def turns(x: Fraction, how: Setting) -> str:
    """Return turns of the hand wheel, marked on sixteenths of one as lengths are: `1/2 turn`."""
    dial = Setting("in", "1/16", Fraction(1, TURN_PARTS), how.factors)
    return with_unit(mark(x, dial), "turn" if x <= 1 else "turns")
