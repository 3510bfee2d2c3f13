"""Passes at the jointer, its depth of cut set once (rule 6), and what is to be minded there."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount, in_words

HEAVIEST = Fraction(1, 16)  # of one pass: school rules, as the caution says
JOINTER = (
    "At the jointer: guard over the knives, push blocks in both hands, and nothing over 1/16 in (1.5 mm) a pass, "
    "1/32 in (0.8 mm) for the last (school rules); the knives stand out at most 1/8 in (WAC 296-78-635). "
    "The machine's manual and local rules come first."
)
LEAST = (
    "Nothing shorter than {length} or thinner than {thickness} goes over the jointer without a fixture: your shop's "
    "own least. No law sets one; makers' manuals say 10 to 12 in long, 3/8 in thick."
)
HEAVY = "A bite of {bite} is over 1/16 in (1.5 mm), the heaviest pass that school rules allow."


@dataclass(frozen=True)
class Jointing:
    """What it takes to joint an edge to a line: full passes, and what is left for a light one."""

    full: int
    rest: Fraction

    @property
    def passes(self) -> int:
        """How many passes there are, the light one with them."""
        return self.full + (1 if self.rest > 0 else 0)

    @property
    def words(self) -> str:
        """The passes as they are said in a shop; nothing where there are none."""
        if self.full == 0:
            return "one light pass" if self.rest > 0 else ""
        full = "one pass" if self.full == 1 else f"{in_words(self.full)} passes"
        return f"{full}, then a light one" if self.rest > 0 else full


def jointing(take: Fraction, bite: Fraction) -> Jointing:
    """Return the passes that take so much off an edge, the light one last."""
    full = take // bite
    return Jointing(full, take - full * bite)


def jointer_cautions(bite: Fraction, least_length: Fraction, least_thickness: Fraction, how: Setting) -> list[str]:
    """Return what is to be minded at the jointer with this bite, in a shop with these leasts."""
    least = {"length": amount(least_length, how), "thickness": amount(least_thickness, how)}
    heavy = [sentence(HEAVY, {"bite": amount(bite, how)})] if bite > HEAVIEST else []
    return [*heavy, JOINTER, sentence(LEAST, least)]
