"""What is said under the sheet of a spacing: cautions and notes."""

from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.spacing_closing import unclosed
from webapp.core.spacing_figures import block, block_off, symmetry
from webapp.core.spacing_said import Said
from webapp.core.spacing_solve import Layout
from webapp.core.spacing_words import CAUTIONS, LOPSIDED, NO_COT, NOTES
from webapp.core.sums import amount

COT_MM = 60  # 16 CFR 1508.4, as carried into 16 CFR 1219


def cautions(made: Layout, how: Setting) -> list[str]:
    """Return the cautions that always stand, and that these gaps are no cot's where they are not."""
    widest = max(made.gap, made.lead)
    if widest <= COT_MM * how.factors["mm"]:
        return [*CAUTIONS]
    return [CAUTIONS[0], sentence(NO_COT, {"gap": amount(widest, how)}), *CAUTIONS[1:]]


def notes(said: Said, made: Layout, how: Setting) -> list[str]:
    """Return the notes: the datum, how the count came, what is not even, the spacer block."""
    return [
        datum_note(said, how),
        *count_notes(said, made, how),
        *over_notes(said, how),
        *width_notes(said, made),
        *block_notes(said, made, how),
    ]


def datum_note(said: Said, how: Setting) -> str:
    """Return where all places are measured from."""
    if said.offset == 0:
        return NOTES["datum-span"]
    return sentence(NOTES["datum-rail"], {"offset": amount(said.offset, how)})


def count_notes(said: Said, made: Layout, how: Setting) -> list[str]:
    """Return why it is this count, where it was left out."""
    if said.count:
        return []
    count = str(made.count)
    if said.gap is not None:
        return [sentence(NOTES["nearest-gap"], {"count": count, "gap": amount(said.gap, how)})]
    if said.turns == 1:
        return [sentence(NOTES["nearest-slat"], {"count": count})]
    return [sentence(NOTES["nearest-mean"], {"count": count, "mean": amount(made.mean, how)})]


def over_notes(said: Said, how: Setting) -> list[str]:
    """Return by how much slat, count and gap as said miss the room."""
    over = unclosed(said)
    if over == 0:
        return []
    return [sentence(NOTES["over" if over < 0 else "short"], {"over": amount(abs(over), how)})]


def width_notes(said: Said, made: Layout) -> list[str]:
    """Return what is to be known of widths that repeat in turn."""
    found = [NOTES["lopsided"]] if symmetry(made) == LOPSIDED else []
    unused = said.turns - made.count
    if unused == 1:
        found.append(NOTES["unused-one"])
    if unused > 1:
        found.append(sentence(NOTES["unused"], {"unused": str(unused)}))
    return found


def block_notes(said: Said, made: Layout, how: Setting) -> list[str]:
    """Return what stepping the spacer block alone comes to (rule 18)."""
    size = block(made, how)
    if size == 0:
        return []
    off = block_off(said, made, size)
    words = {"block": amount(size, how), "off": amount(abs(off), how), "past": "past" if off > 0 else "short of"}
    return [sentence(NOTES["block" if size == made.gap else "stepped"], words)]
