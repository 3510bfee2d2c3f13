"""The answer and the figures of a spacing."""

from fractions import Fraction

from webapp.core.mark import fine_scale, length, nearest
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure
from webapp.core.spacing_closing import unclosed
from webapp.core.spacing_laid import Laid, middle
from webapp.core.spacing_said import ZERO, Said, shares
from webapp.core.spacing_solve import Layout
from webapp.core.spacing_words import EVEN, LOPSIDED
from webapp.core.sums import in_words


def answer(said: Said, made: Layout, how: Setting) -> Part:
    """Return the gap, with how many there are of it."""
    return figure("gap", gap_label(said, made.count), length(made.gap, how))


def gap_label(said: Said, n: int) -> str:
    """Return `Gap, ten of them`, with the halves at the ends said apart."""
    whole = shares(said.ends, n)
    if said.ends != "half":
        return "Gap, one alone" if whole == 1 else f"Gap, {in_words(whole)} of them"
    if n == 1:
        return "Gap, half of it at each end"
    return f"Gap, {in_words(n - 1)} of {'it' if n == 2 else 'them'} and a half at each end"


def figures(said: Said, row: Laid, how: Setting) -> list[Part]:
    """Return what was left out first, then the ends, the middle, and the spacer block."""
    return [
        *solved_figures(said, row.made, how),
        *end_figures(said, row.made, how),
        figure("middle", "Middle of the rail falls", middle(said, row)),
        *block_figures(said, row.made, how),
        *pattern_figures(row.made),
    ]


def solved_figures(said: Said, made: Layout, how: Setting) -> list[Part]:
    """Return count, slat and margin where they were left out, and what was over where nothing was."""
    found = []
    if said.count == 0:
        found.append(figure("count", "Slats", made.count))
    if not said.slat:
        found.append(figure("slat", "Slat width", length(made.pattern[0], how)))
    if said.frees_margin:
        found.append(figure("margin", "Margin at both ends", length(made.lead, how)))
    over = unclosed(said)
    if over != 0:
        found.append(figure("over", "Left over by what was said", length(over, how)))
    return found


def end_figures(said: Said, made: Layout, how: Setting) -> list[Part]:
    """Return the first and the last air."""
    kinds = {"half": ", a half", "margin": ", the margin"}
    kind = kinds.get(said.ends, "") if made.lead > 0 else ""
    end = length(made.lead if made.lead > 0 else made.gap, how)
    return [figure("first-gap", "First gap" + kind, end), figure("last-gap", "Last gap" + kind, end)]


def block(made: Layout, how: Setting) -> Fraction:
    """Return the spacer block: the graduation nearest to the gap (rule 18); 0 where the gap is a hair."""
    for scale in (how.division, fine_scale(how)):
        steps = nearest((made.gap / scale).numerator, (made.gap / scale).denominator)[0]
        if steps > 0:
            return steps * scale
    return ZERO


def block_off(said: Said, made: Layout, size: Fraction) -> Fraction:
    """Return how far the last slat is off when the block alone is stepped from one end (rule 18)."""
    steps = made.count if said.ends == "gap" else made.count - 1
    return steps * (size - made.gap)


def block_figures(said: Said, made: Layout, how: Setting) -> list[Part]:
    """Return the spacer block and the last slat's error when it alone is stepped."""
    size = block(made, how)
    if size == 0:
        return []
    off = block_off(said, made, size)
    return [
        figure("block", "Spacer block", length(size, how)),
        figure("last-off", "Last slat off, if the block alone is stepped", length(off, how)),
    ]


def symmetry(made: Layout) -> str:
    """Return whether slats of more than one width read the same from both ends (rule 4)."""
    if len(made.pattern) == 1 or min(made.widths) == max(made.widths):
        return ""
    widths = made.widths
    return EVEN if widths == from_far_end(widths) else LOPSIDED


def from_far_end(widths: list[Fraction]) -> list[Fraction]:
    """Return a list from its far end."""
    return list(reversed(widths))


def pattern_figures(made: Layout) -> list[Part]:
    """Return how a pattern of widths reads."""
    words = symmetry(made)
    return [figure("pattern", "The widths read", words)] if words else []
