"""The strips of the passes: the thickest blank across its thickness, and what comes off it pass by pass."""

from fractions import Fraction

from webapp.core.mark import length
from webapp.core.passes_plan import Plan, faces_of
from webapp.core.passes_said import Said
from webapp.core.passes_steps import called, scaled
from webapp.core.setting import Setting
from webapp.core.sheet import Part, span, strip, tick

Slice = tuple[Fraction, str]  # its thickness, and what it is called


def strips(said: Said, made: Plan, how: Setting) -> list[Part]:
    """Return the thickest blank with its slices in true proportion, and the slices alone."""
    bites = made.thickest.bites
    across = blank_strip(said, made, bites, how)
    if not bites:
        return [across]
    slices = [(bite, f"Pass {i + 1}") for i, bite in enumerate(bites)]
    off = scaled(sum(bites, Fraction(0)), said, how)
    label = f"What comes off {called(said.thickest[0])} pass by pass, {off} in all"
    return [across, stack(label, slices, how)]


def blank_strip(said: Said, made: Plan, bites: list[Fraction], how: Setting) -> Part:
    """Return the thickest blank: slices off one face from the left, off the other from the right."""
    name, size = said.thickest
    first, second = faces_of(said)
    left = [(bite, f"Pass {i + 1}") for i, bite in enumerate(bites) if made.passes[i].face == first]
    right = [(bite, f"Pass {i + 1}") for i, bite in enumerate(bites) if made.passes[i].face == second]
    jointed = [(said.jointed, "Jointed")] if said.jointed > 0 else []
    wood = [(made.target, called(name))]
    kinds = {len(left): "wood", len(bites) + 1: "waste"}
    spans = [
        {**part, "kind": kinds.get(i, "cut")}
        for i, part in enumerate(laid([*left, *wood, *reversed(right), *jointed], how))
    ]
    ticks = [tick(spans[len(left)]["from"], first), tick(spans[len(left)]["to"], second)]
    label = f"{called(name)}, the thickest, from {scaled(size, said, how)} to {scaled(made.target, said, how)}"
    return strip(label, length(size, how), spans, ticks)


def stack(label: str, slices: list[Slice], how: Setting) -> Part:
    """Return slices one after the other, drawn by turns so that each is seen, a tick with its number at its end."""
    spans = [{**part, "kind": "waste" if i % 2 == 1 else "cut"} for i, part in enumerate(laid(slices, how))]
    ticks = [tick(spans[i]["to"], str(i + 1)) for i in range(len(spans))]
    return strip(label, spans[-1]["to"], spans, ticks)


def laid(slices: list[Slice], how: Setting) -> list[Part]:
    """Lay slices from 0, each beginning where the one before ends."""
    place = Fraction(0)
    start = length(place, how)
    found = []
    for thickness, name in slices:
        place += thickness
        end = length(place, how)
        found.append(span(start, end, name, "cut"))
        start = end
    return found
