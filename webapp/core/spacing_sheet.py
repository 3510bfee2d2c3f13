"""The sheet of a spacing: marks, strips, and what is said under them."""

from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import Length, Part, marked
from webapp.core.spacing_figures import answer, figures, symmetry
from webapp.core.spacing_laid import Laid, laid, outer_airs
from webapp.core.spacing_notes import cautions, notes
from webapp.core.spacing_said import Said
from webapp.core.spacing_solve import Layout, alternatives
from webapp.core.spacing_strips import strips
from webapp.core.spacing_sums import sums


def sheet_parts(said: Said, made: Layout, how: Setting) -> Part:
    """Return the parts of the sheet, the tool's own after the common ones."""
    row = laid(said, made, how)
    others = [laid(said, other, how) for other in alternatives(said, made.count)]
    mortises = mortise_lengths(said, row)
    return {
        "answer": answer(said, made, how),
        "figures": figures(said, row, how),
        "marks": marks(row, mortises),
        "strips": strips(said, [row, *others], how),
        "sums": sums(said, made, how),
        "cautions": cautions(made, how),
        "notes": notes(said, made, how),
        "slats": slats(row, mortises, how),
        "gaps": gaps(made, how),
        "alternatives": [alternative(said, other.made, how) for other in others],
    }


def mortise_lengths(said: Said, row: Laid) -> list[tuple[Length, Length]]:
    """Return left and right of each mortise: an edge shoulder within the slat; none where none was said."""
    if said.shoulder is None:
        return []
    rule = row.ruler
    shoulder = rule.top(said.shoulder)
    return [(rule.length(left + shoulder), rule.length(right - shoulder)) for left, right in row.places]


def marks(row: Laid, mortises: list[tuple[Length, Length]]) -> list[Part]:
    """Return the running marks in the order in which the rule meets them."""
    found = []
    for i, (left, right) in enumerate(row.lengths):
        key, name = f"-{i + 1}-", f" {i + 1}, "
        found.append(marked(f"slat{key}left", f"Slat{name}left", left))
        if mortises:
            found.append(marked(f"mortise{key}left", f"Mortise{name}left", mortises[i][0]))
            found.append(marked(f"mortise{key}right", f"Mortise{name}right", mortises[i][1]))
        found.append(marked(f"slat{key}right", f"Slat{name}right", right))
    return found


def slats(row: Laid, mortises: list[tuple[Length, Length]], how: Setting) -> list[Part]:
    """Return each slat with its places and its width."""
    pattern = [length(width, how) for width in row.made.pattern]
    found = []
    for i, (left, right) in enumerate(row.lengths):
        slat = {"left": left, "right": right, "width": pattern[i % len(pattern)]}
        if mortises:
            slat = {**slat, "mortise_left": mortises[i][0], "mortise_right": mortises[i][1]}
        found.append(slat)
    return found


def gaps(made: Layout, how: Setting) -> list[Length]:
    """Return all the air in order; what is equal is made once."""
    gap = length(made.gap, how)
    outer = [length(lead, how) for lead in outer_airs(made)]
    return [*outer, *[gap for i in range(made.count - 1)], *outer]


def alternative(said: Said, made: Layout, how: Setting) -> Part:
    """Return a neighbouring count with its gap, and what else was worked with it."""
    found: Part = {"count": made.count, "gap": length(made.gap, how)}
    if not said.slat:
        found["slat"] = length(made.pattern[0], how)
    if said.frees_margin:
        found["margin"] = length(made.lead, how)
    words = symmetry(made)
    if words:
        found["pattern"] = words
    return found
