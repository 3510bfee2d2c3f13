"""The working at the planer, as a maker writes it on a scrap of wood."""

from fractions import Fraction

from webapp.core.mark import mixed
from webapp.core.passes_divisions import bite_divisions
from webapp.core.passes_plan import Plan
from webapp.core.passes_said import Said
from webapp.core.setting import Setting
from webapp.core.sums import counted, exactly


def sums(said: Said, made: Plan, how: Setting) -> list[str]:
    """Return the lines from the thickest blank to the passes."""
    size, planed = said.thickest[1], said.thickest[1] - said.jointed
    lines = [difference([size, said.jointed], how)] if said.jointed > 0 else []
    lines.append(difference([planed, made.target], how))
    if not made.passes:
        return lines
    bite = in_divisions(said.bite, said, bite_divisions(said), "down to", how)
    return [
        *lines,
        in_divisions(planed - made.target, said, made.divisions, "up to", how),
        *clean_sums(said, made, how),
        f"{bite} a pass at most",
        *shared_line("to clean, ", made.clean),
        *last_sums(made),
        *shared_line("then " if made.clean else "", made.plain),
        *shared_line("last, ", made.last),
    ]


def difference(lengths: list[Fraction], how: Setting) -> str:
    """Return `3 77/128 - 3 1/2 = 13/128`."""
    left = lengths[0] - sum(lengths[1:], Fraction(0))
    return f"{' - '.join([exactly(x, how) for x in lengths])} = {exactly(left, how)}"


def in_divisions(x: Fraction, said: Said, whole: int, towards: str, how: Setting) -> str:
    """Return `13/128 / 1/64 = 6 1/2, up to 7 divisions`."""
    parts = x / said.scale
    rounded = "" if parts == whole else f"{mixed(parts)}, {towards} "
    return f"{exactly(x, how)} / {exactly(said.scale, how)} = {rounded}{counted(whole, 'division')}"


def clean_sums(said: Said, made: Plan, how: Setting) -> list[str]:
    """Return how many divisions clean the rough face of the thinnest blank, and so of all."""
    if not said.rough:
        return []
    thin = said.thinnest[1] - said.jointed
    left = thin - said.unclean - made.target
    clean = sum(made.clean)
    return [
        difference([thin, said.unclean, made.target], how),
        in_divisions(left, said, made.divisions - clean, "down to", how) + " once clean",
        f"{made.divisions} - {made.divisions - clean} = {counted(clean, 'division')} to clean",
    ]


def last_sums(made: Plan) -> list[str]:
    """Return what the light passes leave to the plain ones."""
    rest, light = sum(made.plain), sum(made.last)
    return [f"{rest + light} - {light} = {counted(rest, 'division')} before the light ones"] if light else []


def shared_line(why: str, bites: list[int]) -> list[str]:
    """Return how divisions are shared between passes: `7 divisions in 4 passes: 3 x 2 + 1 x 1`."""
    if not bites:
        return []
    heavy = [bite for bite in bites if bite == bites[0]]
    light = [bite for bite in bites if bite != bites[0]]
    shares = " + ".join([f"{len(part)} x {part[0]}" for part in [heavy, light] if part])
    words = f"{why}{counted(sum(bites), 'division')}"
    return [f"{words} in {len(bites)} {'pass' if len(bites) == 1 else 'passes'}: {shares}"]
