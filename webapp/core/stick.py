"""A story stick: all marks from one end, with their distances from the other and from each other."""

from fractions import Fraction

from webapp.core.mark import length, mark
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure, mark_at, span, strip, tick
from webapp.core.stick_marks import Marked, check, in_order, neighbours
from webapp.core.stick_words import ENDS, NOTES
from webapp.core.sums import amount, counted, exactly
from webapp.core.tool import Field, Parts, Tool, Values


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors for marks that cannot stand on the stick."""
    marks, whole = in_order(values["marks"]), values["length"]
    check(marks, whole, how)
    return {
        "answer": figure("count", "Marks on the stick", len(marks)),
        "figures": between(marks, whole, how) + from_the_other_end(marks, whole, how),
        "marks": [mark_at(f"mark-{m.number}", m.name, m.at, how) for m in marks],
        "strips": [drawn(marks, whole, how)],
        "sums": [f"{exactly(whole, how)} - {exactly(m.at, how)} = {exactly(whole - m.at, how)}" for m in marks],
        "notes": notes(marks, values["from"], how),
    }


def between(marks: list[Marked], whole: Fraction, how: Setting) -> list[Part]:
    """Return each mark's distance from the one before it; the first one's and the last one's from the ends."""
    found = [figure("first", f"The end, on to {marks[0].name}", length(marks[0].at, how))]
    for before, after in neighbours(marks):
        label = f"{before.name}, on to {after.name}"
        found.append(figure(f"before-{after.number}", label, length(after.at - before.at, how)))
    return found + [figure("last", f"{marks[-1].name}, on to the other end", length(whole - marks[-1].at, how))]


def from_the_other_end(marks: list[Marked], whole: Fraction, how: Setting) -> list[Part]:
    """Return each mark's place from the end that is not the datum."""
    return [figure(f"far-{m.number}", f"{m.name}, from the other end", length(whole - m.at, how)) for m in marks]


def drawn(marks: list[Marked], whole: Fraction, how: Setting) -> Part:
    """Return the stick from its datum, with its marks."""
    wood = span(length(Fraction(0), how), length(whole, how), "stick", "wood")
    ticks = [tick(length(m.at, how), m.name) for m in marks]
    return strip(f"{counted(len(marks), 'mark')} on {amount(whole, how)}", length(whole, how), [wood], ticks)


def notes(marks: list[Marked], end: str, how: Setting) -> list[str]:
    """Return the datum, and which marks are too near each other for this graduation."""
    found = [sentence(NOTES["datum"], {"end": dict(ENDS)[end]}), NOTES["rod"]]
    for one, other in neighbours(marks):
        if mark(one.at, how) == mark(other.at, how):
            said = {"one": one.name, "other": other.name, "mark": amount(one.at, how)}
            found.append(sentence(NOTES["close"], {**said, "apart": amount(other.at - one.at, how)}))
    return found


TOOL = Tool(
    name="stick",
    title="Story stick",
    about="Puts named marks on one stick, each with its distance from either end and from its neighbour.",
    fields=(
        Field("marks", "Marks", "lines", required=True, sign="zero", help="A name and its place from the datum."),
        Field("length", "Length of the stick", "length", required=True),
        Field("from", "Places are from", "choice", default=("left", "left"), choices=ENDS),
    ),
    work=work,
    help=(
        "Knife every mark of a part on one stick and carry it to each part that is alike: no tape is read twice.",
        "All places are from one end, so errors do not add up along the stick. The distances between neighbours "
        "and from the other end are there to check it by.",
    ),
    example=(("marks", "shoulder: 2 1/2\nmortise, near: 7 3/4\nmortise, far: 9 1/4\ntop: 33 7/8"), ("length", "36")),
    stage="layout",
)
