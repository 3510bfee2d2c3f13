"""What is said under the sheet of a gauge stick: cautions and notes."""

from fractions import Fraction

from webapp.core.gauge_solve import ZERO, Fitted, Place, Rail
from webapp.core.gauge_tapes import CLASSES, disagreement
from webapp.core.gauge_words import CAUTIONS, NOTES
from webapp.core.mark import millimetres
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount, fine

EDGE_SHOULDER = Fraction(1, 8)  # the least that stays (rule 8)
CLEARANCE = Fraction(1, 16)  # between a tenon's end and its mortise's bottom (rules 8 and 11)


def cautions(made: Fitted, jointer: list[str], how: Setting) -> list[str]:
    """Return where slats stand over, and, where anything is cut, what is to be minded at the jointer."""
    jointed = any(rail.parallel > 0 for rail in made.rails)
    apart = [CAUTIONS["apart"]] if any(rail.cut > 0 for rail in made.rails) else []
    return [*over_cautions(made, how), *apart, *(jointer if jointed else [])]


def over_cautions(made: Fitted, how: Setting) -> list[str]:
    """Return where slats stand over though the stick fits (rule 7), and why it matters."""
    found = [over_caution(rail, place, how) for rail in made.rails for place in rail.places if place.fits]
    over = [text for text in found if text]
    return [*over, CAUTIONS["hair"]] if over else []


def over_caution(rail: Rail, place: Place, how: Setting) -> str:
    """Return by how much slats stand over at one place; nothing where they do not."""
    if place.difference <= 0:
        return ""
    parts = {"place": place.said.name, "size": amount(place.difference, how), "fine": fine(place.difference, how)}
    return sentence(CAUTIONS["until" if rail.cut > 0 else "over"], parts)


def notes(made: Fitted, how: Setting) -> list[str]:
    """Return the notes: which edge, what it costs in shoulders and mortises, what else is to be known."""
    cut = [rail for rail in made.rails if rail.cut > 0]
    return [
        *([NOTES["edge"]] if cut else []),
        *[text for rail in cut for text in cut_notes(made, rail, how)],
        *longest_notes(made, how),
        *([NOTES["largest"]] if any(place.loose for place in made.places) else []),
        NOTES["bow"],
        tapes_note(made, how),
    ]


def cut_notes(made: Fitted, rail: Rail, how: Setting) -> list[str]:
    """Return what a cut takes of the edge shoulder and of the slats' mortises (rule 8)."""
    depth = ZERO if made.tenon is None else made.tenon + CLEARANCE + rail.cut
    parts = {
        "rail": rail.name,
        "cut": amount(rail.cut, how),
        "least": amount(EDGE_SHOULDER, how),
        "before": amount(EDGE_SHOULDER + rail.cut, how),
        "clear": amount(CLEARANCE, how),
        "tenon": "" if made.tenon is None else amount(made.tenon, how),
        "depth": amount(depth, how),
    }
    slats = NOTES["mortise" if made.tenon is not None and made.tenon > 0 else "depth"]
    return [sentence(NOTES["shoulder"], parts), sentence(slats, parts)]


def longest_notes(made: Fitted, how: Setting) -> list[str]:
    """Return what goes in everywhere once the rails are cut, where that is longer than place by place."""
    done = made.longest_done
    return [] if done == made.longest else [sentence(NOTES["longest"], {"longest": amount(done, how)})]


def tapes_note(made: Fitted, how: Setting) -> str:
    """Return how far two tapes of each class may disagree at the gauge's length."""
    one, two, three = [millimetres(disagreement(made.gauge, name, how), how) for name in CLASSES]
    return sentence(NOTES["tapes"], {"one": one, "two": two, "three": three})
