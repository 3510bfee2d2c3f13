"""The strips of a spacing: the row itself, then its neighbouring counts."""

from fractions import Fraction

from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import Length, Part, span, strip, tick
from webapp.core.spacing_figures import symmetry
from webapp.core.spacing_laid import Laid
from webapp.core.spacing_said import Said
from webapp.core.spacing_solve import Layout
from webapp.core.sums import amount, counted


def strips(said: Said, rows: list[Laid], how: Setting) -> list[Part]:
    """Return a strip for each row, all from the datum; the first has ticks where slats begin."""
    start, whole = length(said.offset, how), length(said.offset + said.span, how)
    before = [] if said.offset == 0 else [span(length(Fraction(0), how), start, "Before the span", "cut")]
    ticks = [tick(left, str(i + 1)) for i, (left, right) in enumerate(rows[0].lengths)]
    return [
        strip(label(said, row.made, how), whole, before + spans(row, start, whole), [] if i else ticks)
        for i, row in enumerate(rows)
    ]


def label(said: Said, made: Layout, how: Setting) -> str:
    """Return what a strip shows: the count, the gap, and what else came of it."""
    words = [counted(made.count, "slat"), f"gap {amount(made.gap, how)}"]
    if not said.slat:
        words.insert(1, f"slat {amount(made.pattern[0], how)}")
    if said.frees_margin:
        words.append(f"margin {amount(made.lead, how)}")
    return ", ".join([word for word in [*words, symmetry(made)] if word])


def spans(row: Laid, start: Length, end: Length) -> list[Part]:
    """Return wood and air in order, from `start` to `end`."""
    found = []
    names = air_before(row)
    place = start
    for i, (left, right) in enumerate(row.lengths):
        if names[i]:
            found.append(span(place, left, names[i], "air"))
        found.append(span(left, right, f"Slat {i + 1}", "wood"))
        place = right
    if names[row.made.count]:
        found.append(span(place, end, names[row.made.count], "air"))
    return found


def air_before(row: Laid) -> list[str]:
    """Return the name of the air before each slat and after the last; none where a slat stands at the end."""
    outer = [] if row.made.lead > 0 else [""]
    return [*outer, *row.airs, *outer]
