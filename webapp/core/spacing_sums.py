"""The working of a spacing, as a maker writes it on a scrap of wood."""

from fractions import Fraction

from webapp.core.setting import Setting
from webapp.core.spacing_said import Said, shares, total
from webapp.core.spacing_solve import Layout
from webapp.core.sums import exactly


def sums(said: Said, made: Layout, how: Setting) -> list[str]:
    """Return the lines of the working that led to the layout."""
    if said.frees_margin:
        return margin_sums(said, made, how)
    room = room_sums(said, how)
    if said.slat:
        return room + wood_sums(said, made, how) + gap_sums(said, made, how)
    if said.gap is not None:
        return room + slat_sums(said, made, said.gap, how)
    parts = made.count + shares(said.ends, made.count)
    return room + [
        f"{made.count} + {parts - made.count} = {parts}",
        f"{exactly(said.room, how)} / {parts} = {exactly(made.gap, how)}",
    ]


def room_sums(said: Said, how: Setting) -> list[str]:
    """Return how two margins leave the room."""
    if said.margin is None:
        return []
    return [f"{exactly(said.span, how)} - 2 x {exactly(said.margin, how)} = {exactly(said.room, how)}"]


def wood_sums(said: Said, made: Layout, how: Setting) -> list[str]:
    """Return what widths in turn come to; one width alone needs no line."""
    if said.turns == 1:
        return []
    tally: dict[str, int] = {}
    for width in made.widths:
        text = exactly(width, how)
        tally[text] = tally.get(text, 0) + 1
    wood = " + ".join([f"{n} x {text}" for text, n in tally.items()])
    return [f"{wood} = {exactly(total(said.slat, made.count), how)}"]


def wood_text(said: Said, n: int, how: Setting) -> str:
    """Return the wood as it stands in a sum."""
    if said.turns == 1:
        return f"{n} x {exactly(said.slat[0], how)}"
    return exactly(total(said.slat, n), how)


def gap_sums(said: Said, made: Layout, how: Setting) -> list[str]:
    """Return what the slats leave, shared by the gaps."""
    u = shares(said.ends, made.count)
    rest = u * made.gap
    left = f"{exactly(said.room, how)} - {wood_text(said, made.count, how)} = {exactly(rest, how)}"
    return [left] if u == 1 else [left, f"{exactly(rest, how)} / {u} = {exactly(made.gap, how)}"]


def slat_sums(said: Said, made: Layout, gap: Fraction, how: Setting) -> list[str]:
    """Return what the gaps leave, shared by the slats."""
    u = shares(said.ends, made.count)
    rest = said.room - u * gap
    left = f"{exactly(said.room, how)} - {u} x {exactly(gap, how)} = {exactly(rest, how)}"
    if made.count == 1:
        return [left]
    return [left, f"{exactly(rest, how)} / {made.count} = {exactly(made.pattern[0], how)}"]


def margin_sums(said: Said, made: Layout, how: Setting) -> list[str]:
    """Return what slats and gaps leave, halved into two margins."""
    wood = wood_text(said, made.count, how)
    air = f"{made.count - 1} x {exactly(made.gap, how)}"
    rest = exactly(2 * made.lead, how)
    return [
        *wood_sums(said, made, how),
        f"{exactly(said.span, how)} - {wood} - {air} = {rest}",
        f"{rest} / 2 = {exactly(made.lead, how)}",
    ]
