"""Machine passes: blanks to one thickness at the planer, or an edge to a line at the jointer."""

from webapp.core.jointing import JOINTER
from webapp.core.passes_check import check_bites, check_machine, check_most, check_rough, check_target
from webapp.core.passes_divisions import target_of
from webapp.core.passes_figures import answer, figures
from webapp.core.passes_jointer import jointer_parts
from webapp.core.passes_notes import cautions, notes
from webapp.core.passes_plan import plan
from webapp.core.passes_said import read_rough, said_of
from webapp.core.passes_steps import steps
from webapp.core.passes_strips import strips
from webapp.core.passes_sums import sums
from webapp.core.passes_words import CAUTIONS, FACES, LABELS, MACHINES, SQUARE
from webapp.core.setting import Setting
from webapp.core.tool import Field, Parts, Tool, Values


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors for what cannot be passed so."""
    check_machine(values, how)
    return jointer_parts(values, how) if values["machine"] == "jointer" else planer_parts(values, how)


def planer_parts(values: Values, how: Setting) -> Parts:
    """Return the parts of a sheet for the planer."""
    said = said_of(values, how)
    check_bites(said, how)
    check_rough(said, how)
    target = target_of(said)
    check_target(said, target, how)
    check_most(said, target)
    made = plan(said, target)
    return {
        "answer": answer(said, made, how),
        "figures": figures(said, made, how),
        "steps": steps(said, made, how),
        "strips": strips(said, made, how),
        "sums": sums(said, made, how),
        "cautions": cautions(said, made, values, how),
        "notes": notes(said, made, how),
    }


TOOL = Tool(
    name="passes",
    title="Machine passes",
    about="Takes blanks to one thickness at the planer, or an edge to a line at the jointer, pass by pass.",
    fields=(
        Field("machine", LABELS["machine"], "choice", default=("planer", "planer"), choices=MACHINES),
        Field("blanks", LABELS["blanks"], "lines", help="Planer: each blank's name and its thickness as it is now."),
        Field("target", LABELS["target"], "length", help="Planer: left out, the most that cleans them all is found."),
        Field("take", LABELS["take"], "length", help="Jointer: what comes off to the line."),
        Field("bite", LABELS["bite"], "length", default=("1/32 in", "1 mm"), help="The most that one pass takes."),
        Field("last", LABELS["last"], "length", help="Planer: the bite of a lighter last pass, one on each face."),
        Field(
            "setting",
            LABELS["setting"],
            "length",
            default=("1/64 in", "0.1 mm"),
            help="Planer: the smallest division of the machine's own scale.",
        ),
        Field("faces", LABELS["faces"], "choice", default=("alternate", "alternate"), choices=FACES),
        Field("square", LABELS["square"], "choice", default=("no", "no"), choices=SQUARE),
        Field(
            "rough",
            LABELS["rough"],
            "widths",
            help="Planer: what the jointer takes off one face, then what cleans the other: 1/16; 1/16. "
            "The blanks are as they were before both.",
            sign="zero",
            read=read_rough,
        ),
        Field(
            "least_length",
            LABELS["least_length"],
            "length",
            default=("12 in", "305 mm"),
            help="The shortest piece that goes into the machine.",
            shop=True,
        ),
        Field(
            "least_thickness",
            LABELS["least_thickness"],
            "length",
            default=("3/8 in", "10 mm"),
            help="The thinnest piece that goes into the machine.",
            shop=True,
        ),
        Field(
            "turn",
            LABELS["turn"],
            "length",
            help="Planer: how far one turn of the hand wheel moves the setting.",
            shop=True,
        ),
    ),
    work=work,
    help=(
        "At the planer, say every blank with its thickness, and the target. Each setting runs all the blanks it "
        "touches before it moves, so they end alike; the faces take turns, so that both give up about the same and the "
        "blanks stay flat. A setting is said on the machine's own scale, beside what the thickest blank loses.",
        "Rough stock gets one face flat at the jointer first; that face lies down while the other is cleaned, and then "
        "they take turns. Square stock runs thickness and width at every setting: all four, face then edge.",
        "At the jointer the depth of cut is set once: full passes, then a light one to the line.",
    ),
    example=(
        ("blanks", "front: 3 19/32 strong\nback: 3 19/32\nleft: 3 9/16 strong\nright: 3 37/64"),
        ("target", "3 1/2"),
    ),
    cautions=(*CAUTIONS, JOINTER),
    stage="finish-milling",
)
