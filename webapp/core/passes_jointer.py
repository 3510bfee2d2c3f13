"""Passes at the jointer: its depth of cut set once, run to a line (rule 6)."""

from fractions import Fraction

from webapp.core.jointing import Jointing, jointer_cautions, jointing
from webapp.core.mark import length
from webapp.core.passes_check import MOST, many, refuse
from webapp.core.passes_said import own_names
from webapp.core.passes_strips import stack
from webapp.core.passes_words import EYES, NOTES
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure
from webapp.core.sums import amount, exactly, fine
from webapp.core.tool import Values


def jointer_parts(values: Values, how: Setting) -> Part:
    """Return the parts of a sheet for the jointer."""
    take, bite = values["take"], values["bite"]
    made = jointing(take, bite)
    if made.passes > MOST:
        refuse("bite" if "bite" in own_names(values, how) else "take", "too-many", many(made.passes))
    bites = [*[bite for i in range(made.full)], *([made.rest] if made.rest > 0 else [])]
    return {
        "answer": figure("passes", f"Jointer: {made.words} to the line", made.passes),
        "figures": figures(made, bite, how),
        "steps": [step(i, bites[i], bite, how) for i in range(len(bites))],
        "strips": [strip_of(take, bites, how)],
        "sums": sums(made, take, bite, how),
        "cautions": [
            *jointer_cautions(bite, values["least_length"], values["least_thickness"], how),
            EYES,
        ],
        "notes": [NOTES["once"]],
        "full": made.full,
        "rest": length(made.rest, how),
    }


def figures(made: Jointing, bite: Fraction, how: Setting) -> list[Part]:
    """Return the depth of cut, and what is left for the light pass."""
    found = [figure("depth", f"Depth of cut, set once, {fine(bite, how)}", length(bite, how))]
    if made.rest > 0:
        found.append(figure("light", f"Left for the light pass, {fine(made.rest, how)}", length(made.rest, how)))
    return found


def step(i: int, taken: Fraction, bite: Fraction, how: Setting) -> Part:
    """Return one pass and what it takes."""
    words = "full" if taken == bite else "light, to the line"
    taken_length = length(taken, how)
    return {"key": f"pass-{i + 1}", "label": f"Pass {i + 1}, {words}", "value": taken_length, "bite": taken_length}


def strip_of(take: Fraction, bites: list[Fraction], how: Setting) -> Part:
    """Return what comes off, pass by pass."""
    label = f"What comes off, pass by pass, {amount(take, how)} in all"
    return stack(label, [(bite, f"Pass {i + 1}") for i, bite in enumerate(bites)], how)


def sums(made: Jointing, take: Fraction, bite: Fraction, how: Setting) -> list[str]:
    """Return the working, as a maker writes it."""
    return [f"{exactly(take, how)} - {made.full} x {exactly(bite, how)} = {exactly(made.rest, how)}"]
